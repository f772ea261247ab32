#include "store/catalogue_check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "domain/movement_names.hpp"

namespace repwright::store {
namespace {

using domain::Movement;
using domain::MovementId;

using Names = std::set<std::string, std::less<>>;
using ByMovement = std::map<MovementId, const Placed<Movement>*>;

constexpr std::string_view high_impact = "@impact-high";

struct Known {
  Names categories, patterns, muscles, flags, equipment, limits, movements, drills;
};

Names ids_of(const std::vector<domain::Term>& terms) {
  Names out;
  for (const domain::Term& term : terms) out.insert(term.id);
  return out;
}

/// The ids of the rows; the second row of an id is a problem.
template <class Row>
Names ids_of(const std::vector<Placed<Row>>& rows, Problems& problems) {
  std::map<std::string, const RowPlace*> first;
  Names out;
  for (const Placed<Row>& placed : rows) {
    std::string id;
    if constexpr (requires { placed.row.id.text; })
      id = placed.row.id.text;
    else
      id = placed.row.id;
    const auto [at, fresh] = first.try_emplace(id, &placed.place);
    if (!fresh && !id.empty())
      problems.add(placed.place.problem(
          "id", fmt::format("stands already at {}:{}", at->second->file, at->second->line)));
    out.insert(std::move(id));
  }
  return out;
}

std::string unknown(std::string_view name, std::string_view kind, const Names& names) {
  const std::vector<std::string_view> candidates(names.begin(), names.end());
  const std::string_view meant = domain::nearest_name(name, candidates);
  return meant.empty() ? fmt::format("no {} is called '{}'", kind, name)
                       : fmt::format("no {} is called '{}', nearest: {}", kind, name, meant);
}

/// Notes on one row.
class RowCheck {
 public:
  RowCheck(const RowPlace& place, Problems& problems) : place_(place), problems_(problems) {}

  void note(std::string_view field, std::string text) {
    problems_.add(place_.problem(field, std::move(text)));
  }
  void name(std::string_view field, std::string_view name, std::string_view kind, const Names& names) {
    if (!name.empty() && !names.contains(name)) note(field, unknown(name, kind, names));
  }
  void names(std::string_view field, const std::vector<std::string>& list, std::string_view kind,
             const Names& names) {
    for (const std::string& one : list) name(field, one, kind, names);
  }
  template <class Tag>
  void names(std::string_view field, const std::vector<base::Id<Tag>>& list, std::string_view kind,
             const Names& names) {
    for (const base::Id<Tag>& one : list) name(field, one.text, kind, names);
  }

