#include "store/limits_cell.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/civil_date.hpp"
#include "base/text.hpp"
#include "domain/movement_names.hpp"

namespace repwright::store {
namespace {

std::string no_such_limit(std::string_view id, const domain::Catalogue& catalogue) {
  const std::string_view meant = domain::nearest_id(id, catalogue.limits);
  if (!meant.empty()) return fmt::format("no limit is called '{}', nearest: {}", id, meant);
  std::string known;
  for (const domain::LimitKind& limit : catalogue.limits) known += " " + limit.id.text;
  return fmt::format("no limit is called '{}', expected of:{}", id, known);
}

tl::expected<domain::Limit, std::string> read_limit(std::string_view word,
                                                    const domain::Catalogue& catalogue) {
  const std::size_t at = word.find('@');
  domain::Limit limit{{base::lower(word.substr(0, at))}, {}, {}};
  if (std::ranges::find(catalogue.limits, limit.limit, &domain::LimitKind::id) == catalogue.limits.end())
    return tl::unexpected(no_such_limit(limit.limit.text, catalogue));
  if (at == std::string_view::npos) return limit;
  const auto day = base::parse_date(word.substr(at + 1));
  if (!day)
    return tl::unexpected(
        fmt::format("ends at '{}', expected a day such as @2027-05-31", word.substr(at + 1)));
  limit.until = *day;
  return limit;
}

}  // namespace

tl::expected<std::vector<domain::Limit>, std::string> read_limits(std::string_view cell,
                                                                  const domain::Catalogue& catalogue) {
  std::vector<domain::Limit> limits;
  for (std::string_view rest = base::trim(cell); !rest.empty();) {
    const std::string_view word = rest.substr(0, rest.find_first_of(" \t\r\n"));
    auto limit = read_limit(word, catalogue);
    if (!limit) return tl::unexpected(limit.error());
    if (std::ranges::find(limits, limit->limit, &domain::Limit::limit) != limits.end())
      return tl::unexpected(fmt::format("names '{}' twice", limit->limit.text));
    limits.push_back(std::move(*limit));
    rest = base::trim(rest.substr(word.size()));
  }
  return limits;
}

std::string write_limits(const std::vector<domain::Limit>& limits) {
  std::string out;
  for (const domain::Limit& limit : limits) {
    if (!out.empty()) out += ' ';
    out += limit.limit.text;
    if (limit.until) out += "@" + base::format_date(*limit.until);
  }
  return out;
}

std::vector<std::string> read_actions(std::string_view cell) {
  if (base::trim(cell).empty()) return {};
  std::vector<std::string> actions(1);
  for (std::size_t at = 0; at < cell.size(); ++at) {
    if (cell[at] == '|')
      actions.emplace_back();
    else if (cell[at] == '\\' && at + 1 < cell.size() && (cell[at + 1] == '|' || cell[at + 1] == '\\'))
      actions.back() += cell[++at];
    else
      actions.back() += cell[at];
  }
  for (std::string& action : actions) action = base::trim(action);
  return actions;
}

std::string write_actions(const std::vector<domain::Limit>& limits) {
  const bool none =
      std::ranges::all_of(limits, [](const domain::Limit& limit) { return limit.action.empty(); });
  std::string out;
  if (none) return out;
  for (std::size_t i = 0; i < limits.size(); ++i) {
    if (i > 0) out += '|';
    for (const char c : limits[i].action) {
      if (c == '|' || c == '\\') out += '\\';
      out += c;
    }
  }
  return out;
}

}  // namespace repwright::store
