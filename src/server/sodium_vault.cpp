#include "server/sodium_vault.hpp"

#include <sodium.h>

#include <array>

#include "base/require.hpp"

namespace repwright::server {
namespace {

constexpr std::size_t token_bytes = 32;

/// One of the few that may hash at the same time.
class Turn {
 public:
  explicit Turn(std::counting_semaphore<2>& turns) : turns_(turns) { turns_.acquire(); }
  ~Turn() { turns_.release(); }
  Turn(const Turn&) = delete;
  Turn& operator=(const Turn&) = delete;

 private:
  std::counting_semaphore<2>& turns_;
};

std::string in_base64(const unsigned char* bytes, std::size_t count) {
  std::string text(sodium_base64_ENCODED_LEN(count, sodium_base64_VARIANT_URLSAFE_NO_PADDING), '\0');
  sodium_bin2base64(text.data(), text.size(), bytes, count, sodium_base64_VARIANT_URLSAFE_NO_PADDING);
  text.pop_back();  // the zero at the end
  return text;
}

}  // namespace

SodiumVault::SodiumVault() {
  base::require(sodium_init() >= 0, "libsodium starts");
}

std::string SodiumVault::secret_hash(std::string_view secret) {
  const Turn turn(hashing_);
  std::array<char, crypto_pwhash_STRBYTES> out{};
  const int failed =
      crypto_pwhash_str(out.data(), secret.data(), secret.size(), crypto_pwhash_OPSLIMIT_INTERACTIVE,
                        crypto_pwhash_MEMLIMIT_INTERACTIVE);
  base::require(failed == 0, "there is memory for a hash");
  return out.data();
}

bool SodiumVault::matches(const std::string& secret_hash, std::string_view secret) {
  const Turn turn(hashing_);
  return crypto_pwhash_str_verify(secret_hash.c_str(), secret.data(), secret.size()) == 0;
}

std::string SodiumVault::random_token() {
  std::array<unsigned char, token_bytes> bytes{};
  randombytes_buf(bytes.data(), bytes.size());
  return in_base64(bytes.data(), bytes.size());
}

std::string SodiumVault::token_hash(std::string_view token) {
  std::array<unsigned char, crypto_generichash_BYTES> out{};
  crypto_generichash(out.data(), out.size(), reinterpret_cast<const unsigned char*>(token.data()),
                     token.size(), nullptr, 0);
  return in_base64(out.data(), out.size());
}

}  // namespace repwright::server
