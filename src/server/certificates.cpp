#include "server/certificates.hpp"

#include <arpa/inet.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <ifaddrs.h>
#include <openssl/bio.h>
#include <openssl/ec.h>
#include <openssl/evp.h>
#include <openssl/pem.h>
#include <openssl/rand.h>
#include <openssl/x509v3.h>
#include <unistd.h>

#include <array>
#include <fstream>
#include <iterator>
#include <memory>
#include <optional>
#include <string_view>
#include <system_error>

#include "base/require.hpp"

namespace repwright::server {
namespace {

namespace fs = std::filesystem;
using base::ErrorCode;
using base::Result;

using Bio = std::unique_ptr<BIO, decltype(&BIO_free_all)>;
using Key = std::unique_ptr<EVP_PKEY, decltype(&EVP_PKEY_free)>;
using Certificate = std::unique_ptr<X509, decltype(&X509_free)>;

constexpr auto a_day = std::chrono::hours(24);
constexpr auto authority_lasts = 3650 * a_day;
// Phones refuse certificates of servers that last more than 825 days, some more than 398.
constexpr auto server_lasts = 365 * a_day;
constexpr auto renewed_before = 30 * a_day;
// A phone's clock may be behind ours.
constexpr auto valid_since = a_day;

constexpr const char* private_names =
    "critical,permitted;DNS:local,permitted;DNS:localhost,"
    "permitted;IP:10.0.0.0/255.0.0.0,permitted;IP:172.16.0.0/255.240.0.0,"
    "permitted;IP:192.168.0.0/255.255.0.0,permitted;IP:169.254.0.0/255.255.0.0,"
    "permitted;IP:127.0.0.0/255.0.0.0";

/// A key with its certificate.
struct Holder {
  Key key{nullptr, EVP_PKEY_free};
  Certificate certificate{nullptr, X509_free};
};

/// What fails here is a broken library or no memory left.
template <class T>
T worked(T result) {
  if (!result) throw base::Bug("the library for certificates refuses to work");
  return result;
}

template <class Write>
std::string pem_of(const Write& write) {
  const Bio bio(worked(BIO_new(BIO_s_mem())), BIO_free_all);
  worked(write(bio.get()) == 1);
  char* bytes = nullptr;
  const long size = BIO_get_mem_data(bio.get(), &bytes);
  return {bytes, static_cast<std::size_t>(size)};
}
std::string pem_of(const Certificate& certificate) {
  return pem_of([&](BIO* bio) { return PEM_write_bio_X509(bio, certificate.get()); });
}
std::string pem_of(const Key& key) {
  return pem_of([&](BIO* bio) {
    return PEM_write_bio_PKCS8PrivateKey(bio, key.get(), nullptr, nullptr, 0, nullptr, nullptr);
  });
}

Bio memory_of(const std::string& text) {
  return {worked(BIO_new_mem_buf(text.data(), static_cast<int>(text.size()))), BIO_free_all};
}
/// Null if the text has none.
Certificate certificate_in(const std::string& pem) {
  return {PEM_read_bio_X509(memory_of(pem).get(), nullptr, nullptr, nullptr), X509_free};
}
Key key_in(const std::string& pem) {
  return {PEM_read_bio_PrivateKey(memory_of(pem).get(), nullptr, nullptr, nullptr), EVP_PKEY_free};
}

void add_extension(X509* to, X509* issuer, int kind, const std::string& value) {
  X509V3_CTX context;
  X509V3_set_ctx_nodb(&context);
  X509V3_set_ctx(&context, issuer, to, nullptr, nullptr, 0);
  X509_EXTENSION* extension = worked(X509V3_EXT_conf_nid(nullptr, &context, kind, value.c_str()));
  const int added = X509_add_ext(to, extension, -1);
  X509_EXTENSION_free(extension);
  worked(added == 1);
}

void set_random_serial(X509* certificate) {
  std::array<unsigned char, 16> bytes{};
  worked(RAND_bytes(bytes.data(), static_cast<int>(bytes.size())) == 1);
  bytes[0] = static_cast<unsigned char>((bytes[0] & 0x7FU) | 0x40U);  // positive, and never shorter
  const std::unique_ptr<BIGNUM, decltype(&BN_free)> number(
      worked(BN_bin2bn(bytes.data(), static_cast<int>(bytes.size()), nullptr)), BN_free);
  worked(BN_to_ASN1_INTEGER(number.get(), X509_get_serialNumber(certificate)));
}

/// A certificate with a new key, not signed yet.
Holder unsigned_holder(const std::string& name, std::chrono::sys_seconds now, std::chrono::seconds lasts) {
  Holder holder;
  holder.key.reset(worked(EVP_EC_gen("P-256")));
  holder.certificate.reset(worked(X509_new()));
  X509* const certificate = holder.certificate.get();
  worked(X509_set_version(certificate, 2) == 1);  // 2 says version 3
  set_random_serial(certificate);
  const auto since = (now - valid_since).time_since_epoch().count();
  const auto until = (now + lasts).time_since_epoch().count();
  worked(ASN1_TIME_set(X509_getm_notBefore(certificate), since));
  worked(ASN1_TIME_set(X509_getm_notAfter(certificate), until));
  X509_NAME* const subject = X509_get_subject_name(certificate);
  worked(X509_NAME_add_entry_by_txt(subject, "CN", MBSTRING_UTF8,
                                    reinterpret_cast<const unsigned char*>(name.c_str()), -1, -1, 0) == 1);
  worked(X509_set_pubkey(certificate, holder.key.get()) == 1);
  return holder;
}

Holder new_authority(std::chrono::sys_seconds now) {
  // The day tells apart what several machines, or a machine set up anew, ask a phone to trust.
  const auto day = std::chrono::floor<std::chrono::days>(now);
  const std::chrono::year_month_day date(day);
  Holder made = unsigned_holder(fmt::format("Repwright of this gym, {:04}-{:02}-{:02}", int(date.year()),
                                            unsigned(date.month()), unsigned(date.day())),
                                now, authority_lasts);
  X509* const certificate = made.certificate.get();
  worked(X509_set_issuer_name(certificate, X509_get_subject_name(certificate)) == 1);
  add_extension(certificate, certificate, NID_basic_constraints, "critical,CA:TRUE,pathlen:0");
  add_extension(certificate, certificate, NID_key_usage, "critical,keyCertSign,cRLSign");
  add_extension(certificate, certificate, NID_subject_key_identifier, "hash");
  add_extension(certificate, certificate, NID_name_constraints, private_names);
  worked(X509_sign(certificate, made.key.get(), EVP_sha256()) > 0);
  return made;
}

std::string alternative_names(const MachineNames& names) {
  std::string out;
  for (const std::string& host : names.hosts) out += (out.empty() ? "DNS:" : ",DNS:") + host;
  for (const std::string& address : names.addresses) out += (out.empty() ? "IP:" : ",IP:") + address;
  return out;
}

Holder new_server(const Holder& authority, const MachineNames& names, std::chrono::sys_seconds now) {
  Holder made = unsigned_holder("Repwright server", now, server_lasts);
  X509* const certificate = made.certificate.get();
  X509* const issuer = authority.certificate.get();
  worked(X509_set_issuer_name(certificate, X509_get_subject_name(issuer)) == 1);
  add_extension(certificate, issuer, NID_basic_constraints, "critical,CA:FALSE");
  add_extension(certificate, issuer, NID_key_usage, "critical,digitalSignature");
  add_extension(certificate, issuer, NID_ext_key_usage, "serverAuth");
  add_extension(certificate, issuer, NID_subject_key_identifier, "hash");
  add_extension(certificate, issuer, NID_authority_key_identifier, "keyid:always");
  add_extension(certificate, issuer, NID_subject_alt_name, alternative_names(names));
  worked(X509_sign(certificate, authority.key.get(), EVP_sha256()) > 0);
  return made;
}

bool outlasts(const Certificate& certificate, std::chrono::sys_seconds when) {
  const std::time_t time = when.time_since_epoch().count();
  return ASN1_TIME_cmp_time_t(X509_get0_notAfter(certificate.get()), time) > 0;
}

/// Whether a server may go on with it.
bool still_fits(const Holder& server, const Holder& authority, const MachineNames& names,
                std::chrono::sys_seconds now) {
  X509* const certificate = server.certificate.get();
  if (X509_verify(certificate, authority.key.get()) != 1) return false;
  if (X509_check_private_key(certificate, server.key.get()) != 1) return false;
  if (!outlasts(server.certificate, now + renewed_before)) return false;
  for (const std::string& host : names.hosts)
    if (X509_check_host(certificate, host.c_str(), host.size(), 0, nullptr) != 1) return false;
  for (const std::string& address : names.addresses)
    if (X509_check_ip_asc(certificate, address.c_str(), 0) != 1) return false;
  return true;
}

/// Nothing if there is no such file.
std::optional<std::string> text_in(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) return std::nullopt;
  return std::string(std::istreambuf_iterator<char>(in), {});
}

/// As a whole or not at all, to be read by the user alone.
Result<void> write_private(const fs::path& file, const std::string& text) {
  const fs::path fresh = file.string() + ".new";
  const int handle = ::open(fresh.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, S_IRUSR | S_IWUSR);
  const bool written = handle >= 0 &&
                       ::write(handle, text.data(), text.size()) == static_cast<ssize_t>(text.size()) &&
                       ::fsync(handle) == 0;
  if (handle >= 0) ::close(handle);
  std::error_code error;
  if (written) fs::rename(fresh, file, error);
  if (written && !error) return {};
  return base::failure(ErrorCode::Unavailable, file.string() + ": cannot be written");
}

/// The pair that lies there; nothing if a file is missing or cannot be read as one.
std::optional<Holder> holder_in(const fs::path& folder, const std::string& name) {
  const auto key = text_in(folder / (name + ".key"));
  const auto certificate = text_in(folder / (name + ".pem"));
  if (!key || !certificate) return std::nullopt;
  Holder holder{key_in(*key), certificate_in(*certificate)};
  if (!holder.key || !holder.certificate) return std::nullopt;
  return holder;
}

Result<void> put_holder(const fs::path& folder, const std::string& name, const Holder& holder) {
  return write_private(folder / (name + ".key"), pem_of(holder.key)).and_then([&] {
    return write_private(folder / (name + ".pem"), pem_of(holder.certificate));
  });
}

bool is_private(std::uint32_t address) {
  return (address >> 24U) == 10 || (address >> 20U) == (172U << 4U | 1U) ||
         (address >> 16U) == (192U << 8U | 168U) || (address >> 16U) == (169U << 8U | 254U);
}

tl::unexpected<base::Error> no_certificate() {
  return base::failure(ErrorCode::Invalid, "this is no certificate");
}

}  // namespace

