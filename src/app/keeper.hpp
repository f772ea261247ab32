#pragma once

#include <string>
#include <vector>

#include "base/result.hpp"
#include "domain/gym_class.hpp"
#include "domain/hall.hpp"
#include "domain/house.hpp"
#include "domain/people.hpp"

namespace repwright::app {

/// The port to where a changed gym is kept. A call that succeeded is kept even if the program is killed
/// right after; one that failed has changed nothing. Never called twice at once.
class Keeper {
 public:
  virtual ~Keeper() = default;
  virtual base::Result<void> keep_board(const std::string& id, const std::string& text) = 0;
  virtual base::Result<void> keep_class(const domain::GymClass& gym_class) = 0;
  virtual base::Result<void> keep_people(const std::vector<domain::Person>& people) = 0;
  virtual base::Result<void> keep_hall(const domain::Hall& hall) = 0;
  virtual base::Result<void> keep_house(const domain::House& house) = 0;
};

}  // namespace repwright::app
