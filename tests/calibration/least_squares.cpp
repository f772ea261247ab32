#include "calibration/least_squares.hpp"

#include <cmath>
#include <numeric>

namespace repwright::calibration {

namespace {

double sum_of_squares(const Vector& values) {
  return std::inner_product(values.begin(), values.end(), values.begin(), 0.0);
}

/// The lower triangle of Cholesky in place; whether the matrix is positive definite.
bool factor(Matrix& a) {
  for (std::size_t j = 0; j < a.size(); ++j)
    for (std::size_t i = j; i < a.size(); ++i) {
      double sum = a[i][j];
      for (std::size_t k = 0; k < j; ++k) sum -= a[i][k] * a[j][k];
      if (i == j && !(sum > 0)) return false;
      a[i][j] = i == j ? std::sqrt(sum) : sum / a[j][j];
    }
  return true;
}

struct Linear {
  Matrix square;    // J'J
  Vector downhill;  // -J'r
};

Linear linear_at(const std::function<Vector(const Vector&)>& residuals, const Vector& at, const Vector& here,
                 double step) {
  Matrix slopes;
  for (std::size_t i = 0; i < at.size(); ++i) {
    Vector aside = at;
    aside[i] += step;
    Vector slope = residuals(aside);
    for (std::size_t r = 0; r < here.size(); ++r) slope[r] = (slope[r] - here[r]) / step;
    slopes.push_back(std::move(slope));
  }
  Linear out{.square = Matrix(at.size(), Vector(at.size())), .downhill = Vector(at.size())};
  for (std::size_t i = 0; i < at.size(); ++i) {
    for (std::size_t j = 0; j < at.size(); ++j)
      out.square[i][j] = std::inner_product(slopes[i].begin(), slopes[i].end(), slopes[j].begin(), 0.0);
    out.downhill[i] = -std::inner_product(slopes[i].begin(), slopes[i].end(), here.begin(), 0.0);
  }
  return out;
}

}  // namespace

Vector solve(Matrix a, Vector b) {
  if (!factor(a)) return {};
  for (std::size_t i = 0; i < b.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) b[i] -= a[i][k] * b[k];
    b[i] /= a[i][i];
  }
  for (std::size_t i = b.size(); i-- > 0;) {
    for (std::size_t k = i + 1; k < b.size(); ++k) b[i] -= a[k][i] * b[k];
    b[i] /= a[i][i];
  }
  return b;
}

Vector least_squares(const std::function<Vector(const Vector&)>& residuals, Vector from,
                     const Descent& descent) {
  Vector here = residuals(from);
  double sum = sum_of_squares(here), damping = .1;
  for (int round = 0; round < descent.rounds; ++round) {
    const Linear linear = linear_at(residuals, from, here, descent.step);
    const double before = sum;
    for (int attempt = 0; attempt < 6 && sum == before; ++attempt) {
      Matrix damped = linear.square;
      for (std::size_t i = 0; i < from.size(); ++i) damped[i][i] *= 1 + damping;
      Vector next = solve(damped, linear.downhill);
      for (std::size_t i = 0; i < next.size(); ++i) next[i] += from[i];
      Vector there = next.empty() ? Vector{} : residuals(next);
      const double reached = next.empty() ? INFINITY : sum_of_squares(there);
      if (reached < sum) {
        from = std::move(next);
        here = std::move(there);
        sum = reached;
        damping *= .3;
      } else {
        damping *= 4;
      }
    }
    if (descent.told) descent.told(round, sum);
    if (before - sum < 1e-3 * before) break;
  }
  return from;
}

}  // namespace repwright::calibration
