#include "store/people_columns.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>
#include <tuple>
#include <utility>

#include "base/text.hpp"

namespace repwright::store {
namespace {

constexpr std::array<std::pair<std::string_view, Fact>, 12> facts{{{"id", Fact::Id},
                                                                   {"name", Fact::Name},
                                                                   {"sex", Fact::Sex},
                                                                   {"age", Fact::Age},
                                                                   {"birth_year", Fact::BirthYear},
                                                                   {"mass_kg", Fact::Mass},
                                                                   {"height_cm", Fact::Height},
                                                                   {"training_years", Fact::TrainingYears},
                                                                   {"vo2max_ml_kg_min", Fact::AerobicPeak},
                                                                   {"limits", Fact::Limits},
                                                                   {"actions", Fact::Actions},
                                                                   {"attends", Fact::Attends}}};

/// "bar" stands for pulls from the bar, as the word "pull up" of the catalogue does.
constexpr std::string_view bar_word = "bar";
constexpr std::string_view bar_means = "pull up";

/// The key of a column of versions, empty if its header is no movement and no class word.
std::string version_word(std::string_view header, const NamedCatalogue& known) {
  const std::string normal = domain::normal_name(header);
  if (normal == bar_word) return std::string(bar_means);
  for (const domain::Term& pattern : known.catalogue.terms.patterns)
    if (domain::normal_name(pattern.id) == normal) return pattern.id;
  if (const auto& words = known.catalogue.ambiguous_words; words.contains(base::lower(header)))
    return base::lower(header);
  const domain::MovementId* id = known.names.find(header);
  return id == nullptr ? std::string() : id->text;
}

std::string left_out(std::string_view header, std::string_view why) {
  return fmt::format("column '{}' is left out: {}", header, why);
}

std::string neither(std::string_view header) {
  std::vector<std::string_view> names;
  names.reserve(facts.size());
  for (const auto& [name, fact] : facts) names.push_back(name);
  const std::string_view meant = domain::nearest_name(base::lower(header), names);
  const std::string hint = meant.empty() ? std::string() : fmt::format(" (nearest: {})", meant);
  return left_out(header, "neither a known column nor a mark" + hint);
}

ColumnKind kind_of(const std::string& header, const NamedCatalogue& known, std::vector<std::string>& notes) {
  const std::string name = base::lower(header);
  if (const auto at =
          std::ranges::find(facts, std::string_view(name), &std::pair<std::string_view, Fact>::first);
      at != facts.end())
    return at->second;
  auto mark = read_mark_header(header, known);
  if (!mark) return notes.push_back(left_out(header, mark.error())), LeftOut{};
  if (const std::optional<MarkColumn>& column = *mark) return *column;
  if (std::string word = version_word(header, known); !word.empty()) return VersionColumn{std::move(word)};
  if (!header.empty()) notes.push_back(neither(header));
  return LeftOut{};
}

/// The same text for columns that mean the same.
std::string meaning(const PeopleColumn& column) {
  if (const Fact* fact = std::get_if<Fact>(&column.kind)) return std::string(header_of(*fact));
  if (const MarkColumn* mark = std::get_if<MarkColumn>(&column.kind)) return write_mark_header(mark->mark);
  if (const VersionColumn* version = std::get_if<VersionColumn>(&column.kind))
    return "version of " + version->word;
  return {};
}

}  // namespace

std::string_view header_of(Fact fact) {
  return facts[static_cast<std::size_t>(fact)].first;
}

std::vector<PeopleColumn> people_columns(const std::vector<std::string>& headers, const NamedCatalogue& known,
                                         std::vector<std::string>& notes, Problems& problems,
                                         const std::string& file) {
  std::vector<PeopleColumn> columns;
  std::set<std::string> seen;
  for (const std::string& header : headers) {
    columns.push_back({header, kind_of(header, known, notes)});
    const std::string means = meaning(columns.back());
    if (!means.empty() && !seen.insert(means).second)
      problems.add({file, 1, "", header, "means the same as a column before it"});
  }
  if (!seen.contains(std::string(header_of(Fact::Name))))
    problems.add({file, 1, "", "name", "is missing: there must be a column of that name"});
  return columns;
}

bool mark_before(const domain::Mark& a, const domain::Mark& b) {
  struct Key {
    using Sorted = std::tuple<std::string, double, int>;
    Sorted operator()(const domain::TimedDistance& m) const { return {m.movement.text, m.distance.si(), 0}; }
    Sorted operator()(const domain::BestSet& m) const { return {m.movement.text, 0, m.any_style ? 1 : 0}; }
    Sorted operator()(const domain::TimedReps& m) const { return {m.movement.text, m.window.si(), 0}; }
    Sorted operator()(const domain::BestHold& m) const { return {m.movement.text, 0, 0}; }
    Sorted operator()(const domain::BestLoad& m) const { return {m.movement.text, 0, m.reps}; }
    Sorted operator()(const domain::AerobicPeak&) const { return {}; }
  };
  if (a.index() != b.index()) return a.index() < b.index();
  return std::visit(Key{}, a) < std::visit(Key{}, b);
}

}  // namespace repwright::store
