#pragma once

#include <charconv>
#include <cstdint>
#include <memory>
#include <optional>
#include <string_view>

namespace repwright::api {

/// The number that an id of an address is, from 1; nothing for any other id.
inline std::optional<std::int64_t> number_in(std::string_view id) {
  std::int64_t number = 0;
  const char* const end = std::to_address(id.end());
  const auto [at, error] = std::from_chars(std::to_address(id.begin()), end, number);
  return error == std::errc{} && at == end && number > 0 ? std::optional(number) : std::nullopt;
}

}  // namespace repwright::api
