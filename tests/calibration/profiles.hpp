#pragma once

#include <array>
#include <filesystem>
#include <vector>

#include "base/result.hpp"
#include "domain/people.hpp"

/// The public profiles that the shared constants of the body model are checked and fitted on.
namespace repwright::calibration {

inline constexpr std::size_t piece_count = 5;

/// One adult: marks, and what they scored in the five mixed pieces.
struct Profile {
  int id = 0;
  domain::Person person;
  std::array<double, piece_count> score{};  // s; reps in the fifth; not a number: none
};

/// The rows of marks-and-pieces.csv (S. Swift 2015, public self-reported profiles); fails on a column that is
/// not there and on a cell that is no number.
base::Result<std::vector<Profile>> load_profiles(const std::filesystem::path& file);

}  // namespace repwright::calibration
