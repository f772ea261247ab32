#pragma once

#include <optional>
#include <vector>

#include "base/quantity.hpp"
#include "base/result.hpp"
#include "domain/gym_class.hpp"
#include "domain/people.hpp"

namespace repwright::app {

/// Who really stands in the hall, in the order of arrival in the class's list, and how late each is.
struct Attendance {
  std::vector<domain::Person> people;
  std::vector<base::Duration> late;  // after the start of the class, per person
};

/// The arrivals of the class if it names any, else those booked, else everybody in `people`; filled up with
/// unknown people to `heads`, or cut to the first `heads`. Fails with NotFound naming every id that `people`
/// lacks, and with Invalid when nobody comes.
base::Result<Attendance> who_comes(const std::vector<domain::Person>& people,
                                   const domain::GymClass& gym_class, std::optional<int> heads);

}  // namespace repwright::app
