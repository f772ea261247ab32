#include "calibration/least_squares.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace repwright::calibration {
namespace {

TEST(LeastSquares, SolvesASystemAndRefusesAnIndefiniteOne) {
  const Vector x = solve({{4, 1}, {1, 3}}, {1, 2});
  ASSERT_EQ(x.size(), 2U);
  EXPECT_NEAR(x[0], 1.0 / 11, 1e-12);
  EXPECT_NEAR(x[1], 7.0 / 11, 1e-12);
  EXPECT_TRUE(solve({{1, 2}, {2, 1}}, {1, 1}).empty());
}

// H. H. Rosenbrock 1960, The Computer Journal 3:175, doi 10.1093/comjnl/3.3.175: the curved valley whose
// least value is zero at (1, 1).
TEST(LeastSquares, FollowsACurvedValleyToItsEnd) {
  const auto valley = [](const Vector& x) { return Vector{10 * (x[1] - x[0] * x[0]), 1 - x[0]}; };
  const Vector end = least_squares(valley, {-1.2, 1}, {.rounds = 200, .step = 1e-6});
  EXPECT_NEAR(end[0], 1, 1e-3);
  EXPECT_NEAR(end[1], 1, 2e-3);
}

// What is counted in whole reps: the sum is flat between jumps, slopes come from wide differences.
TEST(LeastSquares, GoesOnWhereTheResidualsJump) {
  const auto counted = [](const Vector& x) {
    const auto whole = [](double value) { return std::floor(8 * value) / 8; };
    return Vector{whole(x[0] + x[1]) - 3, whole(x[0] - 2 * x[1]), whole(.5 * x[0] + x[1] * x[1]) - 2};
  };
  const Vector end = least_squares(counted, {-3, 4}, {.rounds = 30});
  EXPECT_NEAR(end[0], 2, .25);
  EXPECT_NEAR(end[1], 1, .25);
}

TEST(LeastSquares, MovesByWhatAResidualThatIsLeftOutHadPulled) {
  // The mean of 1, 2 and 9 is 4, that of 1 and 2 is 1.5.
  const auto apart = [](const Vector& x) { return Vector{x[0] - 1, x[0] - 2, x[0] - 9}; };
  const Linearised linear = linearised(apart, {4}, 1e-3);
  EXPECT_NEAR(move_without(linear, {false, false, true})[0], 1.5 - 4, 1e-6);
  EXPECT_NEAR(move_without(linear, {false, false, false})[0], 0, 1e-6);
}

}  // namespace
}  // namespace repwright::calibration
