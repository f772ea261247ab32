#include "base/normal.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace repwright::base {
namespace {

void expect_quantile(double p, double exact) {
  EXPECT_NEAR(normal_quantile(p), exact, 2e-15 * std::abs(exact)) << "p = " << p;
}

// The check values printed with Algorithm AS 241: M. J. Wichura, Applied Statistics 37 (1988) 477-484,
// doi 10.2307/2347330 (which values the paper prints: from memory), here to 16 digits.
TEST(NormalQuantile, GivesTheCheckValuesOfItsPaper) {
  expect_quantile(0.25, -0.6744897501960817);
  expect_quantile(0.001, -3.090232306167814);
  expect_quantile(1e-20, -9.262340089798408);
}

// Computed with mpmath 1.3 (general-purpose reference library) in 40 digits from its ncdf.
TEST(NormalQuantile, AgreesWithAFortyDigitReferenceOnEitherSideOfItsThreeRegions) {
  expect_quantile(0.4, -0.25334710313579974);
  expect_quantile(0.075, -1.4395314709384559);
  expect_quantile(0.0749, -1.4402382675279637);
  expect_quantile(1e-5, -4.2648907939228246);
  expect_quantile(1.2e-11, -6.6793526565015224);
  expect_quantile(0x1p-53, -8.2095361516013869);
}

TEST(NormalQuantile, IsZeroInTheMiddleAndSymmetricAboutIt) {
  EXPECT_EQ(normal_quantile(0.5), 0.0);
  for (const double p : {0.25, 0.0625, 0x1p-10, 0x1p-40}) {
    EXPECT_EQ(normal_quantile(1 - p), -normal_quantile(p));
  }
}

TEST(NormalQuantile, OfAPairHasTheBitsOfEach) {
  for (const double p : {1e-9, 0.02, 0.075, 0.3, 0.5, 0.925, 0.99})
    for (const double q : {0x1p-53, 0.074, 0.6, 0.93}) {
      const Pair both = normal_quantile(Pair{p, q});
      EXPECT_EQ(both[0], normal_quantile(p));
      EXPECT_EQ(both[1], normal_quantile(q));
    }
}

// mpmath 1.3, 40 digits.
TEST(NormalCdf, AgreesWithAFortyDigitReference) {
  EXPECT_NEAR(normal_cdf(-8), 6.2209605742717841e-16, 1e-29);
  EXPECT_NEAR(normal_cdf(-1.96), 0.024997895148220436, 1e-16);
  EXPECT_NEAR(normal_cdf(-1), 0.15865525393145705, 1e-15);
  EXPECT_NEAR(normal_cdf(0.5), 0.69146246127401310, 1e-15);
  EXPECT_NEAR(normal_cdf(3), 0.99865010196836991, 1e-15);
}

}  // namespace
}  // namespace repwright::base
