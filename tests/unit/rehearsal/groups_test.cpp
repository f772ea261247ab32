#include "rehearsal/groups.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace repwright::rehearsal {
namespace {

using testing::ElementsAre;

TEST(Standings, FollowTheOrderOfArrivalAndNotThatOfTheList) {
  domain::Block block;
  block.kind = domain::BlockKind::ForTime;
  const Standings where = standings(block, 2, {300, 0, 0, 60});
  EXPECT_EQ(where.heats, 2);
  EXPECT_THAT(where.people, ElementsAre(Standing{1, 1}, Standing{0, 0}, Standing{1, 0}, Standing{0, 1}));
}

TEST(Standings, GiveATeamOneLaneAndMoreHeatsWhereLanesAreFew) {
  domain::Block block;
  block.kind = domain::BlockKind::Relay;
  block.team_sizes = {2};
  block.lanes = 2;
  const Standings where = standings(block, 1, std::vector<double>(6, 0));
  EXPECT_EQ(where.heats, 2);
  EXPECT_THAT(where.people, ElementsAre(Standing{0, 0}, Standing{0, 0}, Standing{1, 0}, Standing{1, 0},
                                        Standing{0, 1}, Standing{0, 1}));
}

TEST(Standings, KeepTheHeatsOfTheBoardWhereLanesAreEnough) {
  domain::Block block;
  block.lanes = 8;
  EXPECT_EQ(heats_of(block, 1, 8), 1);
  EXPECT_EQ(heats_of(block, 1, 9), 2);
  EXPECT_EQ(heats_of(block, 3, 9), 3);
  block.lanes = std::nullopt;
  EXPECT_EQ(heats_of(block, 1, 40), 1);
}

}  // namespace
}  // namespace repwright::rehearsal
