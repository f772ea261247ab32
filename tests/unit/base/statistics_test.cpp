#include "base/statistics.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "base/require.hpp"

namespace repwright::base {
namespace {

// NIST Statistical Reference Datasets, univariate summary statistics, public domain:
// https://www.itl.nist.gov/div898/strd/univ/homepage.html. `Lottery`, 218 observations, is real data of lower
// difficulty; the `NumAcc` sets are made to break one-pass formulas.
const std::vector<double> lottery{
    162, 671, 933, 414, 788, 730, 817, 33,  536, 875, 670, 236, 473, 167, 877, 980, 316, 950, 456, 92,
    517, 557, 956, 954, 104, 178, 794, 278, 147, 773, 437, 435, 502, 610, 582, 780, 689, 562, 964, 791,
    28,  97,  848, 281, 858, 538, 660, 972, 671, 613, 867, 448, 738, 966, 139, 636, 847, 659, 754, 243,
    122, 455, 195, 968, 793, 59,  730, 361, 574, 522, 97,  762, 431, 158, 429, 414, 22,  629, 788, 999,
    187, 215, 810, 782, 47,  34,  108, 986, 25,  644, 829, 630, 315, 567, 919, 331, 207, 412, 242, 607,
    668, 944, 749, 168, 864, 442, 533, 805, 372, 63,  458, 777, 416, 340, 436, 140, 919, 350, 510, 572,
    905, 900, 85,  389, 473, 758, 444, 169, 625, 692, 140, 897, 672, 288, 312, 860, 724, 226, 884, 508,
    976, 741, 476, 417, 831, 15,  318, 432, 241, 114, 799, 955, 833, 358, 935, 146, 630, 830, 440, 642,
    356, 373, 271, 715, 367, 393, 190, 669, 8,   861, 108, 795, 269, 590, 326, 866, 64,  523, 862, 840,
    219, 382, 998, 4,   628, 305, 747, 247, 34,  747, 729, 645, 856, 974, 24,  568, 24,  694, 608, 480,
    410, 729, 947, 293, 53,  930, 223, 203, 677, 227, 62,  455, 387, 318, 562, 242, 428, 968};

/// `centre` once, then 500 times the pair centre - 0.1, centre + 0.1 as written in decimal.
std::vector<double> num_acc(double centre, double below, double above) {
  std::vector<double> sample{centre};
  for (int i = 0; i < 500; ++i) sample.insert(sample.end(), {below, above});
  return sample;
}

TEST(Statistics, GivesTheCertifiedValuesOfLottery) {
  ASSERT_EQ(lottery.size(), 218U);
  EXPECT_NEAR(mean(lottery), 518.958715596330, 1e-12);
  EXPECT_NEAR(standard_deviation(lottery), 291.699727470969, 1e-12);
}

TEST(Statistics, GivesTheCertifiedValuesOfNumAcc1To4) {
  const std::vector<double> first{10000001, 10000003, 10000002};
  EXPECT_EQ(mean(first), 10000002.0);
  EXPECT_EQ(standard_deviation(first), 1.0);
  const auto second = num_acc(1.2, 1.1, 1.3);
  EXPECT_NEAR(mean(second), 1.2, 1e-15);
  EXPECT_NEAR(standard_deviation(second), 0.1, 1e-15);
  // The decimals themselves are stored to 1e-10 and 2e-9 here, which bounds what any formula can reach.
  const auto third = num_acc(1000000.2, 1000000.1, 1000000.3);
  EXPECT_NEAR(mean(third), 1000000.2, 1e-9);
  EXPECT_NEAR(standard_deviation(third), 0.1, 1e-10);
  const auto fourth = num_acc(10000000.2, 10000000.1, 10000000.3);
  EXPECT_NEAR(mean(fourth), 10000000.2, 4e-9);
  EXPECT_NEAR(standard_deviation(fourth), 0.1, 2e-9);
}

// Type 7 of Hyndman & Fan 1996, doi 10.2307/2684934: the place of the p-quantile is (n - 1) p from the first.
// Longer sample: the lightness data of M. Hollander and D. A. Wolfe, Nonparametric Statistical Methods, 1973;
// deciles from Python's statistics.quantiles(method='inclusive'), the same definition.
const std::vector<double> lightness{44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1};
const std::vector<double> quality{2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8};

TEST(Quantile, InterpolatesBetweenNeighboursAsTypeSeven) {
  const std::vector<double> ten{10, 1, 9, 2, 8, 3, 7, 4, 6, 5};
  EXPECT_DOUBLE_EQ(quantile(ten, 0.1), 1.9);
  EXPECT_DOUBLE_EQ(quantile(ten, 0.25), 3.25);
  EXPECT_DOUBLE_EQ(quantile(ten, 0.5), 5.5);
  EXPECT_EQ(quantile(ten, 0), 1);
  EXPECT_EQ(quantile(ten, 1), 10);
  EXPECT_NEAR(quantile(lightness, 0.1), 43.66, 1e-12);
  EXPECT_NEAR(quantile(lightness, 0.7), 48.78, 1e-12);
  EXPECT_NEAR(quantile(lightness, 0.9), 54.66, 1e-12);
}

TEST(Summary, HoldsTheFiguresOfItsParts) {
  const Summary summary = summarise(lightness);
  EXPECT_EQ(summary.mean, mean(lightness));
  EXPECT_EQ(summary.sd, standard_deviation(lightness));
  EXPECT_EQ(summary.p10, quantile(lightness, 0.1));
  EXPECT_EQ(summary.p50, 45.2);
  EXPECT_EQ(summary.p90, quantile(lightness, 0.9));
}

TEST(Summary, OfOneValueHasNoSpread) {
  const std::vector<double> one{7};
  EXPECT_EQ(summarise(one), (Summary{.mean = 7, .sd = 0, .p10 = 7, .p50 = 7, .p90 = 7}));
}

// F. J. Anscombe, The American Statistician 27 (1973) 17-21, doi 10.1080/00031305.1973.10478966: all four
// sets have the correlation 0.816; the first and the last are here.
TEST(Pearson, GivesThePublishedCorrelationOfTwoVeryDifferentSets) {
  const std::vector<double> x1{10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5};
  const std::vector<double> y1{8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68};
  const std::vector<double> x4{8, 8, 8, 8, 8, 8, 8, 19, 8, 8, 8};
  const std::vector<double> y4{6.58, 5.76, 7.71, 8.84, 8.47, 7.04, 5.25, 12.50, 5.56, 7.91, 6.89};
  EXPECT_NEAR(pearson(x1, y1), 0.816, 0.0006);
  EXPECT_NEAR(pearson(x4, y4), 0.816, 0.0006);
}

// Hollander & Wolfe 1973, p. 187f. Spearman: the squared rank differences sum to 48, so 1 - 6 x 48 / 720.
// Pearson's 0.5711816 is what R prints for these data (from memory).
TEST(Spearman, GivesTheWorkedExampleOfTheHandbook) {
  EXPECT_NEAR(spearman(lightness, quality), 0.6, 1e-15);
  EXPECT_NEAR(pearson(lightness, quality), 0.5711816, 5e-8);
}

TEST(Spearman, PutsTiesAtTheirMeanRank) {
  const std::vector<double> x{1, 2, 2, 3};
  const std::vector<double> ranks_of_x{1, 2.5, 2.5, 4};
  const std::vector<double> y{10, 20, 40, 30};
  const std::vector<double> ranks_of_y{1, 2, 4, 3};
  EXPECT_EQ(spearman(x, y), pearson(ranks_of_x, ranks_of_y));
}

TEST(Correlation, IsZeroWhenASideHasNoSpread) {
  const std::vector<double> flat{3, 3, 3};
  const std::vector<double> rising{1, 2, 3};
  EXPECT_EQ(pearson(flat, rising), 0);
  EXPECT_EQ(spearman(rising, flat), 0);
}

TEST(Statistics, HoldTheirCallersToTheirPromises) {
  const std::vector<double> none;
  const std::vector<double> one{1};
  EXPECT_THROW(mean(none), Bug);
  EXPECT_THROW(standard_deviation(none), Bug);
  EXPECT_THROW(quantile(none, 0.5), Bug);
  EXPECT_THROW(quantile(one, 1.5), Bug);
  EXPECT_THROW(pearson(one, none), Bug);
}

}  // namespace
}  // namespace repwright::base
