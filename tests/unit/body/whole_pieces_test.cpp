#include <gtest/gtest.h>

#include "unit/body/bodies.hpp"

namespace repwright::body {
namespace {

const Constants constants;
constexpr double endless = std::numeric_limits<double>::infinity();

struct Golden {
  double x_rounds, x_first, x_last;
  double y_reps;
  double z, z_run, z_middle, z_last;
  double z1;
};

// T11.6: what a prototype that polls each second and steps each rep and 20 m of run makes of the pieces.
const std::array<Golden, 6> golden{{
    {2.8, 276, 354, 211, 7173, 736, 5354, 1084, 10536},
    {6.4, 95, 158, 288, 3861, 659, 2266, 936, 6123},
    {10.6, 88, 92, 334, 2940, 579, 1553, 808, 4026},
    {11.8, 80, 83, 385, 2642, 518, 1409, 715, 3128},
    {14.6, 65, 65, 487, 2227, 468, 1120, 639, 2423},
    {16.3, 59, 57, 566, 2008, 426, 1002, 580, 1985},
}};

struct Moves {
  Effort pull, push, squat, step, sit, burpee, run = running();
};
Moves moves_of(const Profile& p) {
  return {reps(pull_up, p.pull, p.cadence), reps(push_up, p.push, p.cadence),
          reps(squat, p.squat, p.cadence),  reps(step_up, p.step, p.cadence),
          reps(sit_up, p.sit, p.cadence),   reps(burpee, p.burpee, p.cadence)};
}

Piece piece_x(const Profile& p) {
  const Moves m = moves_of(p);
  Piece piece;
  piece.round = {
      {m.pull, 4, p.change}, {m.step, 10, p.change}, {m.sit, 8, p.change}, {m.burpee, 6, p.change}};
  piece.rounds = endless;
  piece.bell = 960;
  return piece;
}
Piece piece_y(const Profile& p) {
  const Moves m = moves_of(p);
  Piece piece;
  piece.before = {{m.run, 900, 8}};
  piece.round = {{m.sit, 14, p.change}, {m.squat, 20, p.change}, {m.push, 9, p.change}};
  piece.rounds = endless;
  piece.bell = 1020;
  return piece;
}
Piece piece_z(const Profile& p, double parts) {
  const Moves m = moves_of(p);
  const double k = 20 / parts;
  Piece piece;
  piece.before = {{m.run, 2000, 8}};
  piece.round = {{m.pull, 3 * k, p.change},
                 {m.push, 5 * k, p.change},
                 {m.step, 12 * k, p.change},
                 {m.sit, 6 * k, p.change}};
  piece.rounds = parts;
  piece.after = {{m.run, 2800, 0}};
  return piece;
}

void near_time(double seconds, double expected, const std::string& what) {
  EXPECT_NEAR(seconds, expected, 0.03 * expected)
      << what << " off by " << 100 * (seconds / expected - 1) << " %";
}

class WholePieces : public testing::TestWithParam<std::size_t> {
 protected:
  const Profile& profile() const { return profiles.at(GetParam()); }
  const Golden& expected() const { return golden.at(GetParam()); }
  AloneDone best(const Piece& piece) const {
    return alone_at_best(body_of(profile()), piece, 2700, constants);
  }
};

TEST_P(WholePieces, CountsRoundsOfTheSixteenMinutePiece) {
  const AloneDone done = best(piece_x(profile()));
  // One rep, and half a tenth of a round that the printed figure leaves open.
  EXPECT_NEAR(done.rounds * 28, expected().x_rounds * 28, 0.05 * 28 + 1);
  ASSERT_GE(done.round_ends.size(), 2U);
  near_time(done.round_ends.front(), expected().x_first, "first round");
  near_time(done.round_ends.back() - *(done.round_ends.rbegin() + 1), expected().x_last, "last round");
}

TEST_P(WholePieces, CountsRepsAfterARun) {
  EXPECT_NEAR(best(piece_y(profile())).units, expected().y_reps, 1);
}

TEST_P(WholePieces, TimesTheLongPieceInEvenParts) {
  const AloneDone done = best(piece_z(profile(), 20));
  ASSERT_TRUE(done.finished);
  near_time(done.seconds, expected().z, "whole");
  const double run = done.task_ends.front();
  const double last_start = *(done.task_ends.rbegin() + 1) + profile().change;
  near_time(run, expected().z_run, "first run");
  near_time(last_start - run - 8, expected().z_middle, "middle");
  near_time(done.seconds - last_start, expected().z_last, "last run");
}

TEST_P(WholePieces, TimesTheLongPieceOneAfterTheOther) {
  near_time(best(piece_z(profile(), 1)).seconds, expected().z1, "whole");
}

INSTANTIATE_TEST_SUITE_P(Profiles, WholePieces, testing::Range<std::size_t>(0, 6),
                         [](const auto& param) { return profiles.at(param.param).name; });

}  // namespace
}  // namespace repwright::body
