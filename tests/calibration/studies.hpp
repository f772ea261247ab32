#pragma once

#include <string>
#include <vector>

#include "domain/body_constants.hpp"
#include "domain/catalogue.hpp"

/// What the body model says of published measurements; sources and circumstances stand at each function.
namespace repwright::calibration {

struct Band {
  double low = 0, high = 0;
  bool holds(double value) const { return value >= low && value <= high; }
};

/// One published observation: where a prediction should be, where it may still be, and where it is.
struct Measured {
  std::string name;
  Band ideal, accept;
  double value = 0;
};

struct Model {
  const domain::Catalogue& catalogue;
  const domain::BodyConstants& constants;
};

/// Farrar, Mayhew, Koch 2010: two-hand swings with 16 kg in 12 min.
std::vector<Measured> swings(const Model& model);
/// Podstawski et al. 2019 and Tai et al. 2022: squat thrusts in 3 min.
std::vector<Measured> squat_thrusts(const Model& model);
/// Ryman Augustsson et al. 2009: push-ups in 30 s against the largest set.
std::vector<Measured> push_ups(const Model& model);
/// Four studies of sets to failure by the rest between them.
std::vector<Measured> sets_to_failure(const Model& model);
/// Bellinger, Morris, Roberts 2025: repeats of 400 m against repeats of 1 km.
std::vector<Measured> run_repeats(const Model& model);
/// A mixed class of 20-50 years over 400, 800 and 1600 m: common practice, no source.
std::vector<Measured> class_runs(const Model& model);

/// All of the above.
std::vector<Measured> all_studies(const Model& model);

}  // namespace repwright::calibration
