#pragma once

#include <string>
#include <vector>

#include "domain/body_constants.hpp"

/// Which constants of the body model are fitted, and how far each may plausibly stand from where it was set
/// by hand.
namespace repwright::calibration {

struct Tunable {
  std::string table;  // of body.toml: "model", "model.fast_time", "prior", "marks", or the id of a movement
  std::string key;
  double hand_set = 1;    // judgement, from before anything was fitted
  double plausible = .2;  // standard deviation around it: of its logarithm, or of itself
  bool logarithmic = true;
};

/// The fitted ones.
const std::vector<Tunable>& tunables();

/// The number behind one of them.
double& constant_of(domain::BodyConstants& constants, const Tunable& tunable);

/// `base` with every tunable so many plausible deviations from its hand-set value, within what body.toml
/// allows.
domain::BodyConstants moved(const domain::BodyConstants& base, const std::vector<double>& deviations);

/// The inverse of `moved`: how many plausible deviations each tunable of `constants` stands from where it was
/// hand-set.
std::vector<double> deviations_of(domain::BodyConstants constants);

}  // namespace repwright::calibration
