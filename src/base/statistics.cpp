#include "base/statistics.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <vector>

#include "base/require.hpp"

namespace repwright::base {

namespace {

double size_of(std::span<const double> sample) {
  return static_cast<double>(sample.size());
}

std::vector<double> sorted_copy(std::span<const double> sample) {
  std::vector<double> sorted(sample.begin(), sample.end());
  std::ranges::sort(sorted);
  return sorted;
}

/// The rank of each value, from 1, equal values sharing the mean of the ranks they take up.
std::vector<double> ranks(std::span<const double> sample) {
  std::vector<std::size_t> order(sample.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::sort(order, {}, [&](std::size_t i) { return sample[i]; });
  std::vector<double> result(sample.size());
  for (std::size_t first = 0; first < order.size();) {
    std::size_t end = first;
    while (end < order.size() && sample[order[end]] == sample[order[first]]) ++end;
    const double shared = static_cast<double>(first + 1 + end) / 2;
    for (; first < end; ++first) result[order[first]] = shared;
  }
  return result;
}

}  // namespace

double mean(std::span<const double> sample) {
  require(!sample.empty(), "a mean needs a value");
  const double rough = std::accumulate(sample.begin(), sample.end(), 0.0) / size_of(sample);
  // The second pass takes back what rounding the large sum cost.
  double correction = 0;
  for (const double x : sample) correction += x - rough;
  return rough + correction / size_of(sample);
}

double standard_deviation(std::span<const double> sample) {
  if (sample.size() == 1) return 0;
  const double centre = mean(sample);
  double squares = 0;
  for (const double x : sample) squares += (x - centre) * (x - centre);
  return std::sqrt(squares / (size_of(sample) - 1));
}

double quantile_of_sorted(std::span<const double> sorted, double p) {
  require(!sorted.empty(), "a quantile needs a value");
  require(p >= 0 && p <= 1, "a quantile's share lies in [0, 1]");
  const double place = (size_of(sorted) - 1) * p;
  const auto below = static_cast<std::size_t>(place);
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  return sorted[below] + (place - static_cast<double>(below)) * (sorted[above] - sorted[below]);
}

double quantile(std::span<const double> sample, double p) {
  return quantile_of_sorted(sorted_copy(sample), p);
}

Summary summarise(std::span<const double> sample) {
  const std::vector<double> sorted = sorted_copy(sample);
  return {.mean = mean(sample),
          .sd = standard_deviation(sample),
          .p10 = quantile_of_sorted(sorted, 0.1),
          .p50 = quantile_of_sorted(sorted, 0.5),
          .p90 = quantile_of_sorted(sorted, 0.9)};
}

double pearson(std::span<const double> x, std::span<const double> y) {
  require(x.size() == y.size(), "a correlation needs pairs");
  const double mean_x = mean(x);
  const double mean_y = mean(y);
  double xx = 0;
  double yy = 0;
  double xy = 0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    xx += (x[i] - mean_x) * (x[i] - mean_x);
    yy += (y[i] - mean_y) * (y[i] - mean_y);
    xy += (x[i] - mean_x) * (y[i] - mean_y);
  }
  if (xx == 0 || yy == 0) return 0;
  return std::clamp(xy / std::sqrt(xx) / std::sqrt(yy), -1.0, 1.0);
}

double spearman(std::span<const double> x, std::span<const double> y) {
  return pearson(ranks(x), ranks(y));
}

}  // namespace repwright::base
