#pragma once

#include <span>

/// Figures that sum up a sample. Sums run in the order of the sample, so equal samples give equal bits. An
/// empty sample and a value that is not a number are broken promises of the caller.
namespace repwright::base {

double mean(std::span<const double> sample);

/// With n - 1 in the denominator; 0 for a single value.
double standard_deviation(std::span<const double> sample);

/// The quantile of a sample in rising order for p in [0, 1], linear between neighbours: type 7 of
/// R. J. Hyndman and Y. Fan, The American Statistician 50 (1996) 361-365, doi 10.2307/2684934.
double quantile_of_sorted(std::span<const double> sorted, double p);

/// `quantile_of_sorted` of a sample in any order.
double quantile(std::span<const double> sample, double p);

/// Where a sample lies and how far it spreads; p10, p50 and p90 are quantiles.
struct Summary {
  double mean = 0;
  double sd = 0;
  double p10 = 0;
  double p50 = 0;
  double p90 = 0;
  bool operator==(const Summary&) const = default;
};

Summary summarise(std::span<const double> sample);

/// Pearson's correlation of pairs, in [-1, 1]; 0 when either side has no spread.
double pearson(std::span<const double> x, std::span<const double> y);

/// Spearman's rank correlation of pairs, in [-1, 1], ties at their mean rank; 0 when either side has no
/// spread.
double spearman(std::span<const double> x, std::span<const double> y);

}  // namespace repwright::base
