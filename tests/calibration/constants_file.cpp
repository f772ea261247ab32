#include "calibration/constants_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>
#include <vector>

#include "calibration/tunables.hpp"

namespace repwright::calibration {

namespace {

using Lines = std::vector<std::string>;

constexpr std::string_view report_mark = "#| ";

Lines lines_of(const std::string& text) {
  Lines out;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) out.push_back(line);
  return out;
}

bool is_key(const std::string& line, const std::string& key) {
  return line.starts_with(key + " ") || line.starts_with(key + "=");
}

/// Where the lines of a table begin, after its head: a movement's after its id. The end of the file if there
/// is none.
Lines::iterator table_begin(Lines& lines, const std::string& table) {
  const auto head = std::ranges::find_if(lines, [&](const std::string& line) {
    return line.starts_with("[" + table + "]") || line == "id = \"" + table + "\"";
  });
  return head == lines.end() ? head : head + 1;
}

/// A new table before the movements.
Lines::iterator add_table(Lines& lines, const std::string& table) {
  auto at = std::ranges::find(lines, "[[movement]]");
  at = lines.insert(at, "");
  at = lines.insert(at, "[" + table + "]");
  return at + 1;
}

void set(Lines& lines, const Tunable& tunable, double value) {
  auto begin = table_begin(lines, tunable.table);
  if (begin == lines.end()) begin = add_table(lines, tunable.table);
  const auto end = std::find_if(
      begin, lines.end(), [](const std::string& line) { return line.empty() || line.starts_with("["); });
  const auto line = std::find_if(begin, end, [&](const std::string& l) { return is_key(l, tunable.key); });
  const std::string written = fmt::format("{} = {:#.4g}", tunable.key, value);
  if (line == end) {
    lines.insert(end, written);
    return;
  }
  const auto comment = line->find("  #");
  *line = written + (comment == std::string::npos ? "" : line->substr(comment));
}

}  // namespace

std::string with_constants(const std::string& text, const domain::BodyConstants& constants,
                           const std::string& report) {
  Lines lines = lines_of(text);
  std::erase_if(lines, [](const std::string& line) { return line.starts_with(report_mark); });
  domain::BodyConstants values = constants;
  for (const Tunable& tunable : tunables()) set(lines, tunable, constant_of(values, tunable));
  const auto version = std::ranges::find_if(lines, [](const std::string& l) { return is_key(l, "version"); });
  Lines said = lines_of(report);
  for (std::string& line : said) line.insert(0, report_mark);
  lines.insert(version, said.begin(), said.end());
  std::string out;
  for (const std::string& line : lines) out += line + "\n";
  return out;
}

}  // namespace repwright::calibration
