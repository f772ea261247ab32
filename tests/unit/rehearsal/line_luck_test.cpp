#include "rehearsal/line_luck.hpp"

#include <gtest/gtest.h>

namespace repwright::rehearsal {
namespace {

TEST(LineLuck, StretchesAreTheDrawsOfTheStreamInTheirOrder) {
  const base::Stream draws({7}, 3, 11, base::Purpose::Step);
  base::Stream same = draws;
  LineLuck luck(draws);
  EXPECT_EQ(luck.reaction(), same.uniform());
  for (int line = 0; line < 9; ++line) EXPECT_EQ(luck.stretch(), base::exp(step_noise * same.normal()));
}

}  // namespace
}  // namespace repwright::rehearsal
