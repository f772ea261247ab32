#pragma once

#include <cstdint>

#include "domain/kept.hpp"
#include "domain/score.hpp"

namespace repwright::domain {

/// A line for the score sheet, and who enters it.
struct NewScore {
  ScoreEntry entry;
  Stamp by;
};

/// Where such a line is kept; `is_new` unless a line of the same key was there before.
struct AddedScore {
  std::int64_t number = 0;
  bool is_new = true;
  bool operator==(const AddedScore&) const = default;
};

}  // namespace repwright::domain
