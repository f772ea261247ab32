#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "base/quantity.hpp"
#include "domain/clock_act.hpp"
#include "timetable/cues.hpp"

/// Where a running clock stands: nothing but the cues, what was done to it, and the time.
namespace repwright::timetable {

enum class ClockState : std::uint8_t { Ready, Running, Paused, Over };

/// A clock at one instant. `cue` counts from 0; of a clock that is over it is the last one.
struct ClockPosition {
  ClockState state = ClockState::Ready;
  int cue = 0;
  base::SimTime elapsed;                // since the begin of the cue
  base::SimTime added;                  // to the length of the cue
  std::optional<base::SimTime> cut;     // where a last call ends an open cue, from the begin of the cue
  std::optional<std::int64_t> call_ms;  // when the last call of this cue was
  bool operator==(const ClockPosition&) const = default;
};

/// How long a last call leaves to a cue that has no end of its own (common practice, no source).
inline constexpr base::Duration last_minute = base::minute;

/// The clock at `now_ms` after those acts, in the order in which they were done. An act that does not fit the
/// clock as it is does nothing; one that claims to be earlier than the act before it counts as just after it.
/// A cue that is gone since is looked for by nobody: Start and Jump then do nothing.
ClockPosition position_at(std::span<const domain::ClockAct> acts, std::span<const Cue> cues,
                          std::int64_t now_ms);

/// Whether the act would change such a clock.
bool fits(const ClockPosition& position, std::span<const Cue> cues, const domain::ClockAct& act);

/// The acts that count: those that were not taken back.
std::vector<domain::ClockAct> still_done(std::span<const domain::ClockAct> acts);

/// When the cue ends, from its begin; nothing if on a word only.
std::optional<base::SimTime> end_of(const ClockPosition& position, const Cue& cue);

/// When cues begin if nothing more is done: the one that runs first, up to one that ends on a word.
struct CueStart {
  int cue = 0;
  std::int64_t at_ms = 0;
  bool operator==(const CueStart&) const = default;
};
struct LineAhead {
  std::vector<CueStart> starts;         // empty unless it runs
  std::optional<std::int64_t> over_ms;  // when all is over, if nobody has to say a word before
  bool operator==(const LineAhead&) const = default;
};
LineAhead line_ahead(const ClockPosition& position, std::span<const Cue> cues, std::int64_t now_ms);

}  // namespace repwright::timetable
