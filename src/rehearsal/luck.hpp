#pragma once

#include <cstdint>

#include "base/random.hpp"
#include "rehearsal/cast.hpp"
#include "rehearsal/floor.hpp"

/// The luck of one run: who is in which form, how strict the count is, how long the coach talks.
/// docs/decisions/luck.md.
namespace repwright::rehearsal {

inline constexpr double briefing_overrun = 1.3;  // the middle briefing, as a share of the planned one
inline constexpr double briefing_spread = 0.1;

/// Whose bodies a run takes: the middle ones, or drawn ones.
enum class Bodies : std::uint8_t { Median, Drawn };

/// Which luck: of which seed, in which run.
struct RunNumber {
  base::Seed seed;
  std::uint64_t run = 0;
};

/// A run without luck: middle bodies, an even day. Targets are left empty.
RunSetting even_day(const Cast& cast, const timetable::Timetable& timetable);

/// Sets bodies, form and luck of that run; keeps the targets. Draws depend on seed, run and the
/// person's id, on nothing else.
void draw_run(RunSetting& setting, const Cast& cast, const timetable::Timetable& timetable, RunNumber number,
              Bodies bodies);

/// What stands for a person in the keys of their draws: the same in any company.
std::uint64_t person_key(const domain::PersonId& id);

}  // namespace repwright::rehearsal
