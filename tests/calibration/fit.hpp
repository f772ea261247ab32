#pragma once

#include <cstdint>
#include <functional>
#include <string>

#include "calibration/forecasts.hpp"
#include "calibration/studies.hpp"

/// Fits the tunable constants to profiles and to the published measurements at once.
namespace repwright::calibration {

/// Which part of the profiles somebody is in: 0 to 4 are the folds of the cross-validation, 5 is held out
/// and looked at only when all is decided.
int part_of(int id);
inline constexpr int folds = 5;
inline constexpr int held_out = 5;

std::vector<Profile> those_in(const std::vector<Profile>& profiles, const std::function<bool(int part)>& in);

struct FitPlan {
  int rounds = 8;
  int threads = 0;
  std::function<void(int round, double sum)> told{};
};

/// The constants with the tunables where the weighted squares of log errors, of how far ranges are from the
/// errors, of what the published checks miss, and of the distance from where they were set by hand are least
/// together, searched from `start` on.
domain::BodyConstants fitted(const std::vector<Profile>& profiles, const domain::Catalogue& catalogue,
                             const domain::BodyConstants& start, const FitPlan& plan);

/// The parts of the sum that `fitted` makes small, in words.
std::string misfit(const std::vector<Profile>& profiles, const domain::Catalogue& catalogue,
                   const domain::BodyConstants& constants);

/// Forecasts of each of the five folds without it, around `constants`, which were fitted to all of them: each
/// fold's constants are these, moved by what leaving the errors of that fold out changes in one step of Gauss
/// and Newton. All tunables move. In the order of `profiles`; whoever is held out is forecast by `constants`.
std::vector<Forecast> cross_validated_near(const std::vector<Profile>& profiles,
                                           const domain::Catalogue& catalogue,
                                           const domain::BodyConstants& by_hand,
                                           const domain::BodyConstants& constants, const FitPlan& plan);

/// The same, each fold's constants fitted anew without it, searched from `constants` on.
std::vector<Forecast> cross_validated(const std::vector<Profile>& profiles,
                                      const domain::Catalogue& catalogue,
                                      const domain::BodyConstants& constants, const FitPlan& plan);

}  // namespace repwright::calibration
