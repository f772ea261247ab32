#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <openssl/err.h>
#include <openssl/pem.h>
#include <openssl/ssl.h>

#include <memory>
#include <string>

#include "loopback.hpp"
#include "running.hpp"
#include "server/certificates.hpp"
#include "server/trust_page.hpp"
#include "support/scratch.hpp"

/// The server as a client sees it that verifies whom it talks to.
namespace repwright {
namespace {

using test::get_echo;
using test::Running;
using testing::HasSubstr;
using testing::StartsWith;

server::TlsIdentity identity_in(const test::Scratch& scratch) {
  const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  auto made = server::tls_identity(scratch.path(), {{"localhost", "gym.local"}, {"127.0.0.1"}}, now);
  if (!made) throw std::runtime_error(made.error().message);
  return *made;
}

/// A client for TLS that trusts one authority.
class Verifying {
 public:
  Verifying(std::uint16_t port, const std::string& authority, const std::string& host) : socket_(port) {
    const std::unique_ptr<BIO, decltype(&BIO_free_all)> bio(
        BIO_new_mem_buf(authority.data(), static_cast<int>(authority.size())), BIO_free_all);
    X509* trusted = PEM_read_bio_X509(bio.get(), nullptr, nullptr, nullptr);
    X509_STORE_add_cert(SSL_CTX_get_cert_store(context_.get()), trusted);
    X509_free(trusted);
    SSL_CTX_set_verify(context_.get(), SSL_VERIFY_PEER, nullptr);
    ssl_.reset(SSL_new(context_.get()));
    SSL_set_tlsext_host_name(ssl_.get(), host.c_str());
    X509_VERIFY_PARAM* param = SSL_get0_param(ssl_.get());
    if (host.find_first_not_of("0123456789.") == std::string::npos)
      X509_VERIFY_PARAM_set1_ip_asc(param, host.c_str());
    else
      X509_VERIFY_PARAM_set1_host(param, host.c_str(), 0);
    SSL_set_fd(ssl_.get(), socket_.handle());
  }

  void at_most(int version) { SSL_set_max_proto_version(ssl_.get(), version); }
  bool connect() { return SSL_connect(ssl_.get()) == 1; }
  long verdict() const { return SSL_get_verify_result(ssl_.get()); }
  int version() const { return SSL_version(ssl_.get()); }
  void send(const std::string& bytes) { SSL_write(ssl_.get(), bytes.data(), static_cast<int>(bytes.size())); }
  /// Everything up to and with `end`, or all there was when the other side hung up.
  std::string read_to(const std::string& end) {
    std::string out;
    char byte = 0;
    while (!out.ends_with(end) && SSL_read(ssl_.get(), &byte, 1) == 1) out += byte;
    return out;
  }

