#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "domain/ids.hpp"

/// Who may sign in, as it is kept.
namespace repwright::domain {

/// What somebody who signed in may see. Relief: one class. Person: their own page. Screen: what hangs on the
/// wall; no person at all.
enum class Role : std::uint8_t { Owner, Coach, Relief, Person, Screen };

std::string_view name_of(Role role);
std::optional<Role> role_of(std::string_view name);

struct Account {
  std::string name;
  Role role = Role::Person;
  std::string secret_hash;  // of the password or the PIN; empty: signs in by a link alone
  std::string link_hash;    // of a link of their own; empty: none
  std::string class_id;     // of a relief coach
  PersonId person;          // of a person
  bool operator==(const Account&) const = default;
};

/// A browser that is signed in.
struct SignedIn {
  std::string token_hash;
  std::string account;  // its name
  std::chrono::sys_seconds until;
  bool operator==(const SignedIn&) const = default;
};

}  // namespace repwright::domain
