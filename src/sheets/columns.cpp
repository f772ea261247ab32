#include "sheets/columns.hpp"

#include <utf8proc.h>

#include "base/utf8.hpp"

namespace repwright::sheets {

std::size_t columns_of(char32_t character) {
  return static_cast<std::size_t>(utf8proc_charwidth(static_cast<utf8proc_int32_t>(character)));
}

std::size_t columns_of(std::string_view text) {
  std::size_t columns = 0;
  for (const char32_t character : base::code_points(text)) columns += columns_of(character);
  return columns;
}

}  // namespace repwright::sheets
