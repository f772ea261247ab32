#pragma once

#include "domain/body_constants.hpp"

namespace repwright::body {

using Constants = domain::BodyConstants;
using Group = domain::MuscleGroup;
using domain::Lift;
using domain::lift_count;
inline constexpr std::size_t group_count = domain::muscle_group_count;

constexpr std::size_t index_of(Group group) {
  return static_cast<std::size_t>(group);
}
constexpr std::size_t index_of(Lift lift) {
  return static_cast<std::size_t>(lift);
}

}  // namespace repwright::body
