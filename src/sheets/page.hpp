#pragma once

#include <string>
#include <string_view>

namespace repwright::sheets {

/// Columns of a page of text: no line is longer unless one word or one table cell is.
inline constexpr int page_width = 80;

/// An empty line, then the words in which a section begins, then whatever explains it.
std::string heading(std::string_view words, std::string_view rest);

/// The text behind `lead`, wrapped to the page; further lines begin under the first word behind `lead` or, if
/// `indent` is given, in that column. Ends with a line feed.
std::string paragraph(std::string_view lead, std::string_view text);
std::string paragraph(std::string_view lead, std::string_view text, int indent);

}  // namespace repwright::sheets
