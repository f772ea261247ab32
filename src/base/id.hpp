#pragma once

#include <compare>
#include <string>

namespace repwright::base {

/// The name of a thing in files and on screens ("pull-up", "a07"); the tag keeps kinds of names apart.
template <class Tag>
struct Id {
  std::string text;
  auto operator<=>(const Id&) const = default;
  bool empty() const { return text.empty(); }
};

}  // namespace repwright::base