 private:
  test::Client socket_;
  std::unique_ptr<SSL_CTX, decltype(&SSL_CTX_free)> context_{SSL_CTX_new(TLS_client_method()), SSL_CTX_free};
  std::unique_ptr<SSL, decltype(&SSL_free)> ssl_{nullptr, SSL_free};
};

struct Tls : testing::Test {
  test::Scratch scratch;
  server::TlsIdentity identity = identity_in(scratch);
  Running running{test::echo_site(), {}, identity};
  Verifying client(const std::string& host = "127.0.0.1") {
    return Verifying(running.port(), identity.authority, host);
  }
};

TEST_F(Tls, AnswersWhoTrustsTheAuthorityByNameAndByAddress) {
  for (const char* host : {"127.0.0.1", "localhost", "gym.local"}) {
    Verifying client = this->client(host);
    ASSERT_TRUE(client.connect()) << host << ": " << X509_verify_cert_error_string(client.verdict());
    for (int i = 0; i < 2; ++i) {
      client.send(get_echo);
      EXPECT_THAT(client.read_to("/api/echo|encrypted||"), StartsWith("HTTP/1.1 200"));
    }
  }
}

TEST_F(Tls, IsRefusedByWhoTrustsAnotherAuthorityOrWantsAnotherName) {
  const test::Scratch other;
  Verifying stranger(running.port(), identity_in(other).authority, "127.0.0.1");
  EXPECT_FALSE(stranger.connect());
  EXPECT_NE(stranger.verdict(), X509_V_OK);
  Verifying elsewhere = client("other.local");
  EXPECT_FALSE(elsewhere.connect());
  EXPECT_EQ(elsewhere.verdict(), X509_V_ERR_HOSTNAME_MISMATCH);
}

// RFC 8996: TLS 1.0 and 1.1 must not be used.
TEST_F(Tls, SpeaksTheVersionsThatAreStillGood) {
  for (const int version : {TLS1_2_VERSION, TLS1_3_VERSION}) {
    Verifying client = this->client();
    client.at_most(version);
    ASSERT_TRUE(client.connect());
    EXPECT_EQ(client.version(), version);
  }
  Verifying old = client();
  old.at_most(TLS1_1_VERSION);
  EXPECT_FALSE(old.connect());
}

TEST_F(Tls, LeavesThePlainWayOpenOnTheSamePort) {
  test::Client plain = running.connect();
  plain.send(get_echo);
  EXPECT_EQ(next_reply(plain).body, "/api/echo||");
}

TEST_F(Tls, StreamsEventsToManyAtOnce) {
  std::vector<std::unique_ptr<Verifying>> streams;
  for (int i = 0; i < 10; ++i) {
    streams.push_back(std::make_unique<Verifying>(running.port(), identity.authority, "127.0.0.1"));
    ASSERT_TRUE(streams.back()->connect());
    streams.back()->send("GET /api/events HTTP/1.1\r\nHost: here\r\n\r\n");
    EXPECT_THAT(streams.back()->read_to(": here\n\n"), HasSubstr("text/event-stream"));
  }
  test::Client writer = running.connect();
  writer.send("POST /api/change HTTP/1.1\r\nHost: here\r\nContent-Length: 0\r\n\r\n");
  EXPECT_EQ(next_reply(writer).status, 200);
  for (const auto& stream : streams)
    EXPECT_EQ(stream->read_to("\n\n"), "data: {\"changed\": \"boards\"}\n\n");
}

TEST_F(Tls, HangsUpOnWhoBreaksTheHandshakeAndGoesOn) {
  for (const std::string& bytes : {std::string("\x16\x03\x01\x00\x05zzzzz", 10), std::string("\x16", 1)}) {
    test::Client broken = running.connect();
    broken.send(bytes);
  }
  Verifying next = client();
  EXPECT_TRUE(next.connect());
}

TEST(TlsOnly, WhereThereIsAnIdentity) {
  const Running running;
  const test::Scratch scratch;
  Verifying client(running.port(), identity_in(scratch).authority, "127.0.0.1");
  EXPECT_FALSE(client.connect());
}

TEST(TlsOnly, WithAnIdentityThatIsOne) {
  server::Settings settings;
  settings.tls = server::TlsIdentity{"no certificate", "no key", ""};
  const auto made = server::Server::listen(settings, test::echo_site());
  ASSERT_FALSE(made.has_value());
  EXPECT_EQ(made.error().code, base::ErrorCode::Invalid);
}

TEST(TrustPage, SaysHowToTrustAndGivesTheCertificate) {
  const test::Scratch scratch;
  const server::TlsIdentity identity = identity_in(scratch);
  const auto page = server::with_trust_page({}, identity.authority);
  ASSERT_TRUE(page);
  const server::PageFile* words = page->find(server::trust_path);
  ASSERT_NE(words, nullptr);
  EXPECT_THAT(words->bytes, HasSubstr(server::fingerprint_of(identity.authority).value()));
  EXPECT_THAT(words->bytes, HasSubstr("href=\"/authority.crt\""));
  const server::PageFile* file = page->find(server::authority_path);
  ASSERT_NE(file, nullptr);
  EXPECT_EQ(file->bytes, server::der_of(identity.authority).value());
  EXPECT_EQ(file->type, "application/x-x509-ca-cert");
  EXPECT_FALSE(server::with_trust_page({}, "nothing"));
}

}  // namespace
}  // namespace repwright
