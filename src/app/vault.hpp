#pragma once

#include <string>
#include <string_view>

namespace repwright::app {

/// The port to the library that keeps secrets. Every call may come from any thread.
class Vault {
 public:
  virtual ~Vault() = default;
  /// Slow on purpose: argon2id with its own salt and cost in the text (RFC 9106).
  virtual std::string secret_hash(std::string_view secret) = 0;
  virtual bool matches(const std::string& secret_hash, std::string_view secret) = 0;
  /// 256 bits that nobody can guess, as text that can stand in an address.
  virtual std::string random_token() = 0;
  /// What is kept of such a token: fast, and of no use to whoever reads it.
  virtual std::string token_hash(std::string_view token) = 0;
};

}  // namespace repwright::app
