#include "sheets/page.hpp"

#include <fmt/format.h>

#include "sheets/columns.hpp"
#include "sheets/table.hpp"

namespace repwright::sheets {

std::string heading(std::string_view words, std::string_view rest) {
  return fmt::format("\n{}{}{}\n", words, rest.empty() ? "" : "  ", rest);
}

std::string paragraph(std::string_view lead, std::string_view text) {
  return paragraph(lead, text, static_cast<int>(columns_of(lead)));
}

std::string paragraph(std::string_view lead, std::string_view text, int indent) {
  return wrapped(lead, text, {.width = page_width, .indent = indent}) + "\n";
}

}  // namespace repwright::sheets