MachineNames names_of_this_machine() {
  MachineNames names{{"localhost"}, {"127.0.0.1"}};
  std::array<char, 256> host{};
  if (::gethostname(host.data(), host.size() - 1) == 0) {
    const std::string_view whole(host.data());
    const std::string first(whole.substr(0, whole.find('.')));
    if (!first.empty() && first != "localhost") names.hosts.push_back(first + ".local");
  }
  ifaddrs* all = nullptr;
  if (::getifaddrs(&all) != 0) return names;
  for (const ifaddrs* each = all; each != nullptr; each = each->ifa_next) {
    if (each->ifa_addr == nullptr || each->ifa_addr->sa_family != AF_INET) continue;
    const in_addr address = reinterpret_cast<const sockaddr_in*>(each->ifa_addr)->sin_addr;
    std::array<char, INET_ADDRSTRLEN> text{};
    if (is_private(ntohl(address.s_addr)) &&
        ::inet_ntop(AF_INET, &address, text.data(), text.size()) != nullptr)
      names.addresses.emplace_back(text.data());
  }
  ::freeifaddrs(all);
  return names;
}

Result<TlsIdentity> tls_identity(const fs::path& folder, const MachineNames& names,
                                 std::chrono::sys_seconds now) {
  std::error_code error;
  fs::create_directories(folder, error);
  fs::permissions(folder, fs::perms::owner_all, error);
  if (error) return base::failure(ErrorCode::Unavailable, folder.string() + ": cannot be made");
  auto authority = holder_in(folder, "authority");
  if (!authority || !outlasts(authority->certificate, now + server_lasts)) {
    authority = new_authority(now);
    if (auto put = put_holder(folder, "authority", *authority); !put) return tl::unexpected(put.error());
  }
  auto server = holder_in(folder, "server");
  if (!server || !still_fits(*server, *authority, names, now)) {
    server = new_server(*authority, names, now);
    if (auto put = put_holder(folder, "server", *server); !put) return tl::unexpected(put.error());
  }
  const std::string trusted = pem_of(authority->certificate);
  return TlsIdentity{pem_of(server->certificate) + trusted, pem_of(server->key), trusted};
}

Result<std::string> der_of(const std::string& pem) {
  const Certificate certificate = certificate_in(pem);
  if (!certificate) return no_certificate();
  unsigned char* bytes = nullptr;
  const int size = i2d_X509(certificate.get(), &bytes);
  worked(size > 0);
  std::string der(reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(size));
  OPENSSL_free(bytes);
  return der;
}

Result<std::string> fingerprint_of(const std::string& pem) {
  const Certificate certificate = certificate_in(pem);
  if (!certificate) return no_certificate();
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned size = 0;
  worked(X509_digest(certificate.get(), EVP_sha256(), digest.data(), &size) == 1);
  std::string out;
  for (unsigned i = 0; i < size; ++i) out += fmt::format("{}{:02X}", i == 0 ? "" : ":", digest[i]);
  return out;
}

}  // namespace repwright::server
