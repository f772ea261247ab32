#pragma once

#include <cstdint>

#include "base/random.hpp"
#include "body/body.hpp"

/// What differs between two days of the same person, each a function of (seed, run, person): the same body
/// may be taken through other days. Standard deviations of logarithms: docs/models/body.md, 'Days'.
namespace repwright::body {

struct DayForm {
  double critical = 1;  // multiplies the critical rate
  double sets = 1;      // multiplies the largest sets
  double drive = 1;     // multiplies seconds per rep and transitions
};

DayForm draw_day(base::Seed seed, std::uint64_t run, std::uint64_t person);

/// The body as it is that day; the critical factor goes to `fresh`.
Body on_day(const Body& body, const DayForm& form);

/// Multiplies the seconds of one segment (a set, a run) of the person's class.
double segment_factor(base::Seed seed, std::uint64_t run, std::uint64_t person, std::uint64_t segment);

/// Multiplies the reps that it takes this person's judge to see one.
double judge_factor(base::Seed seed, std::uint64_t run, std::uint64_t person);

/// Multiplies everybody's critical rate: music, coach, floor.
double class_factor(base::Seed seed, std::uint64_t run);

}  // namespace repwright::body
