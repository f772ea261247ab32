#include <gtest/gtest.h>

#include <cstdio>

#include "app/hindsight.hpp"
#include "base/normal.hpp"
#include "base/statistics.hpp"
#include "unit/app/simulated_gym.hpp"

/// How good learning is where the truth is known: on a simulated gym over a year.
namespace repwright::app {
namespace {

using test::first_monday;
using test::simulated_year;
using test::SimulatedGym;
using test::Truth;

GymLearning learned(const OpenGym& gym) {
  return learn_gym(gym, {.runs = 100, .today = first_monday + std::chrono::days(400)}).value();
}

/// The forecasts of pieces that the person had done so often before. Means of the logarithms, because middle
/// errors of some hundred scores jump by a tenth of themselves.
struct Repeats {
  int before = 0;
  std::vector<double> forecast, last, group;  // how far off each was
  int held = 0;

  double held_share() const { return held / static_cast<double>(forecast.size()); }
};

void append(std::vector<double>& all, const std::vector<double>& more) {
  all.insert(all.end(), more.begin(), more.end());
}

void add(std::vector<Repeats>& all, const std::vector<Repeats>& more) {
  if (all.empty()) all.resize(more.size());
  for (std::size_t i = 0; i < more.size(); ++i) {
    all[i].before = more[i].before;
    append(all[i].forecast, more[i].forecast);
    append(all[i].last, more[i].last);
    append(all[i].group, more[i].group);
    all[i].held += more[i].held;
  }
}

std::vector<Repeats> repeats_of(const GymLearning& learning) {
  constexpr int most = 3;
  std::map<std::pair<domain::PersonId, std::string>, int> done;
  std::vector<Repeats> groups(most + 1);
  for (const ForecastScore& each : learning.forecasts) {
    const int before = std::min(most, done[{each.entry.person, each.entry.board_id}]++);
    Repeats& group = groups.at(static_cast<std::size_t>(before));
    group.before = before;
    const auto off = [&](double guess) { return std::abs(std::log(guess / each.value)); };
    group.forecast.push_back(off(each.p50));
    group.last.push_back(off(each.last.value_or(each.p50)));
    group.group.push_back(off(each.group.value_or(each.p50)));
    group.held += each.value >= each.p10 && each.value <= each.p90 ? 1 : 0;
  }
  return groups;
}

void print(const std::vector<Repeats>& groups) {
  for (const Repeats& each : groups)
    std::printf("    done %d times before: %4zu scores, off by %.4f, last %.4f, group %.4f, held %2.0f %%\n",
                each.before, each.forecast.size(), base::mean(each.forecast), base::mean(each.last),
                base::mean(each.group), 100 * each.held_share());
}

void print(const std::vector<HindsightRow>& rows) {
  for (const HindsightRow& row : rows)
    std::printf("    %-14s %4d scores, error %4.1f %%, held %2.0f %%\n", row.of.c_str(), row.scores,
                100 * row.median_error, 100 * row.held);
}

class LearningYear : public testing::TestWithParam<Truth> {};

// The bodies are drawn from the prior; the model is deliberately wrong in two constants (and right in the
// third case), people stay as they are or change as fast as the model takes them to.
TEST_P(LearningYear, ErrsLessWithEachScoreAndBeatsLastScoreAndGroup) {
  // Three gyms: the mean error of some 300 scores is luck by three hundredths of itself.
  std::vector<Repeats> repeats;
  for (const std::uint64_t seed : {11U, 12U, 13U}) {
    Truth truth = GetParam();
    truth.seed = seed;
    const SimulatedGym year = simulated_year(truth);
    const GymLearning learning = learned(year.gym);
    const Hindsight seen = hindsight(learning.forecasts, year.gym.people);
    ASSERT_GT(seen.all.scores, 1000);
    print(seen.by_count);
    EXPECT_LT(seen.by_count[1].median_error, .8 * seen.by_count[0].median_error);
    EXPECT_LT(seen.by_count.back().median_error, .3 * seen.by_count[0].median_error);
    add(repeats, repeats_of(learning));
  }
  print(repeats);
  // After one score of a piece the last score is nearly all that can be known of it.
  EXPECT_LT(base::mean(repeats[1].forecast), 1.02 * base::mean(repeats[1].last));
  double scores = 0, held = 0;
  for (std::size_t i = 1; i < repeats.size(); ++i) {
    EXPECT_LT(base::mean(repeats[i].forecast), .5 * base::mean(repeats[i].group)) << i;
    if (i > 1) {
      EXPECT_LT(base::mean(repeats[i].forecast), .99 * base::mean(repeats[i].last)) << i;
    }
    scores += static_cast<double>(repeats[i].forecast.size());
    held += repeats[i].held;
  }
  EXPECT_GT(held / scores, .75);
  EXPECT_LT(held / scores, .85);
}

INSTANTIATE_TEST_SUITE_P(OfPeople, LearningYear,
                         testing::Values(Truth{.other_constants = true},
                                         Truth{.other_constants = true, .drift = .01},
                                         Truth{.drift = .01, .fault_sd = .08}));

using Tenths = std::array<double, 10>;

/// What part of the shares lies in each tenth.
Tenths tenths_of(const std::vector<double>& shares) {
  Tenths bins{};
  for (const double share : shares)
    bins.at(static_cast<std::size_t>(std::clamp(10 * share, 0.0, 9.0))) +=
        1 / static_cast<double>(shares.size());
  return bins;
}

/// Pearson's statistic of shares that should be even, in ten bins.
double chi_square(const std::vector<double>& shares) {
  double sum = 0;
  for (const double part : tenths_of(shares)) {
    std::printf(" %4.1f", 100 * part);
    sum += (part - .1) * (part - .1) / .1 * static_cast<double>(shares.size());
  }
  std::printf("  chi-square %.1f of %zu\n", sum, shares.size());
  return sum;
}

// Simulation-based calibration (S. Talts, M. Betancourt, D. Simpson, A. Vehtari, A. Gelman 2018,
// arXiv:1804.06788): where the gym is drawn from the model itself, truths lie evenly in what is known of
// them. Here the whole chain: bodies, faults, drift and days drawn as the model takes them to be, a year of
// scores, then where the true parameters lie in what was learned. 21.67 is exceeded by one in a hundred
// (chi-square table, nine degrees of freedom).
TEST(CalibrationOfLearning, KnowsHowMuchItKnowsOfBodiesThatTheModelDrew) {
  // One score of a person each: several of one person share what is not known of them, and are no sample.
  std::vector<double> first, last;
  for (const std::uint64_t seed : {12U, 21U, 22U, 23U}) {
    const SimulatedGym year = simulated_year({.seed = seed, .drift = .01, .fault_sd = body::first_doubt});
    const GymLearning learning = learned(year.gym);
    for (const body::Parameter parameter : {body::Parameter::CriticalSpeed, body::Parameter::Push,
                                            body::Parameter::Legs, body::Parameter::Cadence}) {
      const std::size_t i = body::index_of(parameter);
      std::vector<double> shares;
      for (std::size_t p = 0; p < year.points.size(); ++p) {
        const auto& known = learning.people[p].now.parameters;
        shares.push_back(base::normal_cdf((year.points[p].at(i) - known.mean.at(i)) /
                                          std::sqrt(known.covariance.at(i).at(i))));
      }
      EXPECT_LT(chi_square(shares), 21.67) << i << ", seed " << seed;
    }
    std::map<domain::PersonId, double> first_of, last_of;
    for (const ForecastScore& each : learning.forecasts) {
      if (each.nth == 1) first_of.try_emplace(each.entry.person, each.below);
      if (each.nth > 1) last_of.insert_or_assign(each.entry.person, each.below);
    }
    for (const auto& [person, share] : first_of) first.push_back(share);
    for (const auto& [person, share] : last_of) last.push_back(share);
  }
  EXPECT_LT(chi_square(first), 21.67);
  EXPECT_LT(chi_square(last), 21.67);
}

}  // namespace
}  // namespace repwright::app