 private:
  const RowPlace& place_;
  Problems& problems_;
};

void check_names(const Movement& movement, const Known& known, RowCheck& check) {
  check.name("category", movement.category, "category", known.categories);
  check.names("patterns", movement.patterns, "pattern", known.patterns);
  check.names("muscles.primary", movement.primary_muscles, "muscle", known.muscles);
  check.names("muscles.secondary", movement.secondary_muscles, "muscle", known.muscles);
  check.names("equipment", movement.equipment, "equipment", known.equipment);
  check.names("flags", movement.flags, "flag", known.flags);
  check.names("easier", movement.easier, "movement", known.movements);
  check.names("harder", movement.harder, "movement", known.movements);
  check.names("avoid_with", movement.avoid_with, "limit", known.limits);
  for (const domain::HomeVersion& home : movement.home)
    check.name("home", home.movement.text, "movement", known.movements);
  for (const auto& [limit, target] : movement.swap_for) {
    check.name("swap_for." + limit.text, limit.text, "limit", known.limits);
    check.name("swap_for." + limit.text, target.text, "movement", known.movements);
  }
}

/// Whether a row of these flags falls under the limit.
bool implies(const domain::LimitKind& limit, const std::vector<std::string>& flags, bool lands_hard) {
  return std::ranges::any_of(limit.from_flags, [&](const std::string& flag) {
    return flag == high_impact ? lands_hard : std::ranges::find(flags, flag) != flags.end();
  });
}
std::string leaves_out(const domain::LimitKind& limit) {
  return fmt::format("leaves out '{}', which the flags imply", limit.id.text);
}

void check_limits(const Movement& movement, const CatalogueRows& rows, const ByMovement& by_id,
                  RowCheck& check) {
  for (const Placed<domain::LimitKind>& limit : rows.limits)
    if (implies(limit.row, movement.flags, movement.impact == domain::Impact::High) &&
        !forbidden(movement, limit.row.id))
      check.note("avoid_with", leaves_out(limit.row));
  for (const domain::LimitId& limit : movement.avoid_with)
    if (!movement.swap_for.contains(limit))
      check.note("swap_for", fmt::format("names no swap for '{}'", limit.text));
  for (const auto& [limit, target] : movement.swap_for) {
    const std::string field = "swap_for." + limit.text;
    if (!forbidden(movement, limit)) check.note(field, "is not a limit of avoid_with");
    const auto at = by_id.find(target);
    if (at != by_id.end() && forbidden(at->second->row, limit))
      check.note(field,
                 fmt::format("'{}' carries that limit itself, expected one that spares it", target.text));
  }
}

bool lists(const std::vector<MovementId>& ids, const MovementId& id) {
  return std::ranges::find(ids, id) != ids.end();
}

void check_ladders(const Movement& movement, const ByMovement& by_id, RowCheck& check) {
  const auto other_end = [&](std::string_view field, const std::vector<MovementId>& here,
                             std::string_view back, std::vector<MovementId> Movement::* there) {
    for (const MovementId& id : here) {
      const auto at = by_id.find(id);
      if (id == movement.id)
        check.note(field, "names the movement itself");
      else if (at != by_id.end() && !lists(at->second->row.*there, movement.id))
        check.note(field,
                   fmt::format("names '{}', whose '{}' does not name '{}' (ladders hold from both ends)",
                               id.text, back, movement.id.text));
    }
  };
  other_end("easier", movement.easier, "harder", &Movement::harder);
  other_end("harder", movement.harder, "easier", &Movement::easier);
}

/// Whether going easier from `at` comes back to a movement of `path`.
bool circles(const MovementId& at, const ByMovement& by_id, std::set<MovementId>& path,
             std::set<MovementId>& done) {
  if (path.contains(at)) return true;
  const auto row = by_id.find(at);
  if (row == by_id.end() || !done.insert(at).second) return false;
  path.insert(at);
  const bool circle = std::ranges::any_of(
      row->second->row.easier, [&](const MovementId& id) { return circles(id, by_id, path, done); });
  path.erase(at);
  return circle;
}

/// Two movements may not share an id, name or alias, nor a word that stands for several.
void check_aliases(const CatalogueRows& rows, Problems& problems) {
  std::map<std::string, const Placed<Movement>*> owner;
  for (const Placed<Movement>& placed : rows.movements) {
    const auto claim = [&](std::string_view field, const std::string& name) {
      const auto [at, fresh] = owner.try_emplace(domain::normal_name(name), &placed);
      if (!fresh && at->second->row.id != placed.row.id)
        problems.add(placed.place.problem(
            field, fmt::format("'{}' belongs to '{}' already", name, at->second->row.id.text)));
    };
    claim("id", placed.row.id.text);
    if (!placed.row.name.empty()) claim("name", placed.row.name);
    for (const std::string& alias : placed.row.aliases) claim("aliases", alias);
  }
  std::map<std::string, std::string> spelt;
  for (const Placed<Movement>& placed : rows.movements)
    for (const std::string& alias : placed.row.aliases) spelt.emplace(alias, placed.row.id.text);
  for (const Placed<Meanings>& word : rows.words)
    if (const auto at = spelt.find(word.row.word); at != spelt.end())
      problems.add(word.place.problem("ambiguous." + word.row.word,
                                      fmt::format("is an alias of '{}' already", at->second)));
}

/// A drill has no impact of its own: one with a jump or a run lands hard.
void check_limits(const domain::Drill& drill, const CatalogueRows& rows, RowCheck& check) {
  const bool lands_hard = std::ranges::find(drill.flags, "jump") != drill.flags.end();
  for (const Placed<domain::LimitKind>& limit : rows.limits)
    if (implies(limit.row, drill.flags, lands_hard) &&
        std::ranges::find(drill.avoid_with, limit.row.id) == drill.avoid_with.end())
      check.note("avoid_with", leaves_out(limit.row));
}

void check_drills(const CatalogueRows& rows, const Known& known, Problems& problems) {
  for (const Placed<domain::Drill>& placed : rows.drills) {
    RowCheck check(placed.place, problems);
    check.names("patterns", placed.row.patterns, "pattern", known.patterns);
    check.names("muscles", placed.row.muscles, "muscle", known.muscles);
    check.names("equipment", placed.row.equipment, "equipment", known.equipment);
    check.names("flags", placed.row.flags, "flag", known.flags);
    check.names("avoid_with", placed.row.avoid_with, "limit", known.limits);
    check.name("home.drill", placed.row.home_drill, "drill", known.drills);
    check_limits(placed.row, rows, check);
  }
}

void check_small_rows(const CatalogueRows& rows, const Known& known, Problems& problems) {
  for (const Placed<domain::LimitKind>& placed : rows.limits)
    for (const std::string& flag : placed.row.from_flags)
      if (flag != high_impact) RowCheck(placed.place, problems).name("from_flags", flag, "flag", known.flags);
  for (const Placed<Meanings>& placed : rows.words)
    RowCheck(placed.place, problems)
        .names("ambiguous." + placed.row.word, placed.row.movements, "movement", known.movements);
}

}  // namespace

void check_rows(const CatalogueRows& rows, Problems& problems) {
  const Known known{ids_of(rows.terms.categories),    ids_of(rows.terms.patterns),
                    ids_of(rows.terms.muscles),       ids_of(rows.terms.flags),
                    ids_of(rows.equipment, problems), ids_of(rows.limits, problems),
                    ids_of(rows.movements, problems), ids_of(rows.drills, problems)};
  ByMovement by_id;
  for (const Placed<Movement>& placed : rows.movements) by_id.try_emplace(placed.row.id, &placed);
  std::set<MovementId> done;
  for (const Placed<Movement>& placed : rows.movements) {
    RowCheck check(placed.place, problems);
    check_names(placed.row, known, check);
    check_limits(placed.row, rows, by_id, check);
    check_ladders(placed.row, by_id, check);
    std::set<MovementId> path;
    if (circles(placed.row.id, by_id, path, done))
      check.note("easier", "goes in a circle: some easier version leads back to where it began");
  }
  check_aliases(rows, problems);
  check_drills(rows, known, problems);
  check_small_rows(rows, known, problems);
}

}  // namespace repwright::store
