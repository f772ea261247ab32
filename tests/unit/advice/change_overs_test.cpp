#include "advice/change_overs.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/shipped_catalogue.hpp"

namespace repwright::advice {
namespace {

rehearsal::KitNeed bells(int piece, double kilograms, int needed, int available) {
  return {.piece = piece,
          .step = {},
          .equipment = {"kettlebell"},
          .mass = kilograms * base::kilogram,
          .height = {},
          .needed = needed,
          .available = available};
}

std::vector<domain::ChangeOver> planned(const std::vector<rehearsal::KitNeed>& needs,
                                        const std::vector<int>& reloaded = {0, 0}) {
  const std::vector<std::string> pieces{"A", "B"};
  return change_overs(
      {.needs = needs, .pieces = pieces, .bars_reloaded = reloaded, .catalogue = test::shipped_catalogue()});
}

TEST(ChangeOvers, SayWhatStaysComesAndGoes) {
  const auto changes =
      planned({bells(0, 16, 6, 8), bells(0, 12, 2, 8), bells(1, 16, 4, 8), bells(1, 24, 3, 8)});
  ASSERT_EQ(changes.size(), 2u);
  EXPECT_EQ(changes[0].from, "");
  EXPECT_EQ(changes[1].from, "A");
  EXPECT_EQ(changes[1].to, "B");
  ASSERT_EQ(changes[1].kit.size(), 3u);
  const auto move = [&](const char* mass) {
    for (const domain::KitMove& one : changes[1].kit)
      if (one.name.find(mass) != std::string::npos) return one;
    return domain::KitMove{};
  };
  EXPECT_EQ(move("12 kg").put_away, 2);
  EXPECT_EQ(move("16 kg").stays, 4);
  EXPECT_EQ(move("16 kg").put_away, 2);
  EXPECT_EQ(move("24 kg").fetched, 3);
  EXPECT_GT(changes[1].seconds, 0);
}

TEST(ChangeOvers, FetchNoMoreThanTheShelfHasAndSayWhoShares) {
  const auto changes = planned({bells(0, 16, 10, 4)});
  ASSERT_EQ(changes[0].kit.size(), 1u);
  EXPECT_EQ(changes[0].kit[0].fetched, 4);
  EXPECT_EQ(changes[0].kit[0].short_by, 6);
}

TEST(ChangeOvers, TakeNoTimeWhereNothingMoves) {
  EXPECT_EQ(planned({bells(0, 16, 4, 8), bells(1, 16, 4, 8)})[1].seconds, 0);
}

/// One light thing takes one person 30 to 45 s, a class of sixteen 75 to 120 s; other plates 40 to 70 s
/// (common practice, no source).
TEST(ChangeOvers, TakeAsLongAsAClassUsuallyDoes) {
  const double one = planned({bells(1, 16, 1, 20)})[1].seconds;
  EXPECT_GE(one, 30);
  EXPECT_LE(one, 45);
  const double sixteen = planned({bells(1, 16, 16, 20)})[1].seconds;
  EXPECT_GE(sixteen, 75);
  EXPECT_LE(sixteen, 120);
  const double plates = planned({}, {0, 5})[1].seconds;
  EXPECT_GE(plates, 40);
  EXPECT_LE(plates, 70);
}

}  // namespace
}  // namespace repwright::advice
