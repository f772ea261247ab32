#pragma once

#include "calibration/profiles.hpp"
#include "domain/body_constants.hpp"
#include "domain/catalogue.hpp"

/// What the body model says of the five pieces from the marks alone.
namespace repwright::calibration {

using Forecast = std::array<double, piece_count>;  // as `Profile::score`; not a number: cannot be done

/// Each person's five pieces by the noise-free body of the middle of their distribution, alone on the floor.
/// In the order of `profiles`, on so many threads (0: all).
std::vector<Forecast> forecasts(const std::vector<Profile>& profiles, const domain::Catalogue& catalogue,
                                const domain::BodyConstants& constants, int threads);

/// The same by one body drawn from each person's distribution on one drawn day; another for each `run`.
std::vector<Forecast> drawn_forecasts(const std::vector<Profile>& profiles,
                                      const domain::Catalogue& catalogue,
                                      const domain::BodyConstants& constants, std::uint64_t run);

}  // namespace repwright::calibration
