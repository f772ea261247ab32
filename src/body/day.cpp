#include "body/day.hpp"

#include <cmath>

namespace repwright::body {

DayForm draw_day(base::Seed seed, std::uint64_t run, std::uint64_t person) {
  constexpr double together = 0.3;
  base::Stream stream(seed, run, person, base::Purpose::Day);
  const double first = stream.normal();
  const double second = together * first + std::sqrt(1 - together * together) * stream.normal();
  return {.critical = base::exp(0.02 * first),
          .sets = base::exp(0.05 * second),
          .drive = base::exp(0.06 * stream.normal())};
}

Body on_day(const Body& body, const DayForm& form) {
  Body today = body;
  for (double& set : today.best_set)
    if (set > 1) set *= form.sets;
  today.cadence *= form.drive;
  today.transition *= form.drive;
  return today;
}

double segment_factor(base::Seed seed, std::uint64_t run, std::uint64_t person, std::uint64_t segment) {
  const base::Stream stream(seed, run, person, base::Purpose::Step);
  return base::exp(0.03 * base::normal_quantile(base::unit_interval(stream.bits_at(segment))));
}

double judge_factor(base::Seed seed, std::uint64_t run, std::uint64_t person) {
  return base::Stream(seed, run, person, base::Purpose::Judge).lognormal(0.05);
}

double class_factor(base::Seed seed, std::uint64_t run) {
  return base::Stream(seed, run, 0, base::Purpose::Class).lognormal(0.015);
}

}  // namespace repwright::body
