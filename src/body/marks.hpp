#pragma once

#include <vector>

#include "body/estimate.hpp"

namespace repwright::body {

/// Each mark as a measurement of the parameters: what is predicted and seen are logarithms (of seconds, reps,
/// kilograms, ml/kg/min). Marks that nothing can be learned from are left out.
std::vector<Measurement<parameter_count>> measurements(const std::vector<domain::Mark>& marks,
                                                       const PullScale& pull,
                                                       const domain::Catalogue& catalogue,
                                                       const Constants& constants);

/// Seconds of a lone all-out run over that many metres by the three-parameter hyperbola (Morton 1996), the
/// kept reserve left out; beyond half an hour slower by the drift of Riegel (1981).
double run_seconds(const Body& body, double metres, const Constants& constants);

/// The same for a machine.
double machine_seconds(const Body& body, const Effort& effort, double units, const Constants& constants);

/// Units of all-out work of a fresh body within that window, fractions included.
double units_within(const Body& body, const Effort& effort, double seconds, const Constants& constants);

}  // namespace repwright::body
