#pragma once

#include <functional>
#include <vector>

/// Least squares in many dimensions, for residuals that come from a simulation.
namespace repwright::calibration {

using Vector = std::vector<double>;
using Matrix = std::vector<Vector>;  // rows

/// x of the symmetric positive definite system `a` x = `b`; empty if it is not positive definite.
Vector solve(Matrix a, Vector b);

/// Residuals at a point, and their slopes in each dimension, by finite differences.
struct Linearised {
  Vector here;
  Matrix slopes;
};
Linearised linearised(const std::function<Vector(const Vector&)>& residuals, const Vector& at, double step);

/// By how much the least squares of a linearised problem move when the residuals in `left_out` no longer
/// count: one step of Gauss and Newton less what it is with all of them.
Vector move_without(const Linearised& linear, const std::vector<bool>& left_out);

struct Descent {
  int rounds = 12;
  double step = .25;    // of the finite differences: wide enough to smooth over whole reps
  double worth = 3e-4;  // a round that takes off less than this share is the last
  std::function<void(int round, double sum)> told{};
};

/// The point near `from` where the sum of squares of `residuals` is least, by the method of Levenberg and
/// Marquardt: the residuals are many and nearly linear, so one matrix of differences (as many evaluations as
/// dimensions) is worth hundreds of steps of a search without derivatives.
Vector least_squares(const std::function<Vector(const Vector&)>& residuals, Vector from,
                     const Descent& descent);

}  // namespace repwright::calibration
