#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.hpp"
#include "domain/account.hpp"

namespace repwright::store {

/// The port to where accounts are kept. Every call may come from any thread and is done as a whole or not at
/// all.
class Accounts {
 public:
  virtual ~Accounts() = default;
  /// By name.
  virtual base::Result<std::vector<domain::Account>> all() = 0;
  /// The account of that name, replacing one that was there; signed-in browsers of a replaced one are signed
  /// out.
  virtual base::Result<void> put(const domain::Account& account) = 0;
  /// The first owner. Fails with Conflict if there is one.
  virtual base::Result<void> put_first_owner(const domain::Account& account) = 0;
  /// Fails with NotFound if there is no such account.
  virtual base::Result<void> sign_in(const domain::SignedIn& browser) = 0;
  virtual base::Result<std::optional<domain::SignedIn>> find(const std::string& token_hash) = 0;
  virtual base::Result<void> sign_out(const std::string& token_hash) = 0;
};

}  // namespace repwright::store
