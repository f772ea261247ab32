#pragma once

#include <optional>

#include "base/random.hpp"
#include "body/body.hpp"
#include "body/gaussian.hpp"
#include "domain/catalogue.hpp"
#include "domain/people.hpp"

/// What is known of one person's body: a distribution, from the prior of people like them and their marks.
namespace repwright::body {

/// What differs between people; each a natural logarithm, but Pull, which is standard normal and mapped by
/// `PullScale` because many people have no pull-up at all.
enum class Parameter : std::uint8_t {
  CriticalSpeed,
  ReserveDistance,
  Push,
  Pull,
  Legs,
  Core,
  Grip,
  Cadence,
  Recovery,
  SquatLift,
  HingeLift,
  PressLift,
  PullLift,
  CleanLift,
  Machine,
  Transition,
  Style,
  TopSpeed,    // over the critical speed
  OxygenPeak,  // over the critical rate
  Mass
};
inline constexpr std::size_t parameter_count = 20;
constexpr std::size_t index_of(Parameter parameter) {
  return static_cast<std::size_t>(parameter);
}

/// From a standard normal to the logarithm of the largest set of pull-ups: steeper below the middle than
/// above; below zero `set_of_log` goes on where no pull-up is left.
struct PullScale {
  double middle = 1.6, up = 0.9, down = 2.4;
  bool operator==(const PullScale&) const = default;
};

/// The largest set from its logarithm; below one it tells how far a person is from the first.
double set_of_log(double log_set);
/// The inverse, down to -18; of zero reps: about half a step short of the first.
double log_of_set(double set);

struct BodyEstimate {
  Gaussian<parameter_count> parameters;
  std::array<std::array<double, parameter_count>, parameter_count> spread{};  // its Cholesky triangle
  PullScale pull;
  std::optional<std::uint64_t> knack{};  // of every body of it, 0: none; nothing: each drawn body has another
  bool operator==(const BodyEstimate&) const = default;
};

/// The correlations of `Parameter`s in the prior.
std::array<std::array<double, parameter_count>, parameter_count> prior_correlation(
    const Constants& constants);

/// What is known of somebody without a mark. Unsaid sex gives the mixture of both, as one normal.
struct Likeness {
  domain::Sex sex = domain::Sex::Unsaid;
  std::optional<double> age{};  // years
  std::optional<double> training_years{};
  std::optional<double> mass{};    // kg
  std::optional<double> height{};  // m
};
BodyEstimate prior(const Likeness& like, const Constants& constants);

/// The prior of the person conditioned on their marks. Marks of movements that the catalogue does not know
/// are left out.
BodyEstimate estimate(const domain::Person& person, const domain::Catalogue& catalogue,
                      const Constants& constants);

/// The body of the middle of the distribution.
Body median(const BodyEstimate& estimate, const Constants& constants);

/// One body of the distribution; another for each person and run, the same for the same numbers.
Body draw(const BodyEstimate& estimate, base::Seed seed, std::uint64_t run, std::uint64_t person,
          const Constants& constants);

/// The body at one point of the parameters.
Body body_at(const std::array<double, parameter_count>& point, const PullScale& pull,
             const Constants& constants);

}  // namespace repwright::body
