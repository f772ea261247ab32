#pragma once

#include <string>
#include <vector>

#include "body/body.hpp"
#include "body/constants.hpp"
#include "domain/catalogue.hpp"
#include "domain/fitted.hpp"
#include "domain/gym_class.hpp"
#include "domain/hall.hpp"
#include "domain/house.hpp"
#include "domain/people.hpp"
#include "domain/rehearsal.hpp"
#include "rehearsal/script.hpp"
#include "timetable/timetable.hpp"

namespace repwright::rehearsal {

/// To so many reps in one go somebody is helped, with a band, a box or plates taken off, who on the day
/// cannot do one as planned: what the plain fit gives whom it knows to have none.
inline constexpr double usual_help = 5;

/// All that scripts are written from; what it points to must outlive the call. `people` and `bodies` (middle
/// bodies) go in the order of the fitted board's people.
struct WriteRequest {
  const domain::FittedBoard& fitted;
  const timetable::Timetable& timetable;
  const domain::Catalogue& catalogue;
  const domain::Hall& hall;
  const domain::House& house;
  const domain::GymClass& gym_class;
  const std::vector<domain::Person>& people;
  const std::vector<body::Body>& bodies;
  const body::Constants& constants;
  double helped_set = usual_help;  // reps in one go of who has not one in a run; 0: nobody is helped
};

/// What the floor plays, and what was seen while writing it: kit that is short, closed routes, versions
/// swapped for a limit, lines that nobody knows.
struct WrittenFloor {
  FloorPlan plan;
  std::vector<domain::Finding> findings;
  std::vector<std::string> notes;
};

/// One script per person and piece of the timetable. What a board leaves open is decided by the plain rules
/// of docs/models/scripts.md.
WrittenFloor write_scripts(const WriteRequest& request);

}  // namespace repwright::rehearsal
