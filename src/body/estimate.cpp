#include "body/estimate.hpp"

#include <algorithm>
#include <cmath>

#include "body/effort.hpp"
#include "body/knowledge.hpp"
#include "body/marks.hpp"

namespace repwright::body {

namespace {

using P = Parameter;
using Point = std::array<double, parameter_count>;

// How many reps short of the first pull-up one unit of the logarithm below zero is.
constexpr double reps_below = 6;
constexpr double lowest = 1 - 19.0 / reps_below;

double pull_log(double z, const PullScale& scale) {
  return scale.middle + (z > 0 ? scale.up : scale.down) * z;
}

}  // namespace

double set_of_log(double log_set) {
  if (log_set >= 0) return base::exp(log_set);
  // A floor without a slope would hide a mark from whom other marks have taken below it.
  constexpr double floor = lowest - 1;
  return 1 + reps_below * (log_set >= floor ? log_set : floor + 0.2 * (log_set - floor));
}

double log_of_set(double set) {
  return set >= 1 ? base::log(set) : (set - 1) / reps_below;
}

Body body_at(const Point& point, const PullScale& pull, const Constants& constants) {
  const auto value = [&](Parameter parameter) { return base::exp(point[index_of(parameter)]); };
  Body body;
  body.critical_speed = value(P::CriticalSpeed);
  body.reserve_distance = value(P::ReserveDistance);
  body.top_speed = body.critical_speed * value(P::TopSpeed);
  body.best_set = {value(P::Push), set_of_log(pull_log(point[index_of(P::Pull)], pull)), value(P::Legs),
                   value(P::Core), value(P::Grip)};
  body.best_lift = {value(P::SquatLift), value(P::HingeLift), value(P::PressLift), value(P::PullLift),
                    value(P::CleanLift)};
  body.cadence = value(P::Cadence);
  body.recovery = value(P::Recovery);
  body.transition = value(P::Transition);
  body.mass = value(P::Mass);
  body.machine = value(P::Machine);
  body.style_share = std::clamp(value(P::Style), 0.08, 0.5);
  const double critical = constants.run_rate * body.critical_speed + constants.run_base;
  body.vo2max = critical * value(P::OxygenPeak);
  return body;
}

BodyEstimate estimate(const domain::Person& person, const domain::Catalogue& catalogue,
                      const Constants& constants) {
  Likeness like{.sex = person.sex, .age = person.age, .training_years = person.training_years};
  if (person.mass) like.mass = person.mass->si();
  if (person.height) like.height = person.height->si();
  BodyEstimate out = prior(like, constants);
  const std::vector<Measurement<parameter_count>> marks =
      measurements(person.marks, out.pull, catalogue, constants);
  if (marks.empty()) return out;
  out.parameters = condition<parameter_count>(out.parameters, marks);
  out.spread = cholesky<parameter_count>(out.parameters.covariance);
  return out;
}

Body median(const BodyEstimate& estimate, const Constants& constants) {
  return body_at(estimate.parameters.mean, estimate.pull, constants);
}

Body draw(const BodyEstimate& estimate, base::Seed seed, std::uint64_t run, std::uint64_t person,
          const Constants& constants) {
  return draw_told(estimate, seed, run, person, constants).body;
}

}  // namespace repwright::body
