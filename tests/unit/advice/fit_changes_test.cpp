#include "advice/fit_changes.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "board/read.hpp"
#include "support/shipped_catalogue.hpp"

namespace repwright::advice {
namespace {

using ::testing::Each;
using ::testing::Gt;

domain::Block piece_of(const std::string& chalk) {
  return board::read(chalk, test::shipped_catalogue(), {}).board.blocks.at(0);
}

std::vector<FitChange> singles_of(const domain::Block& piece, const domain::Hall& hall = {}) {
  return single_changes(piece, {test::shipped_catalogue(), hall, domain::House{}});
}

double amount_of(const domain::Item& item) {
  return std::get<double>(item.amount);
}

TEST(FitChanges, BeginWithNoChangeAndCostMoreTheMoreTheyChange) {
  const auto changes = singles_of(piece_of("4 rounds for time\n12 push-ups\n200 m run\n"));
  EXPECT_EQ(changes.front(), FitChange{});
  EXPECT_EQ(size_of(changes.front()), 0);
  for (std::size_t c = 1; c < changes.size(); ++c) EXPECT_GT(size_of(changes[c]), 0);
  FitChange slightly, half;
  slightly.counts = 0.9;
  half.counts = 0.5;
  EXPECT_LT(size_of(slightly), size_of(half));
}

TEST(FitChanges, GoEasierHarderFewerShorter) {
  const domain::Block piece = piece_of("4 rounds for time\n12 push-ups\n200 m run\n");
  const auto changes = singles_of(piece);
  const auto any = [&](auto holds) { return std::ranges::any_of(changes, holds); };
  EXPECT_TRUE(any([](const FitChange& c) { return !c.versions.empty(); }));
  EXPECT_TRUE(any([](const FitChange& c) { return c.counts < 1; }));
  EXPECT_TRUE(any([](const FitChange& c) { return c.counts > 1; }));
  EXPECT_TRUE(any([](const FitChange& c) { return c.metres < 1; }));
  EXPECT_TRUE(any([](const FitChange& c) { return c.rounds == 0.75; }));
}

TEST(FitChanges, OfRoundsAreForPiecesWhoseRoundsAreAlike) {
  const auto rounds_change = [](const std::string& chalk) {
    return std::ranges::any_of(singles_of(piece_of(chalk)),
                               [](const FitChange& change) { return change.rounds != 1; });
  };
  EXPECT_TRUE(rounds_change("3 rounds for time\n10 push-ups\n"));
  EXPECT_FALSE(rounds_change("for time\n100 push-ups\n"));
  EXPECT_FALSE(rounds_change("AMRAP 10\n10 push-ups\n"));
  EXPECT_FALSE(rounds_change("21-15-9 for time\nair squats\npush-ups\n"));
  const domain::Block piece = piece_of("4 rounds for time\n12 push-ups\n");
  FitChange change;
  change.rounds = 0.75;
  EXPECT_EQ(changed(piece, change, test::shipped_catalogue()).rounds, 3);
}

TEST(FitChanges, OfLoadsAreThoseOfTheShelf) {
  domain::Hall hall;
  for (const double kg : {8.0, 12.0, 16.0, 20.0, 24.0})
    hall.kit.push_back(
        {.equipment = {"kettlebell"}, .mass = kg * base::kilogram, .height = {}, .size = {}, .count = 4});
  hall.kit.back().count = 0;
  std::vector<double> loads;
  for (const FitChange& change : singles_of(piece_of("AMRAP 8\n15 KB swings 16 kg\n"), hall))
    for (const auto& [step, mass] : change.loads) loads.push_back(mass.si());
  EXPECT_THAT(loads, ::testing::ElementsAre(8, 12, 16, 20));
}

TEST(FitChanges, ChangeThePieceAndNothingElse) {
  const domain::Block piece = piece_of("4 rounds for time\n12 push-ups\n200 m run\n");
  EXPECT_EQ(changed(piece, {}, test::shipped_catalogue()), piece);
  FitChange change;
  change.counts = 0.5;
  change.metres = 0.5;
  const domain::Block less = changed(piece, change, test::shipped_catalogue());
  EXPECT_EQ(amount_of(less.items[0]), 6);
  EXPECT_EQ(amount_of(less.items[1]), 100);
}

TEST(FitChanges, DropALoadThatBelongsToOtherKit) {
  domain::Block piece = piece_of("AMRAP 8\n10 deadlifts 80 kg\n");
  FitChange change;
  change.versions[piece.items[0].step] = {"kb-deadlift"};
  ASSERT_NE(test::shipped_catalogue().find(domain::MovementId{"kb-deadlift"}), nullptr);
  EXPECT_FALSE(changed(piece, change, test::shipped_catalogue()).items[0].loads);
}

TEST(FitChanges, InTwosChangeTwoThings) {
  const auto singles = singles_of(piece_of("3 rounds for time\n12 push-ups\n200 m run\n"));
  std::vector<double> sizes;
  for (const FitChange& change : double_changes(singles)) {
    sizes.push_back(size_of(change));
    EXPECT_FALSE(change.versions.size() == 1 && change.counts == 1 && change.metres == 1 &&
                 change.rounds == 1);
  }
  EXPECT_FALSE(sizes.empty());
  EXPECT_THAT(sizes, Each(Gt(1)));
}

}  // namespace
}  // namespace repwright::advice
