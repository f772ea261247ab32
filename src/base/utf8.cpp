#include "base/utf8.hpp"

#include <algorithm>

namespace repwright::base {

namespace {

constexpr char32_t replacement = 0xFFFD;
constexpr std::string_view replacement_bytes = "\xEF\xBF\xBD";

struct Character {
  char32_t point = replacement;
  std::size_t bytes = 1;
  bool valid = false;
};

/// What a lead byte promises: how many bytes in all (0: it leads nothing), the bits it carries itself and the
/// bounds of the second byte, which shut out overlong forms, surrogates and what lies beyond U+10FFFF
/// (The Unicode Standard, table 3-7).
struct Lead {
  std::size_t bytes = 0;
  unsigned char bits = 0;
  unsigned char second_from = 0x80;
  unsigned char second_to = 0xBF;
};

Lead lead_of(unsigned char byte) {
  if (byte < 0x80) return {.bytes = 1, .bits = 0x7F};
  if (byte < 0xC2) return {};
  if (byte < 0xE0) return {.bytes = 2, .bits = 0x1F};
  if (byte == 0xE0) return {.bytes = 3, .bits = 0x0F, .second_from = 0xA0};
  if (byte == 0xED) return {.bytes = 3, .bits = 0x0F, .second_to = 0x9F};
  if (byte < 0xF0) return {.bytes = 3, .bits = 0x0F};
  if (byte == 0xF0) return {.bytes = 4, .bits = 0x07, .second_from = 0x90};
  if (byte < 0xF4) return {.bytes = 4, .bits = 0x07};
  if (byte == 0xF4) return {.bytes = 4, .bits = 0x07, .second_to = 0x8F};
  return {};
}

/// The first character of a text that is not empty.
Character first_character(std::string_view text) {
  const auto byte_at = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const Lead lead = lead_of(byte_at(0));
  if (lead.bytes == 0) return {};
  char32_t point = byte_at(0) & lead.bits;
  for (std::size_t i = 1; i < lead.bytes; ++i) {
    const unsigned char from = i == 1 ? lead.second_from : 0x80;
    const unsigned char to = i == 1 ? lead.second_to : 0xBF;
    if (i == text.size() || byte_at(i) < from || byte_at(i) > to) return {.bytes = i};
    point = point << 6 | (byte_at(i) & 0x3FU);
  }
  return {.point = point, .bytes = lead.bytes, .valid = true};
}

/// Calls `visit(character, its bytes)` for each character in turn.
template <class Visit>
void for_each_character(std::string_view text, Visit visit) {
  while (!text.empty()) {
    const Character character = first_character(text);
    visit(character, text.substr(0, character.bytes));
    text.remove_prefix(character.bytes);
  }
}

}  // namespace

bool is_valid_utf8(std::string_view text) {
  bool valid = true;
  for_each_character(text, [&](const Character& c, std::string_view) { valid = valid && c.valid; });
  return valid;
}

std::string repair_utf8(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for_each_character(text, [&](const Character& c, std::string_view bytes) {
    result += c.valid ? bytes : replacement_bytes;
  });
  return result;
}

std::u32string code_points(std::string_view text) {
  std::u32string points;
  for_each_character(text, [&](const Character& c, std::string_view) { points += c.point; });
  return points;
}

std::size_t utf8_length(std::string_view text) {
  std::size_t count = 0;
  for_each_character(text, [&](const Character&, std::string_view) { ++count; });
  return count;
}

std::size_t count_characters(std::string_view text, std::size_t offset) {
  return utf8_length(text.substr(0, std::min(offset, text.size())));
}

}  // namespace repwright::base
