#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "domain/ids.hpp"

/// Who may sign in: the port to where it is kept, and what is kept.
namespace repwright::app {

/// What somebody who signed in may see. Relief: one class. Person: their own page.
enum class Role : std::uint8_t { Owner, Coach, Relief, Person };

std::string_view name_of(Role role);
std::optional<Role> role_of(std::string_view name);

struct Account {
  std::string name;
  Role role = Role::Person;
  std::string secret_hash;  // of the password or the PIN; empty: signs in by a one-time link alone
  std::string link_hash;    // of a person's link; empty for the others
  std::string class_id;     // of a relief coach
  domain::PersonId person;  // of a person
  bool operator==(const Account&) const = default;
};

/// A browser that is signed in.
struct SignedIn {
  std::string token_hash;
  std::string account;  // its name
  std::chrono::sys_seconds until;
};

/// Where accounts are kept. Every call may come from any thread and is done as a whole or not at all.
class Accounts {
 public:
  virtual ~Accounts() = default;
  virtual base::Result<std::vector<Account>> all() = 0;
  /// The account of that name, replacing one that was there; signed-in browsers of a replaced one are signed
  /// out.
  virtual base::Result<void> put(const Account& account) = 0;
  /// The first owner. Fails with Conflict if there is one.
  virtual base::Result<void> put_first_owner(const Account& account) = 0;
  virtual base::Result<void> sign_in(const SignedIn& browser) = 0;
  virtual base::Result<std::optional<SignedIn>> find(const std::string& token_hash) = 0;
  virtual base::Result<void> sign_out(const std::string& token_hash) = 0;
};

}  // namespace repwright::app
