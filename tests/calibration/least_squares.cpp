#include "calibration/least_squares.hpp"

#include <algorithm>
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

Matrix slopes_at(const std::function<Vector(const Vector&)>& residuals, const Vector& at, const Vector& here,
                 double step) {
  Matrix slopes;
  for (std::size_t i = 0; i < at.size(); ++i) {
    Vector aside = at;
    aside[i] += step;
    Vector& slope = slopes.emplace_back(residuals(aside));
    for (std::size_t r = 0; r < here.size(); ++r) slope[r] = (slope[r] - here[r]) / step;
  }
  return slopes;
}

/// Of the residuals that count.
Linear normal_equations(const Linearised& linear, const std::vector<bool>& left_out) {
  const auto product = [&](const Vector& a, const Vector& b) {
    double sum = 0;
    for (std::size_t r = 0; r < a.size(); ++r)
      if (left_out.empty() || !left_out[r]) sum += a[r] * b[r];
    return sum;
  };
  Linear out;
  for (const Vector& slope : linear.slopes) {
    Vector& row = out.square.emplace_back();
    for (const Vector& other : linear.slopes) row.push_back(product(slope, other));
    out.downhill.push_back(-product(slope, linear.here));
  }
  return out;
}

/// The step of Gauss and Newton, the shorter the more it is damped; empty if there is none.
Vector damped_step(const Linear& linear, double damping) {
  Matrix damped = linear.square;
  for (std::size_t i = 0; i < damped.size(); ++i) damped[i][i] *= 1 + damping;
  return solve(std::move(damped), linear.downhill);
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

Linearised linearised(const std::function<Vector(const Vector&)>& residuals, const Vector& at, double step) {
  const Vector here = residuals(at);
  return {here, slopes_at(residuals, at, here, step)};
}

Vector move_without(const Linearised& linear, const std::vector<bool>& left_out) {
  const Linear all = normal_equations(linear, {}), fewer = normal_equations(linear, left_out);
  Vector move = solve(fewer.square, fewer.downhill);
  const Vector with_all = solve(all.square, all.downhill);
  for (std::size_t i = 0; i < move.size(); ++i) move[i] -= with_all[i];
  return move;
}

Vector least_squares(const std::function<Vector(const Vector&)>& residuals, Vector from,
                     const Descent& descent) {
  Vector here = residuals(from);
  double sum = sum_of_squares(here), damping = .1;
  for (int round = 0; round < descent.rounds; ++round) {
    const Linear linear = normal_equations({here, slopes_at(residuals, from, here, descent.step)}, {});
    const double before = sum;
    const Vector start = from;
    double best = damping;
    // A sum that jumps with each whole rep says little where it rises: all are tried, the least is taken.
    for (const double factor : {.01, .1, .3, 1.0, 3.0, 10.0, 100.0}) {
      Vector next = damped_step(linear, damping * factor);
      if (next.empty()) continue;
      for (std::size_t i = 0; i < next.size(); ++i) next[i] += start[i];
      Vector there = residuals(next);
      const double reached = sum_of_squares(there);
      if (!(reached < sum)) continue;
      from = std::move(next);
      here = std::move(there);
      sum = reached;
      best = damping * factor;
    }
    damping = std::clamp(best, 1e-3, 1e3);
    if (descent.told) descent.told(round, sum);
    if (before - sum < descent.worth * before) break;
  }
  return from;
}

}  // namespace repwright::calibration
