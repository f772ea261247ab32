#pragma once

#include <vector>

#include "calibration/profiles.hpp"
#include "domain/body_constants.hpp"
#include "domain/catalogue.hpp"

/// What the body model says of the five pieces from the marks alone.
namespace repwright::calibration {

using Forecast = std::array<double, piece_count>;  // as `Profile::score`; not a number: cannot be done

bool can_do(double forecast);

/// Each person's five pieces alone on the floor by so many bodies drawn from their distribution, each on a
/// drawn day; two by two on either side of the middle. [profile][draw], on so many threads (0: all).
std::vector<std::vector<Forecast>> drawn_forecasts(const std::vector<Profile>& profiles,
                                                   const domain::Catalogue& catalogue,
                                                   const domain::BodyConstants& constants, std::size_t draws,
                                                   int threads);

/// What is said of a person: per piece the geometric mean of the middle half of their draws; not a number if
/// half of the drawn bodies cannot do it.
Forecast middle_of(const std::vector<Forecast>& draws);
std::vector<Forecast> middles_of(const std::vector<std::vector<Forecast>>& drawn);

/// `middles_of` enough draws for the figures of a table, in the order of `profiles`.
std::vector<Forecast> forecasts(const std::vector<Profile>& profiles, const domain::Catalogue& catalogue,
                                const domain::BodyConstants& constants, int threads);
inline constexpr std::size_t draws_of_a_forecast = 64;

}  // namespace repwright::calibration
