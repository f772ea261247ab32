#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "timetable/timetable.hpp"

/// What a clock on the wall shows of a timetable, stretch after stretch.
namespace repwright::timetable {

/// Part: a box without a clock of its own, such as a warm-up. Change: from one heat to the next. Tail: the
/// first of a staggered start are done, the others still go.
enum class CueKind : std::uint8_t { Part, CountIn, Work, Rest, Change, Tail };

enum class Counting : std::uint8_t { Up, Down };

/// OnWord: lasts until the coach goes on, whatever was planned.
enum class CueEnd : std::uint8_t { ByItself, OnWord };

/// Before each piece that people start together (common practice, no source).
inline constexpr base::Duration count_in = base::Duration::from_si(10);

/// One stretch of the class's own running time. Cues follow each other; heats, rounds and slots count from 0.
struct Cue {
  std::string id;  // the same for the same place of the timetable, also where something else of it changed
  CueKind kind = CueKind::Part;
  std::string name;
  std::optional<int> piece;  // index into Timetable::pieces
  domain::BlockId block;
  int heat = 0;
  int heats = 1;
  int round = 0;
  int rounds = 1;
  int slot = 0;
  int slots = 1;
  std::optional<base::Duration> length;  // of a cue that ends OnWord: what is planned, if anything is
  CueEnd end = CueEnd::ByItself;
  Counting counting = Counting::Down;
  bool called = false;                       // three, two, one before it ends
  base::Duration into;                       // from the heat's start signal to the begin of the cue
  std::vector<base::Duration> group_starts;  // of a staggered start, from the heat's signal; else empty
  bool operator==(const Cue&) const = default;
};

/// The cues of a class to which so many people come. A count-in takes the end of the rest or change before
/// it, so that nothing after it is late; where there is none, it comes on top. A part of the class waits for
/// the coach's word, unless what follows it stands at a clock time.
std::vector<Cue> cues_of(const Timetable& timetable, int people);

}  // namespace repwright::timetable
