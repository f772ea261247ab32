#pragma once

#include <span>
#include <string>
#include <string_view>

#include "domain/diagnostic.hpp"

namespace repwright::sheets {

/// The text that diagnostics speak of, and what it is called.
struct SourceText {
  std::string_view name;  // "monday.txt"
  std::string_view text;
};

/// Every diagnostic as `name:line:column: severity: text [id]`, the line it stands in, a caret under its
/// first character and waves under the rest, and its hint. Tabs and wide or combining characters keep the
/// caret in place. Bytes that are no UTF-8 and control characters are shown as U+FFFD. Empty when there are
/// none.
std::string diagnostics_text(const SourceText& source, std::span<const domain::Diagnostic> diagnostics);

}  // namespace repwright::sheets
