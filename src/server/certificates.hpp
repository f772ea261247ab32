#pragma once

#include <chrono>
#include <filesystem>
#include <string>
#include <vector>

#include "base/result.hpp"

/// The program's own certificate authority, and the certificate that it gives to the server of this machine.
namespace repwright::server {

/// What phones of the network may call this machine: names that end in `.local` (RFC 6762) or are
/// `localhost` (RFC 6761), and private IPv4 addresses (RFC 1918, RFC 3927).
struct MachineNames {
  std::vector<std::string> hosts;
  std::vector<std::string> addresses;
};

/// Those of this machine, as its system says them now.
MachineNames names_of_this_machine();

/// What a server shows when it speaks TLS, as PEM (RFC 7468).
struct TlsIdentity {
  std::string certificates;  // the server's own, then the authority's
  std::string key;           // of the server's
  std::string authority;     // what a phone is to trust
};

/// The identity that lies in the folder, made or made anew where it is missing, ends within 30 days, or does
/// not have these names. The authority is made once; it vouches for private names and addresses alone
/// (RFC 5280, 4.2.1.10), so whoever steals its key cannot pose as a shop or a bank. Keys can be read by the
/// user alone. Fails with Unavailable if the folder cannot be written or what lies there cannot be read.
base::Result<TlsIdentity> tls_identity(const std::filesystem::path& folder, const MachineNames& names,
                                       std::chrono::sys_seconds now);

/// The first certificate of a PEM text as DER, which phones take as a file. Fails with Invalid.
base::Result<std::string> der_of(const std::string& pem);

/// SHA-256 of such a certificate, in pairs of hexadecimal digits with colons: to be compared by eye. Fails
/// with Invalid.
base::Result<std::string> fingerprint_of(const std::string& pem);

}  // namespace repwright::server
