#pragma once

#include <cmath>

#include "body/gaussian.hpp"

namespace repwright::body {

template <std::size_t N>
std::array<std::array<double, N>, N> cholesky(const std::array<std::array<double, N>, N>& covariance) {
  std::array<std::array<double, N>, N> lower{};
  for (std::size_t i = 0; i < N; ++i)
    for (std::size_t j = 0; j <= i; ++j) {
      double sum = covariance[i][j];
      for (std::size_t k = 0; k < j; ++k) sum -= lower[i][k] * lower[j][k];
      if (i == j)
        lower[i][i] = sum > 1e-15 ? std::sqrt(sum) : 0;
      else
        lower[i][j] = lower[j][j] > 0 ? sum / lower[j][j] : 0;
    }
  return lower;
}

template <std::size_t N>
std::array<double, N> solved(const std::array<std::array<double, N>, N>& lower, std::array<double, N> right) {
  for (std::size_t i = 0; i < N; ++i) {
    for (std::size_t k = 0; k < i; ++k) right[i] -= lower[i][k] * right[k];
    right[i] /= lower[i][i];
  }
  for (std::size_t i = N; i-- > 0;) {
    for (std::size_t k = i + 1; k < N; ++k) right[i] -= lower[k][i] * right[k];
    right[i] /= lower[i][i];
  }
  return right;
}

namespace gaussian_detail {

constexpr double step = 0.02;  // of the finite differences; parameters are logarithms

template <std::size_t N>
std::array<double, N> gradient(const Measurement<N>& measurement, std::array<double, N> at) {
  std::array<double, N> slope{};
  const auto along = [&](std::size_t i) {
    const double here = at[i];
    at[i] = here + step;
    const double above = measurement.predict(at);
    at[i] = here - step;
    slope[i] = (above - measurement.predict(at)) / (2 * step);
    at[i] = here;
  };
  for (const std::size_t i : measurement.places) along(i);
  for (std::size_t i = 0; measurement.places.empty() && i < N; ++i) along(i);
  return slope;
}

/// One scalar measurement h'x = `seen` with that variance.
template <std::size_t N>
void absorb(Gaussian<N>& to, const std::array<double, N>& h, double seen, double variance) {
  std::array<double, N> ph{};
  double predicted = 0, spread = variance;
  for (std::size_t i = 0; i < N; ++i) {
    for (std::size_t j = 0; j < N; ++j) ph[i] += to.covariance[i][j] * h[j];
    predicted += h[i] * to.mean[i];
  }
  for (std::size_t i = 0; i < N; ++i) spread += h[i] * ph[i];
  for (std::size_t i = 0; i < N; ++i) {
    to.mean[i] += ph[i] / spread * (seen - predicted);
    for (std::size_t j = 0; j < N; ++j) to.covariance[i][j] -= ph[i] * ph[j] / spread;
  }
}

/// What a residual of z standard deviations weighs under Student's t: less, the further it is off.
inline double weight_of(double z, double freedom) {
  return freedom > 0 ? (freedom + 1) / (freedom + z * z) : 1;
}
/// What a measurement tells of the spread: at most what one tells in the mean (the expected information of
/// Student's t; K. L. Lange, R. J. A. Little, J. M. G. Taylor 1989, J Am Stat Assoc 84:881, from memory). One
/// that happens to agree must not count for more, or the spread comes out too narrow.
inline double information_of(double z, double freedom) {
  const double expected = freedom > 0 ? (freedom + 1) / (freedom + 3) : 1;
  return std::min(weight_of(z, freedom), expected);
}

template <std::size_t N, class Weight>
Gaussian<N> round(const Gaussian<N>& prior, std::span<const Measurement<N>> measurements,
                  const std::array<double, N>& at, const Weight& weight) {
  Gaussian<N> next = prior;
  for (const Measurement<N>& measurement : measurements) {
    const std::array<double, N> h = gradient(measurement, at);
    const double residual = measurement.seen - measurement.predict(at);
    double offset = 0;
    for (std::size_t i = 0; i < N; ++i) offset += h[i] * at[i];
    const double z = residual / measurement.sd;
    absorb(next, h, residual + offset, measurement.sd * measurement.sd / weight(z));
  }
  return next;
}

template <std::size_t N>
Gaussian<N> iterate(const Gaussian<N>& prior, std::span<const Measurement<N>> measurements, double freedom) {
  Gaussian<N> posterior = prior;
  for (int rounds = 0; rounds < 12; ++rounds) {
    const Gaussian<N> next =
        round(prior, measurements, posterior.mean, [&](double z) { return weight_of(z, freedom); });
    double moved = 0;
    for (std::size_t i = 0; i < N; ++i) moved = std::max(moved, std::abs(next.mean[i] - posterior.mean[i]));
    // Half steps after the first rounds keep a kinked prediction from bouncing between two sides.
    const double share = rounds < 5 ? 1.0 : 0.5;
    for (std::size_t i = 0; i < N; ++i) posterior.mean[i] += share * (next.mean[i] - posterior.mean[i]);
    if (moved < 1e-6) break;
  }
  posterior.covariance = round(prior, measurements, posterior.mean, [&](double z) {
                           return information_of(z, freedom);
                         }).covariance;
  return posterior;
}

}  // namespace gaussian_detail

template <std::size_t N>
Gaussian<N> condition(const Gaussian<N>& prior, std::span<const Measurement<N>> measurements) {
  constexpr double freedom = 4;
  return gaussian_detail::iterate(prior, measurements, freedom);
}

template <std::size_t N>
Gaussian<N> condition_normal(const Gaussian<N>& prior, std::span<const Measurement<N>> measurements) {
  return gaussian_detail::iterate(prior, measurements, 0);
}

}  // namespace repwright::body
