#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <vector>

#include "app/rehearse_class.hpp"
#include "app/who_comes.hpp"

/// Who comes to a class, as the gym's scores know them.
namespace repwright::app {

/// How somebody is known from the gym's scores before the class.
enum class Standing : std::uint8_t {
  Unknown,  // the gym has no scores, or the class no date
  First,    // no score yet
  Back,     // the last one is three weeks old or more (common practice, no source)
  Regular
};

struct Comer {
  domain::Person person;
  base::Duration late;
  Standing standing = Standing::Unknown;
  int sessions = 0;  // days with a score
  std::optional<std::chrono::year_month_day> last_came;
};

/// In the order of `attendance`.
std::vector<Comer> comers_of(const Attendance& attendance, const GymKnowledge& gym,
                             const domain::GymClass& gym_class);

}  // namespace repwright::app
