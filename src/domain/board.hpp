#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/quantity.hpp"
#include "domain/ids.hpp"

/// The board: what the coach chalked, read. docs/guide/board.md is the language, docs/reading.schema.json its
/// JSON. Every type here is a plain, comparable value.
namespace repwright::domain {

enum class Unit : std::uint8_t { Reps, Metres, Kilocalories, Seconds };

/// An amount of one set or round that is open upwards, as in `3+`.
struct AtLeast {
  double count = 0;
  bool operator==(const AtLeast&) const = default;
};
/// As many as possible, or so many short of failure, as in `max-2`.
struct Max {
  int short_of = 0;
  bool operator==(const Max&) const = default;
};
using SetAmount = std::variant<double, AtLeast, Max>;
/// One amount per set or round, in order, as in `27-22-17`.
struct PerSet {
  std::vector<SetAmount> amounts;
  bool operator==(const PerSet&) const = default;
};
/// Anything from `min` to `max`, as in `6-8`.
struct Range {
  double min = 0;
  double max = 0;
  bool operator==(const Range&) const = default;
};
/// An amount that grows each round, as in `2-4-6-...`.
struct Climb {
  double start = 0;
  double step = 0;
  bool operator==(const Climb&) const = default;
};
/// Two amounts by the house's tier rule, as in `18/14 cal`.
struct Tiers {
  double first = 0;
  double second = 0;
  bool operator==(const Tiers&) const = default;
};
/// One amount per level, in the order of the block's `levels`.
struct PerLevel {
  std::vector<double> amounts;
  bool operator==(const PerLevel&) const = default;
};
/// As long as the work it guards lasts (a gate only).
struct WhileWorking {
  bool operator==(const WhileWorking&) const = default;
};
using Amount = std::variant<double, AtLeast, Max, Range, PerSet, Climb, Tiers, PerLevel, WhileWorking>;

/// Loads per implement: one, two (heavier and lighter tier by the house rule), or one per level.
struct Loads {
  std::vector<base::Mass> masses;
  bool by_level = false;
  bool operator==(const Loads&) const = default;
};
enum class ShareOf : std::uint8_t { OneRepBest, TodayBest };
/// A load as percent of a best: one number for all sets, or one per set.
struct LoadShare {
  std::vector<double> percent;
  ShareOf of = ShareOf::OneRepBest;
  bool operator==(const LoadShare&) const = default;
};
/// A load relative to last week's: plainly above it, or above it by `plus`.
struct LoadStep {
  std::optional<base::Mass> plus;
  bool operator==(const LoadStep&) const = default;
};
/// Seconds down, pause, up, top; nothing means explosive (`X`).
using Tempo = std::array<std::optional<int>, 4>;

struct ScaleOption {
  MovementId movement;
  double factor = 1;
  bool operator==(const ScaleOption&) const = default;
};
/// Versions named on the board: in falling order, or one per level.
struct Scale {
  std::vector<ScaleOption> options;
  bool by_level = false;
  bool operator==(const Scale&) const = default;
};

enum class Share : std::uint8_t { Total, Sync, Each };
enum class PartnerMode : std::uint8_t { OneWorks, Free };

struct Item;
/// What the others hold while one works.
struct Gate {
  std::optional<MovementId> movement;
  std::string free_text;
  Unit unit = Unit::Seconds;
  bool operator==(const Gate&) const = default;
};

/// One line of work. `movement` is empty when the catalogue does not know it; then `free_text` holds the
/// words.
struct Item {
  StepId step;
  std::optional<MovementId> movement;
  std::string free_text;
  Amount amount = 0.0;
  Unit unit = Unit::Reps;
  std::optional<Loads> loads;
  int implements = 1;
  std::optional<LoadShare> load_share;
  std::optional<LoadStep> load_step;
  std::optional<Range> effort;  // RPE; min == max for one number
  std::optional<Tempo> tempo;
  std::string pace;  // "5k", "easy"; empty: none said
  bool each_side = false;
  std::optional<Scale> scale;
  bool personal_version = false;  // 'pull', 'push': each person's own
  std::optional<Share> share;
  std::optional<PartnerMode> mode;
  std::optional<Gate> gate;
  std::optional<MovementId> second_station;
  std::vector<base::Length> heights;  // a box's 60/50 cm: one, or by tier
  std::string note;
  bool operator==(const Item&) const = default;
};

enum class BlockKind : std::uint8_t {
  ForTime,
  Amrap,
  Every,
  Intervals,
  Sets,
  Superset,
  Circuit,
  Ladder,
  Partner,
  Relay,
  Build,
  Accumulate,
  ForDistance,
  MaxEffort,
  Window,
  Rest,
  Note,
  Optional,
  Once,
  Rounds,
  Partition,
  Part
};
enum class Score : std::uint8_t {
  None,
  Time,
  Times,
  RoundsReps,
  RungReps,
  Reps,
  RepsSum,
  Kcal,
  KcalSum,
  Distance,
  DistanceSum,
  MaxTime,
  MinTime,
  MinInterval,
  MaxInterval,
  Load,
  Place,
  Points,
  LastFullMinute
};

enum class RestKind : std::uint8_t { Fixed, Ratio, Free };
struct RestRule {
  RestKind kind = RestKind::Fixed;
  base::Duration length;  // Fixed
  double work = 1;        // Ratio
  double rest = 1;        // Ratio
  bool between_only = false;
  bool operator==(const RestRule&) const = default;
};
/// Waterfall: `people` start together, the next ones `every` later.
struct Stagger {
  base::Duration every;
  int people = 1;
  bool operator==(const Stagger&) const = default;
};
/// A duty inside another clock, first at `first`, then `every` so often.
struct Interrupt {
  base::Duration every;
  base::Duration first;
  std::vector<Item> items;
  bool operator==(const Interrupt&) const = default;
};
struct LevelRule {
  std::string level;
  int rounds = 0;
  bool operator==(const LevelRule&) const = default;
};
/// What the middle of the class should reach; an open end has no `max`.
struct Intent {
  struct Window {
    double min = 0;
    std::optional<double> max;
    bool operator==(const Window&) const = default;
  };
  std::optional<Window> time;  // seconds
  std::optional<Window> rounds;
  std::optional<Range> effort;
  std::optional<base::Duration> spare;
  bool operator==(const Intent&) const = default;
};
struct OddTeam {
  int size = 3;
  double factor = 1;
  bool operator==(const OddTeam&) const = default;
};
enum class WorkMode : std::uint8_t {
  AlternateByPiece,
  AlternateByRound,
  SwapParts  // everybody at another item (or child) at the same time; all swap when all are done
};

/// One part of the session. Which fields a kind has is the table in docs/guide/reading.md.
/// Exactly one of `items`, `slots` (of Every and Circuit; an empty slot is rest) and `children` holds the
/// work.
struct Block {
  BlockKind kind = BlockKind::ForTime;
  BlockId id;
  std::string title;
  std::string text;
  std::optional<int> rounds, sets, laps, intervals, turns_each, lanes, heats;
  std::vector<int> team_sizes;
  std::optional<base::Duration> duration, cap, work, every, rest, lap_rest, from, to;
  std::optional<RestRule> rest_rule;
  std::optional<Score> score;
  bool carry_over = false;
  bool keep_place = false;
  bool quiet = false;
  std::optional<Stagger> start;
  std::optional<Interrupt> interrupt;
  std::vector<Item> penalty;     // at each break
  std::vector<Item> after_fail;  // each further interval for whoever is out
  std::vector<std::string> levels;
  std::vector<LevelRule> level_rules;
  std::optional<WorkMode> work_mode;
  std::optional<Intent> intent;
  std::optional<base::Mass> vest;
  std::optional<MovementId> odd_start;
  std::optional<OddTeam> odd_team;
  std::vector<Item> items;
  std::vector<std::vector<Item>> slots;
  std::vector<Block> children;
  bool operator==(const Block&) const = default;
};

struct Board {
  std::string title;
  std::vector<Block> blocks;
  bool operator==(const Board&) const = default;
};

}  // namespace repwright::domain
