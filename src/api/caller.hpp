#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "domain/ids.hpp"

namespace repwright::api {

/// What somebody who signed in may see. Relief: one class. Person: their own page.
enum class Role : std::uint8_t { Owner, Coach, Relief, Person };

std::string_view name_of(Role role);
std::optional<Role> role_of(std::string_view name);

/// Who asks.
struct Caller {
  Role role = Role::Person;
  std::string name;
  std::string class_id;     // of a relief coach
  domain::PersonId person;  // of a person
};

}  // namespace repwright::api
