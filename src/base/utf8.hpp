#pragma once

#include <cstddef>
#include <string>
#include <string_view>

/// UTF-8 as The Unicode Standard 15.0, section 3.9, defines it. A character here is a code point. Bytes that
/// are not UTF-8 count as U+FFFD, one for each longest stretch that could have begun a character, which is
/// the practice the standard recommends.
namespace repwright::base {

bool is_valid_utf8(std::string_view text);

/// The text with U+FFFD in place of what is not UTF-8; valid text unchanged.
std::string repair_utf8(std::string_view text);

std::u32string code_points(std::string_view text);

std::size_t utf8_length(std::string_view text);

/// How many characters begin before the byte offset; an offset past the end means the end.
std::size_t count_characters(std::string_view text, std::size_t offset);

}  // namespace repwright::base
