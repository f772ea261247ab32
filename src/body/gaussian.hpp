#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <span>
#include <vector>

/// A multivariate normal distribution and what measurements make of it.
namespace repwright::body {

template <std::size_t N>
struct Gaussian {
  using Vector = std::array<double, N>;
  Vector mean{};
  std::array<Vector, N> covariance{};
  bool operator==(const Gaussian&) const = default;
};

/// The lower triangle L with L L' = `covariance`; a row of zeros where the matrix is not positive definite.
template <std::size_t N>
std::array<std::array<double, N>, N> cholesky(const std::array<std::array<double, N>, N>& covariance);

/// The x with L L' x = `right`, for the triangle that `cholesky` returns of a positive definite matrix.
template <std::size_t N>
std::array<double, N> solved(const std::array<std::array<double, N>, N>& lower, std::array<double, N> right);

/// One measurement: what a point of the distribution predicts, what was seen, and how far the two differ.
template <std::size_t N>
struct Measurement {
  std::function<double(const std::array<double, N>&)> predict;
  double seen = 0;
  double sd = 0.1;
  /// The places of the point that `predict` depends on; none: all.
  std::vector<std::size_t> places{};
};

/// The distribution after all measurements, by Gauss-Newton: each round linearises them at the last mean and
/// updates `prior` with one after the other. Residuals are Student-t with four degrees of freedom, so that
/// one extreme mark moves less than two that agree.
template <std::size_t N>
Gaussian<N> condition(const Gaussian<N>& prior, std::span<const Measurement<N>> measurements);

/// The same with normal residuals, for measurements that are trusted.
template <std::size_t N>
Gaussian<N> condition_normal(const Gaussian<N>& prior, std::span<const Measurement<N>> measurements);

}  // namespace repwright::body

#include "body/gaussian_detail.hpp"
