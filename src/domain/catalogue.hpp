#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/quantity.hpp"
#include "domain/board.hpp"
#include "domain/ids.hpp"

/// The movement catalogue: what the trade knows of each movement, as values. Files are read in `store`.
namespace repwright::domain {

enum class Station : std::uint8_t { Own, Shared, Lane };
enum class Impact : std::uint8_t { None, Low, High };

/// Seconds for one unit of work, rests excluded: fresh and hurrying, and held for ten minutes and more.
struct Pace {
  double brisk = 0;
  double sustained = 0;
  bool operator==(const Pace&) const = default;
};
/// The set (reps, metres, seconds) a person plans before the first rest, by level.
struct UnbrokenSet {
  double novice = 0;
  double competent = 0;
  double strong = 0;
  bool operator==(const UnbrokenSet&) const = default;
};
struct TypicalLoad {
  base::Mass light, medium, heavy;
  bool operator==(const TypicalLoad&) const = default;
};
struct HomeVersion {
  MovementId movement;
  double factor = 1;
  std::string basis;  // reps, time, reps-per-kcal
  bool operator==(const HomeVersion&) const = default;
};
struct Fault {
  std::string fault;
  std::string cue;
  bool operator==(const Fault&) const = default;
};

struct Movement {
  MovementId id;
  std::string name;
  std::string spoken;       // as a coach says it: 'kettlebell swing'; empty: as the name
  std::string spoken_many;  // more than one of it; empty: by the rule of domain/spoken.hpp
  std::vector<std::string> aliases;
  std::string category;  // an id of Catalogue::terms.categories, as are patterns, muscles and flags
  std::vector<std::string> patterns;
  std::vector<std::string> primary_muscles, secondary_muscles;
  std::vector<EquipmentId> equipment;
  base::Area space;
  std::optional<base::Length> ceiling;
  Station station = Station::Own;
  std::map<Unit, Pace> pace;  // at least the default unit
  Unit default_unit = Unit::Reps;
  std::optional<UnbrokenSet> unbroken;
  base::Duration break_rest;
  base::Duration on_off;
  std::optional<double> body_fraction;
  std::optional<base::Length> rise;
  Impact impact = Impact::None;
  std::vector<std::string> flags;
  std::vector<MovementId> easier, harder;
  std::vector<HomeVersion> home;
  std::string standard_start, standard_finish;
  std::vector<Fault> faults;
  std::vector<std::string> cautions;
  std::optional<TypicalLoad> typical_load;
  std::string eccentric_stress;
  std::string count_rule;  // empty: count as written
  double pace_spread = 0;
  std::vector<LimitId> avoid_with;
  std::map<LimitId, MovementId> swap_for;
  bool kit_free = false;
  std::string source;
  bool operator==(const Movement&) const = default;

  /// Amounts are of one side, as the count rule says.
  bool counts_per_side() const;
};

/// A thing that people share or own a place at. `kind`: fixed, room, machine, loose, home.
struct Equipment {
  EquipmentId id;
  std::string name;
  std::string kind;
  base::Length width;
  int people_per_unit = 1;
  bool operator==(const Equipment&) const = default;
};
struct LimitKind {
  LimitId id;
  std::string name;  // never shown to members: the floor sees the person's action text
  std::vector<std::string> from_flags;
  bool operator==(const LimitKind&) const = default;
};
struct Drill {
  std::string id, name, phase;
  std::vector<std::string> joints, patterns, muscles, equipment, flags;
  base::Duration length;
  bool both_sides_included = false;
  std::string how, coach_line;
  std::string home_kind, home_drill, home_text;
  base::Area space;
  std::vector<LimitId> avoid_with;
  int effort = 0;  // 0 to 10
  std::string source;
  bool operator==(const Drill&) const = default;
};

/// A word that rows use, and what it says.
struct Term {
  std::string id;
  std::string name;
  bool operator==(const Term&) const = default;
};
/// The closed vocabularies of the rows, each sorted by id.
struct Terms {
  std::vector<Term> categories, patterns, muscles, flags;
  bool operator==(const Terms&) const = default;
};

struct Catalogue {
  int version = 0;
  Terms terms;
  std::vector<Movement> movements;  // sorted by id
  std::vector<Drill> drills;
  std::vector<Equipment> equipment;
  std::vector<LimitKind> limits;
  std::map<std::string, std::vector<MovementId>> ambiguous_words;
  bool operator==(const Catalogue&) const = default;

  /// The movement of that id, or null.
  const Movement* find(const MovementId& id) const;
  const Equipment* find(const EquipmentId& id) const;
};

/// Whether a person with that limit must not do the movement.
bool forbidden(const Movement& movement, const LimitId& limit);

}  // namespace repwright::domain
