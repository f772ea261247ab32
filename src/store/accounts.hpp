#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.hpp"
#include "domain/account.hpp"
#include "domain/kept.hpp"

namespace repwright::store {

/// The port to where accounts are kept. Every call may come from any thread and is done as a whole or not at
/// all. What is done to an account is left in the trail of the store, if it has one; signing in and out is
/// not.
class Accounts {
 public:
  virtual ~Accounts() = default;
  /// By name.
  virtual base::Result<std::vector<domain::Account>> all() = 0;
  virtual base::Result<std::optional<domain::Account>> called(const std::string& name) = 0;
  /// The account of that name, replacing one that was there; signed-in browsers of a replaced one are signed
  /// out.
  virtual base::Result<void> put(const domain::Account& account, const domain::Stamp& by) = 0;
  /// The first owner. Fails with Conflict if there is one.
  virtual base::Result<void> put_first_owner(const domain::Account& account, const domain::Stamp& by) = 0;
  /// Signs the account out wherever it is signed in. Fails with NotFound if there is no such account.
  virtual base::Result<void> sign_out_everywhere(const std::string& name, const domain::Stamp& by) = 0;
  /// Takes the account away, signed out. Fails with NotFound if there is no such account.
  virtual base::Result<void> remove(const std::string& name, const domain::Stamp& by) = 0;
  /// Fails with NotFound if there is no such account.
  virtual base::Result<void> sign_in(const domain::SignedIn& browser) = 0;
  virtual base::Result<std::optional<domain::SignedIn>> find(const std::string& token_hash) = 0;
  virtual base::Result<void> sign_out(const std::string& token_hash) = 0;
};

/// NotFound.
tl::unexpected<base::Error> no_account(const std::string& name);

/// What the trail says of an account that is made, or put in place of one of that name.
std::string trail_words(const domain::Account& account, const std::optional<domain::Account>& before);

}  // namespace repwright::store
