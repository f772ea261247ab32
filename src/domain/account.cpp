#include "domain/account.hpp"

#include <array>
#include <utility>

namespace repwright::domain {
namespace {

constexpr std::array<std::pair<Role, std::string_view>, 5> role_names{{{Role::Owner, "owner"},
                                                                       {Role::Coach, "coach"},
                                                                       {Role::Relief, "relief"},
                                                                       {Role::Person, "person"},
                                                                       {Role::Screen, "screen"}}};

}  // namespace

std::string_view name_of(Role role) {
  for (const auto& [each, name] : role_names)
    if (each == role) return name;
  return "";
}

std::optional<Role> role_of(std::string_view name) {
  for (const auto& [role, each] : role_names)
    if (each == name) return role;
  return std::nullopt;
}

}  // namespace repwright::domain
