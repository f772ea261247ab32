#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "body/body.hpp"
#include "domain/ids.hpp"

namespace repwright::rehearsal {

/// Who comes, in the order of the floor plan's people. `drawn` gives another body of that person for every
/// run; it is called from several threads at once, and the same arguments must give the same body.
struct Cast {
  std::vector<domain::PersonId> ids;
  std::vector<std::string> names;
  std::vector<body::Body> median;
  std::function<body::Body(int person, int run)> drawn;
  double conditions = 1;  // what heat leaves of the critical rate
  /// So much longer than their body tells each line of work of a piece takes a person who is known to have
  /// done it: in a run, or `in_the_middle`. Their knack is in it and counts no more. Nothing, or empty: as
  /// the body tells. Called as `drawn` is.
  std::function<std::optional<double>(domain::BlockId piece, int person, int run)> stretch{};
};
inline constexpr int in_the_middle = -1;

}  // namespace repwright::rehearsal
