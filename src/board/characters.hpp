#pragma once

#include <cstddef>
#include <string_view>

namespace repwright::board {

inline constexpr char32_t no_character = 0xFFFD;

struct Character {
  char32_t code = no_character;
  std::size_t bytes = 1;
};

/// The character that begins at that byte; a byte that begins none is `no_character`, one byte long.
Character character_at(std::string_view text, std::size_t at);

}  // namespace repwright::board
