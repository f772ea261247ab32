#include "base/random.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <set>
#include <vector>

namespace repwright::base {
namespace {

using Words = std::array<std::uint64_t, 4>;

// Known answers of philox4x64 with 10 rounds from the file kat_vectors of Random123 (D. E. Shaw Research),
// the library of Salmon, Moraes, Dror & Shaw, SC11 (2011), doi 10.1145/2063384.2063405.
TEST(Philox, GivesThePublishedKnownAnswers) {
  constexpr std::uint64_t ones = ~std::uint64_t{0};
  EXPECT_EQ(philox({0, 0, 0, 0}, {0, 0}),
            (Words{0x16554d9eca36314c, 0xdb20fe9d672d0fdc, 0xd7e772cee186176b, 0x7e68b68aec7ba23b}));
  EXPECT_EQ(philox({ones, ones, ones, ones}, {ones, ones}),
            (Words{0x87b092c3013fe90b, 0x438c3c67be8d0224, 0x9cc7d7c69cd777b6, 0xa09caebf594f0ba0}));
  EXPECT_EQ(philox({0x243f6a8885a308d3, 0x13198a2e03707344, 0xa4093822299f31d0, 0x082efa98ec4e6c89},
                   {0x452821e638d01377, 0xbe5466cf34e90c6c}),
            (Words{0xa528f45403e61d95, 0x38c72dbd566e9788, 0xa5a1610e72fd18b5, 0x57bd43b5e52b7fe6}));
}

TEST(UnitInterval, ReachesNeitherEnd) {
  EXPECT_EQ(unit_interval(0), 0x1p-53);
  EXPECT_EQ(unit_interval(~std::uint64_t{0}), 1.0 - 0x1p-53);
}

TEST(Stream, TakesItsFirstWordsFromBlockZeroOfItsCounter) {
  Stream stream({42}, 7, 3, Purpose::Judge);
  const Words block = philox({0, 7, 3, static_cast<std::uint64_t>(Purpose::Judge)}, {42, 0});
  for (const std::uint64_t word : block) EXPECT_EQ(stream.bits(), word);
  EXPECT_EQ(stream.bits(), philox({1, 7, 3, static_cast<std::uint64_t>(Purpose::Judge)}, {42, 0})[0]);
}

TEST(Stream, DrawsWhatTheStatelessFormsGive) {
  Stream uniforms({5}, 2, 11, Purpose::Day);
  Stream normals({5}, 2, 11, Purpose::Day);
  for (std::uint64_t draw = 0; draw < 50; ++draw) {
    EXPECT_EQ(uniforms.uniform(), uniform_at({5}, 2, 11, Purpose::Day, draw));
    EXPECT_EQ(normals.normal(), normal_at({5}, 2, 11, Purpose::Day, draw));
  }
}

TEST(Stream, DiffersBySeedRunPersonAndPurpose) {
  std::set<std::uint64_t> seen;
  for (const std::uint64_t seed : {1U, 2U}) {
    for (const std::uint64_t run : {0U, 1U}) {
      for (const std::uint64_t person : {0U, 1U}) {
        for (const Purpose purpose : {Purpose::Body, Purpose::Search}) {
          seen.insert(Stream({seed}, run, person, purpose).bits());
        }
      }
    }
  }
  EXPECT_EQ(seen.size(), 16U);
}

/// The first four moments about 0 of a hundred thousand draws.
template <class Draw>
std::array<double, 4> moments(Draw draw) {
  constexpr int count = 100000;
  std::array<double, 4> sums{};
  for (int i = 0; i < count; ++i) {
    const double x = draw();
    sums[0] += x;
    sums[1] += x * x;
    sums[2] += x * x * x;
    sums[3] += x * x * x * x;
  }
  for (double& sum : sums) sum /= count;
  return sums;
}

// The bounds are five standard errors of each sample moment at n = 100 000.
TEST(Stream, HasTheMomentsOfTheUniformDistribution) {
  Stream stream({1}, 0, 0, Purpose::Body);
  const auto m = moments([&] { return stream.uniform() - 0.5; });
  EXPECT_NEAR(m[0], 0.0, 5 * std::sqrt(1.0 / 12 / 100000));
  EXPECT_NEAR(m[1], 1.0 / 12, 5 * std::sqrt((1.0 / 80 - 1.0 / 144) / 100000));
  EXPECT_NEAR(m[2], 0.0, 5 * std::sqrt(1.0 / 448 / 100000));
  EXPECT_NEAR(m[3], 1.0 / 80, 5 * std::sqrt((1.0 / 2304 - 1.0 / 6400) / 100000));
}

TEST(Stream, HasTheMomentsOfTheNormalDistribution) {
  Stream stream({1}, 0, 1, Purpose::Body);
  const auto m = moments([&] { return stream.normal(); });
  EXPECT_NEAR(m[0], 0.0, 5 * std::sqrt(1.0 / 100000));
  EXPECT_NEAR(m[1], 1.0, 5 * std::sqrt(2.0 / 100000));
  EXPECT_NEAR(m[2], 0.0, 5 * std::sqrt(15.0 / 100000));
  EXPECT_NEAR(m[3], 3.0, 5 * std::sqrt(96.0 / 100000));
}

TEST(Stream, DrawsLognormalsWithMedianOne) {
  Stream stream({1}, 0, 2, Purpose::Body);
  int below = 0;
  double log_squares = 0;
  for (int i = 0; i < 100000; ++i) {
    const double x = stream.lognormal(0.2);
    below += x < 1.0 ? 1 : 0;
    log_squares += std::log(x) * std::log(x);
  }
  EXPECT_NEAR(below, 50000, 5 * std::sqrt(25000.0));
  EXPECT_NEAR(log_squares / 100000, 0.04, 5 * 0.04 * std::sqrt(2.0 / 100000));
}

TEST(Stream, ShowsNoCorrelationBetweenNeighbouringPeopleRunsOrDraws) {
  constexpr int count = 100000;
  double people = 0;
  double runs = 0;
  double draws = 0;
  for (std::uint64_t i = 0; i < count; ++i) {
    const double here = normal_at({9}, i, 4, Purpose::Step, 0);
    people += here * normal_at({9}, i, 5, Purpose::Step, 0);
    runs += here * normal_at({9}, i + 1, 4, Purpose::Step, 0);
    draws += here * normal_at({9}, i, 4, Purpose::Step, 1);
  }
  const double bound = 5 / std::sqrt(static_cast<double>(count));
  EXPECT_NEAR(people / count, 0, bound);
  EXPECT_NEAR(runs / count, 0, bound);
  EXPECT_NEAR(draws / count, 0, bound);
}

}  // namespace
}  // namespace repwright::base
