#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "body/effort.hpp"
#include "body/estimate.hpp"
#include "body/marks.hpp"
#include "support/shipped.hpp"

/// Simulation-based calibration of the chain from marks to a forecast: S. Talts, M. Betancourt, D. Simpson,
/// A. Vehtari, A. Gelman 2018, arXiv 1804.06788. People are drawn from the prior, do tests whose results vary
/// as the model says, and are estimated from them: among draws of the estimate the truth takes every rank
/// alike.
namespace repwright::body {
namespace {

const Constants& constants() {
  return test::shipped_constants();
}

constexpr std::size_t draws = 19, people = 400;  // twenty ranks, two to a bin

double run_of(const Body& body) {
  return run_seconds(body, 2000, constants());
}
double push_ups_of(const Body& body) {
  return body.best_set[index_of(Group::Push)];
}
double clean_of(const Body& body) {
  return body.best_lift[index_of(Lift::Clean)];
}
/// Squat thrusts in five minutes, fractions included: marks, dynamics and pacing at once.
double thrusts_of(const Body& body) {
  const domain::Movement* thrust = test::shipped_catalogue().find(domain::MovementId{"squat-thrust"});
  const EffortSpec spec = effort_spec(*thrust, domain::Unit::Reps, 0, constants());
  return units_within(body, effort_of(spec, body, constants()), 300, constants());
}

using Quantity = double (*)(const Body&);
constexpr std::array<Quantity, 4> quantities{run_of, push_ups_of, clean_of, thrusts_of};

/// The tests of one person, each off by a Student-t(4) deviation as the estimate takes marks to be.
std::vector<domain::Mark> tested(const Body& truth, std::uint64_t person) {
  base::Stream luck({77}, 1, person, base::Purpose::Search);
  const auto off = [&](double sd) {
    double chi = 0;
    const double z = luck.normal();
    for (int i = 0; i < 4; ++i) {
      const double each = luck.normal();
      chi += each * each;
    }
    return std::exp(sd * z / std::sqrt(chi / 4));
  };
  const domain::MarkNoise& noise = constants().marks;
  const double pushes = push_ups_of(truth);
  return {domain::TimedDistance{{"run"}, 2000 * base::metre, run_of(truth) * off(noise.run) * base::second},
          domain::BestSet{{"push-up"}, pushes * off(std::hypot(noise.set, noise.set_rep / pushes)), false},
          domain::BestLoad{{"bb-clean-and-jerk"}, clean_of(truth) * off(noise.load) * base::kilogram}};
}

/// Of each quantity, how many people have so many of the draws below the truth.
std::array<std::array<int, draws + 1>, quantities.size()> ranks() {
  std::array<std::array<int, draws + 1>, quantities.size()> out{};
  for (std::uint64_t person = 0; person < people; ++person) {
    domain::Person who;
    who.sex = person % 2 == 0 ? domain::Sex::Female : domain::Sex::Male;
    who.age = 35;
    const Body truth =
        draw(prior({.sex = who.sex, .age = who.age}, constants()), {76}, 0, person, constants());
    if (push_ups_of(truth) < 3) continue;  // below it the simulated test would have to be in whole reps
    who.marks = tested(truth, person);
    const BodyEstimate known = estimate(who, test::shipped_catalogue(), constants());
    std::array<std::size_t, quantities.size()> rank{};
    for (std::uint64_t run = 0; run < draws; ++run) {
      const Body body = draw(known, {78}, run, person, constants());
      for (std::size_t q = 0; q < quantities.size(); ++q)
        rank.at(q) += quantities.at(q)(body) < quantities.at(q)(truth) ? 1U : 0U;
    }
    for (std::size_t q = 0; q < quantities.size(); ++q) ++out.at(q).at(rank.at(q));
  }
  return out;
}

TEST(SimulatedPeople, TakeEveryRankAmongTheDrawsOfTheirEstimate) {
  const auto counted = ranks();
  constexpr std::size_t bins = 10;
  constexpr double rare = 27.9;  // of chi-square with nine degrees of freedom one in a thousand is above
  for (std::size_t q = 0; q < quantities.size(); ++q) {
    const double expected = std::accumulate(counted.at(q).begin(), counted.at(q).end(), 0.0) / bins;
    double chi = 0;
    for (std::size_t bin = 0; bin < bins; ++bin) {
      const double apart = counted.at(q).at(2 * bin) + counted.at(q).at(2 * bin + 1) - expected;
      chi += apart * apart / expected;
    }
    std::printf("    quantity %zu: chi-square of the ranks %.1f\n", q + 1, chi);
    EXPECT_LT(chi, rare) << "quantity " << q + 1;
  }
}

}  // namespace
}  // namespace repwright::body
