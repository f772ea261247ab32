#include "server/certificates.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <openssl/pem.h>
#include <openssl/x509v3.h>
#include <sys/stat.h>

#include <memory>

#include "support/scratch.hpp"

/// What the program vouches for, looked at by the library that others verify with.
namespace repwright::server {
namespace {

using Certificate = std::unique_ptr<X509, decltype(&X509_free)>;

const std::chrono::sys_seconds may_14{std::chrono::sys_days{std::chrono::year{2027} / 5 / 14}};
const MachineNames names{{"localhost", "gym.local"}, {"127.0.0.1", "192.168.1.5"}};

std::vector<Certificate> certificates_in(const std::string& pem) {
  std::vector<Certificate> out;
  const std::unique_ptr<BIO, decltype(&BIO_free_all)> bio(
      BIO_new_mem_buf(pem.data(), static_cast<int>(pem.size())), BIO_free_all);
  while (X509* one = PEM_read_bio_X509(bio.get(), nullptr, nullptr, nullptr))
    out.emplace_back(one, X509_free);
  return out;
}

/// The error of a verification as a server for TLS at that time; X509_V_OK if there is none.
int verified(const std::string& chain, const std::string& authority, std::chrono::sys_seconds when) {
  const auto shown = certificates_in(chain);
  const auto trusted = certificates_in(authority);
  X509_STORE* store = X509_STORE_new();
  X509_STORE_add_cert(store, trusted.at(0).get());
  X509_STORE_CTX* context = X509_STORE_CTX_new();
  X509_STORE_CTX_init(context, store, shown.at(0).get(), nullptr);
  X509_STORE_CTX_set_purpose(context, X509_PURPOSE_SSL_SERVER);
  X509_VERIFY_PARAM* param = X509_STORE_CTX_get0_param(context);
  X509_VERIFY_PARAM_set_time(param, when.time_since_epoch().count());
  X509_VERIFY_PARAM_set_flags(param, X509_V_FLAG_X509_STRICT);
  X509_verify_cert(context);
  const int error = X509_STORE_CTX_get_error(context);
  X509_STORE_CTX_free(context);
  X509_STORE_free(store);
  return error;
}

TlsIdentity identity_in(const test::Scratch& scratch, const MachineNames& of = names,
                        std::chrono::sys_seconds now = may_14) {
  auto made = tls_identity(scratch.path() / "tls", of, now);
  if (!made) throw std::runtime_error(made.error().message);
  return *made;
}

// RFC 5280, section 6: the path is valid, for a server, in strict mode.
TEST(TlsIdentity, IsVouchedForByItsAuthority) {
  const test::Scratch scratch;
  const TlsIdentity identity = identity_in(scratch);
  EXPECT_EQ(verified(identity.certificates, identity.authority, may_14), X509_V_OK);
  EXPECT_EQ(verified(identity.certificates, identity.authority, may_14 + std::chrono::days(364)), X509_V_OK);
  EXPECT_EQ(verified(identity.certificates, identity.authority, may_14 + std::chrono::days(366)),
            X509_V_ERR_CERT_HAS_EXPIRED);
  const test::Scratch other;
  EXPECT_NE(verified(identity.certificates, identity_in(other).authority, may_14), X509_V_OK);
}

// RFC 6125, section 6.4: names and addresses are looked for among the alternative names.
TEST(TlsIdentity, HasTheNamesOfTheMachineAndNoOthers) {
  const test::Scratch scratch;
  const auto shown = certificates_in(identity_in(scratch).certificates);
  X509* const server = shown.at(0).get();
  EXPECT_EQ(X509_check_host(server, "gym.local", 0, 0, nullptr), 1);
  EXPECT_EQ(X509_check_ip_asc(server, "192.168.1.5", 0), 1);
  EXPECT_EQ(X509_check_host(server, "other.local", 0, 0, nullptr), 0);
  EXPECT_EQ(X509_check_ip_asc(server, "192.168.1.6", 0), 0);
}

// RFC 5280, section 4.2.1.10: what the authority vouches for outside private names is refused by others.
TEST(TlsIdentity, IsWorthNothingForAnAddressOfTheInternet) {
  const test::Scratch scratch;
  for (const MachineNames& outside :
       {MachineNames{{"example.com"}, {}}, MachineNames{{"gym.local", "example.com"}, {}},
        MachineNames{{}, {"203.0.113.7"}}, MachineNames{{}, {"172.32.0.1"}}}) {
    const TlsIdentity identity = identity_in(scratch, outside);
    EXPECT_EQ(verified(identity.certificates, identity.authority, may_14), X509_V_ERR_PERMITTED_VIOLATION);
  }
  for (const char* inside : {"10.1.2.3", "172.16.0.1", "172.31.255.254", "192.168.0.9", "169.254.3.4"}) {
    const TlsIdentity identity = identity_in(scratch, {{}, {inside}});
    EXPECT_EQ(verified(identity.certificates, identity.authority, may_14), X509_V_OK) << inside;
  }
}

TEST(TlsIdentity, StaysWhileItFits) {
  const test::Scratch scratch;
  const TlsIdentity first = identity_in(scratch);
  const TlsIdentity again = identity_in(scratch, names, may_14 + std::chrono::days(300));
  EXPECT_EQ(again.certificates, first.certificates);
  EXPECT_EQ(again.key, first.key);
}

TEST(TlsIdentity, IsRenewedByTheSameAuthorityBeforeItEndsOrWhenTheMachineHasAnotherName) {
  const test::Scratch scratch;
  const TlsIdentity first = identity_in(scratch);
  const auto late = may_14 + std::chrono::days(336);
  const TlsIdentity renewed = identity_in(scratch, names, late);
  EXPECT_NE(renewed.certificates, first.certificates);
  EXPECT_EQ(renewed.authority, first.authority);
  EXPECT_EQ(verified(renewed.certificates, first.authority, late + std::chrono::days(300)), X509_V_OK);
  const TlsIdentity moved = identity_in(scratch, {{"localhost"}, {"10.0.0.7"}}, late);
  EXPECT_NE(moved.certificates, renewed.certificates);
  EXPECT_EQ(moved.authority, first.authority);
}

TEST(TlsIdentity, IsMadeAnewWhereItsFilesAreBroken) {
  const test::Scratch scratch;
  identity_in(scratch);
  for (const char* file : {"server.pem", "server.key", "authority.key", "authority.pem"}) {
    std::filesystem::resize_file(scratch.path() / "tls" / file, 40);
    const TlsIdentity identity = identity_in(scratch);
    EXPECT_EQ(verified(identity.certificates, identity.authority, may_14), X509_V_OK) << file;
  }
}

TEST(TlsIdentity, KeepsItsKeysFromOtherUsers) {
  const test::Scratch scratch;
  identity_in(scratch);
  for (const auto& file : std::filesystem::directory_iterator(scratch.path() / "tls")) {
    struct stat seen{};
    ASSERT_EQ(::stat(file.path().c_str(), &seen), 0);
    EXPECT_EQ(seen.st_mode & 0777U, 0600U) << file.path();
  }
}

TEST(TlsIdentity, SaysThatItsFolderCannotBeMade) {
  const auto made = tls_identity("/proc/nowhere/tls", names, may_14);
  ASSERT_FALSE(made);
  EXPECT_EQ(made.error().code, base::ErrorCode::Unavailable);
}

TEST(Fingerprint, IsThatOfTheBytesThatAPhoneTakes) {
  const test::Scratch scratch;
  const std::string authority = identity_in(scratch).authority;
  EXPECT_THAT(fingerprint_of(authority).value(), testing::MatchesRegex("([0-9A-F]{2}:){31}[0-9A-F]{2}"));
  const std::string der = der_of(authority).value();
  const auto* bytes = reinterpret_cast<const unsigned char*>(der.data());
  const Certificate again(d2i_X509(nullptr, &bytes, static_cast<long>(der.size())), X509_free);
  ASSERT_NE(again, nullptr);
  EXPECT_EQ(X509_cmp(again.get(), certificates_in(authority).at(0).get()), 0);
  EXPECT_FALSE(der_of("no certificate"));
  EXPECT_FALSE(fingerprint_of(""));
}

TEST(NamesOfThisMachine, HaveTheLoopbackFirst) {
  const MachineNames machine = names_of_this_machine();
  EXPECT_EQ(machine.hosts.front(), "localhost");
  EXPECT_EQ(machine.addresses.front(), "127.0.0.1");
}

}  // namespace
}  // namespace repwright::server
