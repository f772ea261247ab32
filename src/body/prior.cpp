#include <algorithm>
#include <cmath>

#include "body/estimate.hpp"

/// The prior: docs/models/body.md, 'Prior', has the sources of every number here.
namespace repwright::body {

namespace {

using P = Parameter;
using Belief = domain::PriorConstants;

struct Pair {
  Parameter one, other;
  double correlation;
};

// The first block is the published and judged matrix of seven (T11.8); the others are hand-set around it.
constexpr std::array pairs{
    Pair{P::CriticalSpeed, P::ReserveDistance, -.20},
    Pair{P::CriticalSpeed, P::Push, .45},
    Pair{P::CriticalSpeed, P::Pull, .50},
    Pair{P::CriticalSpeed, P::Legs, .45},
    Pair{P::CriticalSpeed, P::Core, .45},
    Pair{P::CriticalSpeed, P::Cadence, -.35},
    Pair{P::ReserveDistance, P::Push, .10},
    Pair{P::ReserveDistance, P::Pull, .10},
    Pair{P::ReserveDistance, P::Legs, .10},
    Pair{P::ReserveDistance, P::Core, .10},
    Pair{P::ReserveDistance, P::Cadence, -.10},
    Pair{P::Push, P::Pull, .65},
    Pair{P::Push, P::Legs, .45},
    Pair{P::Push, P::Core, .49},
    Pair{P::Push, P::Cadence, -.30},
    Pair{P::Pull, P::Legs, .40},
    Pair{P::Pull, P::Core, .45},
    Pair{P::Pull, P::Cadence, -.40},
    Pair{P::Legs, P::Core, .57},
    Pair{P::Legs, P::Cadence, -.30},
    Pair{P::Core, P::Cadence, -.30},

    Pair{P::Grip, P::CriticalSpeed, .20},
    Pair{P::Grip, P::Push, .35},
    Pair{P::Grip, P::Pull, .50},
    Pair{P::Grip, P::Legs, .25},
    Pair{P::Grip, P::Core, .35},
    Pair{P::Grip, P::Cadence, -.15},
    Pair{P::Recovery, P::Push, -.10},
    Pair{P::Recovery, P::Legs, -.10},
    Pair{P::Recovery, P::Core, -.10},
    Pair{P::Transition, P::Push, -.15},
    Pair{P::Style, P::CriticalSpeed, .10},
    Pair{P::Style, P::Push, .10},
    Pair{P::Style, P::Pull, .15},
    Pair{P::TopSpeed, P::CriticalSpeed, -.20},
    Pair{P::TopSpeed, P::Cadence, -.15},

    Pair{P::SquatLift, P::HingeLift, .75},
    Pair{P::SquatLift, P::PressLift, .65},
    Pair{P::SquatLift, P::PullLift, .65},
    Pair{P::SquatLift, P::CleanLift, .75},
    Pair{P::HingeLift, P::PressLift, .65},
    Pair{P::HingeLift, P::PullLift, .70},
    Pair{P::HingeLift, P::CleanLift, .65},
    Pair{P::PressLift, P::PullLift, .65},
    Pair{P::PullLift, P::CleanLift, .65},
    Pair{P::PressLift, P::Push, .40},
    Pair{P::PullLift, P::Pull, .40},
};

struct FittedPair {
  Parameter one, other;
  double Belief::* correlation;
};
// After the others: each replaces what stands there.
constexpr std::array fitted_pairs{
    FittedPair{P::CleanLift, P::CriticalSpeed, &Belief::clean_speed},
    FittedPair{P::CleanLift, P::ReserveDistance, &Belief::clean_reserve},
    FittedPair{P::CleanLift, P::Cadence, &Belief::clean_cadence},
    FittedPair{P::CleanLift, P::Push, &Belief::clean_push},
    FittedPair{P::CleanLift, P::Pull, &Belief::clean_pull},
    FittedPair{P::CleanLift, P::Legs, &Belief::clean_legs},
    FittedPair{P::CleanLift, P::Core, &Belief::clean_core},
    FittedPair{P::CleanLift, P::Recovery, &Belief::clean_recovery},
    FittedPair{P::CleanLift, P::Transition, &Belief::clean_transition},
    FittedPair{P::CleanLift, P::Machine, &Belief::clean_machine},
    FittedPair{P::CleanLift, P::PressLift, &Belief::clean_press},
    FittedPair{P::SquatLift, P::Cadence, &Belief::squat_cadence},
    FittedPair{P::SquatLift, P::Push, &Belief::squat_push},
    FittedPair{P::SquatLift, P::Legs, &Belief::squat_legs},
    FittedPair{P::SquatLift, P::Machine, &Belief::squat_machine},
    FittedPair{P::Recovery, P::CriticalSpeed, &Belief::speed_recovery},
    FittedPair{P::Transition, P::CriticalSpeed, &Belief::speed_transition},
    FittedPair{P::Machine, P::CriticalSpeed, &Belief::speed_machine},
    FittedPair{P::Recovery, P::Pull, &Belief::pull_recovery},
    FittedPair{P::Transition, P::Pull, &Belief::pull_transition},
    FittedPair{P::PressLift, P::Pull, &Belief::pull_press},
    FittedPair{P::Recovery, P::Cadence, &Belief::cadence_recovery},
    FittedPair{P::Transition, P::Cadence, &Belief::cadence_transition},
};

constexpr std::array lifts{P::SquatLift, P::HingeLift, P::PressLift, P::PullLift, P::CleanLift};

/// Medians of one sex at 35 years, two years of training and the usual mass, and the same for everybody's
/// log standard deviations.
struct Typical {
  double critical_speed, reserve, push, push_sd, legs, core, grip, cadence, top_speed_ratio, mass;
  PullScale pull;
  std::array<double, lift_count> lift_per_mass;
};
constexpr Typical men{
    3.35, 165, 28, .50, 90, 45, 50, 1.0, 2.25, 80, {1.6, 0.9, 2.4}, {1.15, 1.45, .56, .85, .80}};
constexpr Typical women{
    3.00, 145, 11, .75, 80, 40, 38, 1.08, 2.20, 66, {-.5, 1.3, 2.0}, {.86, 1.12, .38, .58, .55}};

using Vector = std::array<double, parameter_count>;

struct Half {
  Vector mean{}, sd{};
  PullScale pull;
};

void put(Half& half, Parameter parameter, double median, double sd) {
  half.mean[index_of(parameter)] = std::log(median);
  half.sd[index_of(parameter)] = sd;
}

Half half_of(const Typical& typical, const Belief& belief) {
  Half half;
  put(half, P::CriticalSpeed, typical.critical_speed, .16);
  put(half, P::ReserveDistance, typical.reserve, .30);
  put(half, P::Push, typical.push, typical.push_sd);
  put(half, P::Pull, 1, 1);
  put(half, P::Legs, typical.legs, .45);
  put(half, P::Core, typical.core, .45);
  put(half, P::Grip, typical.grip, .40);
  put(half, P::Cadence, typical.cadence, belief.cadence_sd);
  put(half, P::Recovery, 1, belief.recovery_sd);
  for (std::size_t l = 0; l < lift_count; ++l)
    put(half, lifts.at(l), typical.lift_per_mass.at(l) * typical.mass, belief.lift_sd);
  put(half, P::Machine, 1, belief.machine_sd);
  put(half, P::Transition, belief.transition, belief.transition_sd);
  put(half, P::Style, belief.style, belief.style_sd);
  put(half, P::TopSpeed, typical.top_speed_ratio, .08);
  put(half, P::OxygenPeak, 1 / .88, .07);
  put(half, P::Mass, typical.mass, .14);
  half.pull = typical.pull;
  return half;
}

/// One normal with the mean and variance of the two in equal shares.
Half mixture(const Half& a, const Half& b) {
  Half out;
  for (std::size_t i = 0; i < parameter_count; ++i) {
    const double apart = 0.5 * (a.mean[i] - b.mean[i]);
    out.mean[i] = 0.5 * (a.mean[i] + b.mean[i]);
    out.sd[i] = std::sqrt(0.5 * (a.sd[i] * a.sd[i] + b.sd[i] * b.sd[i]) + apart * apart);
  }
  out.pull = {.middle = .55, .up = 1.4, .down = 2.4};
  return out;
}

void shift(Half& half, Parameter parameter, double by) {
  half.mean[index_of(parameter)] += by;
}

void age_shifts(Half& half, double age) {
  const double older = age - 35;
  const double late = std::max(0.0, age - 30) - 5;
  shift(half, P::CriticalSpeed, -.0065 * late);
  shift(half, P::Push, -.020 * older);
  half.pull.middle += -.014 * older;
  shift(half, P::Legs, -.010 * older);
  shift(half, P::Core, -.010 * older);
  shift(half, P::Grip, -.006 * older);
  shift(half, P::Cadence, .003 * older);
  shift(half, P::Recovery, .005 * older);
  shift(half, P::TopSpeed, -.002 * older);
  for (const Parameter lift : lifts) shift(half, lift, -.008 * std::max(-10.0, older));
}

void training_shifts(Half& half, double years, const Belief& belief) {
  const double more = std::log1p(std::clamp(years, 0.0, 20.0)) - std::log(3.0);
  shift(half, P::CriticalSpeed, .03 * more);
  shift(half, P::Push, .15 * more);
  half.pull.middle += belief.pull_training * more;
  shift(half, P::Machine, belief.machine_training * more);
  shift(half, P::Legs, .12 * more);
  shift(half, P::Core, .12 * more);
  shift(half, P::Grip, .10 * more);
  shift(half, P::Cadence, belief.cadence_training * more);
  shift(half, P::Transition, belief.transition_training * more);
  for (const Parameter lift : lifts) shift(half, lift, .10 * more);
}

/// What a mass above or below the usual for the height means.
void mass_shifts(Half& half, double mass, std::optional<double> height, double usual_height) {
  const double usual = std::exp(half.mean[index_of(P::Mass)]);
  const double tall = height ? std::log(*height / usual_height) : 0;
  const double heavy = std::log(mass / usual) - 2 * tall;
  half.mean[index_of(P::Mass)] = std::log(mass);
  half.sd[index_of(P::Mass)] = .01;
  shift(half, P::CriticalSpeed, -.35 * heavy);
  shift(half, P::Push, -.5 * heavy);
  half.pull.middle += -1.6 * heavy;
  shift(half, P::Legs, -.5 * heavy);
  shift(half, P::Core, -.5 * heavy);
  shift(half, P::Grip, -.8 * heavy);
  for (const Parameter lift : lifts) shift(half, lift, .55 * std::log(mass / usual));
}

Half half_for(const Likeness& like, const Belief& belief) {
  switch (like.sex) {
    case domain::Sex::Female:
      return half_of(women, belief);
    case domain::Sex::Male:
      return half_of(men, belief);
    case domain::Sex::Unsaid:
      break;
  }
  return mixture(half_of(men, belief), half_of(women, belief));
}

double usual_height(domain::Sex sex) {
  if (sex == domain::Sex::Female) return 1.66;
  return sex == domain::Sex::Male ? 1.79 : 1.725;
}

}  // namespace

std::array<Vector, parameter_count> prior_correlation(const Constants& constants) {
  std::array<Vector, parameter_count> matrix{};
  for (std::size_t i = 0; i < parameter_count; ++i) matrix[i][i] = 1;
  const auto set = [&](Parameter one, Parameter other, double value) {
    matrix[index_of(one)][index_of(other)] = matrix[index_of(other)][index_of(one)] = value;
  };
  for (const Pair& pair : pairs) set(pair.one, pair.other, pair.correlation);
  for (const Parameter lift : lifts) {
    if (lift != P::PressLift) set(lift, P::Push, .25);
    if (lift != P::PullLift) set(lift, P::Pull, .25);
    set(lift, P::Legs, .20);
    set(lift, P::Grip, .30);
    set(lift, P::Cadence, -.20);
    set(lift, P::Machine, .25);
  }
  for (const FittedPair& pair : fitted_pairs) set(pair.one, pair.other, constants.prior.*pair.correlation);
  return matrix;
}

BodyEstimate prior(const Likeness& like, const Constants& constants) {
  Half half = half_for(like, constants.prior);
  if (like.age) age_shifts(half, std::clamp(*like.age, 14.0, 90.0));
  if (like.training_years) training_shifts(half, *like.training_years, constants.prior);
  if (like.mass) mass_shifts(half, *like.mass, like.height, usual_height(like.sex));
  BodyEstimate out;
  out.pull = half.pull;
  const auto correlation = prior_correlation(constants);
  out.parameters.mean = half.mean;
  for (std::size_t i = 0; i < parameter_count; ++i)
    for (std::size_t j = 0; j < parameter_count; ++j)
      out.parameters.covariance[i][j] = half.sd[i] * half.sd[j] * correlation[i][j];
  out.spread = cholesky<parameter_count>(out.parameters.covariance);
  return out;
}

}  // namespace repwright::body
