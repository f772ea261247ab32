#pragma once

#include <cstddef>
#include <string_view>

namespace repwright::sheets {

/// Columns of a character in a terminal: none for combining marks and what is not shown, two for wide ones,
/// one for the rest (Unicode Standard Annex #11, East Asian Width).
std::size_t columns_of(char32_t character);

/// Columns that the text takes in a terminal; bytes that are no UTF-8 count as U+FFFD.
std::size_t columns_of(std::string_view text);

}  // namespace repwright::sheets
