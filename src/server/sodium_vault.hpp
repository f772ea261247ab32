#pragma once

#include <semaphore>

#include "app/vault.hpp"

namespace repwright::server {

/// The vault on libsodium: argon2id at its interactive cost (64 MiB, two at once at most), tokens of 32
/// random bytes, BLAKE2b of them.
class SodiumVault final : public app::Vault {
 public:
  /// Throws `base::Bug` if the library cannot start.
  SodiumVault();
  std::string secret_hash(std::string_view secret) override;
  bool matches(const std::string& secret_hash, std::string_view secret) override;
  std::string random_token() override;
  std::string token_hash(std::string_view token) override;

 private:
  std::counting_semaphore<2> hashing_{2};
};

}  // namespace repwright::server
