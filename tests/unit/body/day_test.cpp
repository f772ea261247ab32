#include "body/day.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace repwright::body {
namespace {

// Physiology section 10: day factors, judged around Engel et al. 2019, doi 10.3389/fphys.2019.00460 (3.9 to
// 7.3 % from day to day over 12 min).
TEST(Day, VariesAsMuchAsPeopleDo) {
  double cc = 0, ss = 0, dd = 0, cs = 0;
  constexpr int runs = 20000;
  for (std::uint64_t run = 0; run < runs; ++run) {
    const DayForm form = draw_day({5}, run, 3);
    const double c = std::log(form.critical), s = std::log(form.sets), d = std::log(form.drive);
    cc += c * c / runs;
    ss += s * s / runs;
    dd += d * d / runs;
    cs += c * s / runs;
  }
  EXPECT_NEAR(std::sqrt(cc), .02, .0005);
  EXPECT_NEAR(std::sqrt(ss), .05, .0012);
  EXPECT_NEAR(std::sqrt(dd), .06, .0015);
  EXPECT_NEAR(cs / std::sqrt(cc * ss), .3, .02);
}

TEST(Day, IsAFunctionOfSeedRunAndPerson) {
  EXPECT_EQ(draw_day({5}, 1, 2).drive, draw_day({5}, 1, 2).drive);
  EXPECT_NE(draw_day({5}, 1, 2).drive, draw_day({5}, 2, 2).drive);
  EXPECT_NE(draw_day({5}, 1, 2).drive, draw_day({6}, 1, 2).drive);
  EXPECT_EQ(segment_factor({5}, 1, 2, 9), segment_factor({5}, 1, 2, 9));
  EXPECT_NE(segment_factor({5}, 1, 2, 9), segment_factor({5}, 1, 2, 10));
  EXPECT_NE(judge_factor({5}, 1, 2), judge_factor({5}, 1, 3));
  EXPECT_NE(class_factor({5}, 1), class_factor({5}, 2));
}

TEST(Day, LeavesWhoHasNoPullUpWithoutOne) {
  Body body;
  body.best_set[1] = -4;
  const Body today = on_day(body, {.critical = 1, .sets = 1.1, .drive = .9});
  EXPECT_EQ(today.best_set[1], -4);
  EXPECT_NEAR(today.best_set[0], 1.1 * body.best_set[0], 1e-12);
  EXPECT_NEAR(today.cadence, .9, 1e-12);
}

}  // namespace
}  // namespace repwright::body
