#include "base/math.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <iostream>
#include <limits>

#include "base/random.hpp"

// The reference is the C library's 80-bit long double, whose 64-bit mantissa puts its own error below
// 0.001 ulp of a double.
static_assert(std::numeric_limits<long double>::digits >= 64, "the reference must be finer than a double");

namespace repwright::base {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

/// The error of `got` in units of the last place of the double nearest to `exact`.
double ulps_off(double got, long double exact) {
  int exponent = 0;
  std::frexp(static_cast<double>(exact), &exponent);
  const long double ulp = std::ldexp(1.0L, std::max(exponent - 53, -1074));
  return static_cast<double>(std::abs((static_cast<long double>(got) - exact) / ulp));
}

struct Range {
  double from;
  double to;
};

double identity(double x) {
  return x;
}

/// The worst error of `ours` against `reference` at even steps and at random points of a range, the points
/// mapped by `place` (e.g. to powers of two) first.
template <class Ours, class Reference, class Place>
double worst(Range range, Ours ours, Reference reference, Place place) {
  constexpr int count = 400000;
  Stream random({20270515}, 0, 0, Purpose::Search);
  double most = 0;
  for (int i = 0; i <= count; ++i) {
    for (const double share : {static_cast<double>(i) / count, random.uniform()}) {
      const double x = place(range.from + share * (range.to - range.from));
      most = std::max(most, ulps_off(ours(x), reference(static_cast<long double>(x))));
    }
  }
  return most;
}

double worst_exp(Range range) {
  return worst(
      range, [](double x) { return base::exp(x); }, [](long double x) { return std::exp(x); }, identity);
}

template <class Place>
double worst_log(Range range, Place place) {
  return worst(
      range, [](double x) { return base::log(x); }, [](long double x) { return std::log(x); }, place);
}

void expect_within_its_promise(const char* what, double ulps, double promise) {
  std::cout << what << ": at most " << ulps << " ulp off\n";
  EXPECT_LE(ulps, promise) << what;
}

TEST(Exp, IsWithinItsPromiseOverTheMainRange) {
  expect_within_its_promise("exp on [-40, 40]", worst_exp({-40, 40}), 1.1);
  expect_within_its_promise("exp on [-1, 1]", worst_exp({-1, 1}), 1.1);
}

TEST(Exp, IsWithinItsPromiseOverAllNormalResults) {
  expect_within_its_promise("exp on [-708, 709.78]", worst_exp({-708, 709.78}), 1.1);
}

TEST(Exp, FadesThroughTheSubnormalsWithinTwoUlp) {
  expect_within_its_promise("exp on [-745.1, -708]", worst_exp({-745.1, -708}), 2.0);
}

TEST(Exp, HoldsItsSpecialPoints) {
  static_assert(base::exp(0.0) == 1.0);
  EXPECT_EQ(base::exp(-0.0), 1.0);
  EXPECT_LE(ulps_off(base::exp(1.0), std::exp(1.0L)), 1.1);
  EXPECT_EQ(base::exp(-745.2), 0.0);
  EXPECT_EQ(base::exp(-1e300), 0.0);
  EXPECT_EQ(base::exp(-infinity), 0.0);
  EXPECT_LT(base::exp(709.78), infinity);
  EXPECT_EQ(base::exp(709.79), infinity);
  EXPECT_EQ(base::exp(1e300), infinity);
  EXPECT_EQ(base::exp(infinity), infinity);
  EXPECT_TRUE(std::isnan(base::exp(std::numeric_limits<double>::quiet_NaN())));
  EXPECT_TRUE(std::isnan(base::exp(-std::numeric_limits<double>::quiet_NaN())));
}

TEST(Log, IsWithinItsPromiseAroundOne) {
  expect_within_its_promise("log on [0.99, 1.01]", worst_log({0.99, 1.01}, identity), 1.0);
  expect_within_its_promise("log on [0.5, 2]", worst_log({0.5, 2}, identity), 1.0);
}

TEST(Log, IsWithinItsPromiseOverAllPositiveNormals) {
  const auto power = [](double x) { return std::exp2(x); };
  expect_within_its_promise("log on [2^-1022, 2^1023.9]", worst_log({-1022, 1023.9}, power), 1.0);
}

TEST(Log, HoldsItsSpecialPoints) {
  static_assert(base::log(1.0) == 0.0);
  EXPECT_LE(ulps_off(base::log(2.0), std::log(2.0L)), 0.51);
  EXPECT_LE(ulps_off(base::log(std::numeric_limits<double>::min()), std::log(0x1p-1022L)), 1.0);
  EXPECT_LE(ulps_off(base::log(std::numeric_limits<double>::max()),
                     std::log(static_cast<long double>(std::numeric_limits<double>::max()))),
            1.0);
}

TEST(Pow, ErrsByTheExponentInUlp) {
  Stream random({3}, 0, 0, Purpose::Search);
  for (int i = 0; i < 100000; ++i) {
    const double x = base::exp(6 * random.uniform() - 3);
    const double y = 6 * random.uniform() - 3;
    const double size = std::abs(y * std::log(x));
    const long double exact = std::pow(static_cast<long double>(x), static_cast<long double>(y));
    EXPECT_LE(ulps_off(base::pow(x, y), exact), 1.5 + 2 * size) << x << "^" << y;
  }
}

// Bits recorded once; a machine, compiler or option that changes one of them breaks repeatable rehearsals.
TEST(BitStability, KeepsTheBitsOfAThousandValues) {
  std::uint64_t exp_digest = 0;
  std::uint64_t log_digest = 0;
  std::uint64_t normal_digest = 0;
  for (std::uint64_t i = 0; i < 1000; ++i) {
    const double u = uniform_at({7}, 0, 0, Purpose::Demo, i);
    exp_digest = exp_digest * 31 + math_detail::bits_of(base::exp(80 * u - 40));
    log_digest = log_digest * 31 + math_detail::bits_of(base::log(100 * u));
    normal_digest = normal_digest * 31 + math_detail::bits_of(normal_quantile(u));
  }
  EXPECT_EQ(exp_digest, 16056406807088476202U);
  EXPECT_EQ(log_digest, 2609857243370254105U);
  EXPECT_EQ(normal_digest, 3128061262729459365U);
}

TEST(BitStability, IsTheSameInALoopOverAnArray) {
  std::array<double, 64> many{};
  for (std::size_t i = 0; i < many.size(); ++i) many[i] = -40 + static_cast<double>(i) * 1.27;
  std::array<double, 64> looped = many;
  for (double& x : looped) x = base::exp(x);
  for (std::size_t i = 0; i < many.size(); ++i) {
    const volatile double alone = many[i];
    EXPECT_EQ(looped[i], base::exp(alone));
  }
}

TEST(Exp, OfAPairHasTheBitsOfEach) {
  Stream random({20270515}, 0, 0, Purpose::Search);
  for (int i = 0; i < 100000; ++i) {
    const double first = -760 + 1520 * random.uniform();
    const double second = -40 + 80 * random.uniform();
    const Pair both = base::exp(Pair{first, second});
    ASSERT_EQ(both[0], base::exp(first));
    ASSERT_EQ(both[1], base::exp(second));
  }
}

}  // namespace
}  // namespace repwright::base
