#include "advice/fit_steps.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/shipped_catalogue.hpp"

namespace repwright::advice {
namespace {

struct Line {
  std::string movement;
  double count = 10;
  double load_kg = 0;
};

domain::FittedPerson doing(const std::vector<Line>& lines, int rounds = 4) {
  domain::FittedPerson person;
  for (const Line& line : lines) {
    domain::FittedItem& item = person.items.emplace_back();
    item.movement = domain::MovementId{line.movement};
    item.amount = line.count;
    if (line.load_kg > 0) item.load = line.load_kg * base::kilogram;
  }
  person.rounds[domain::BlockId{0}] = rounds;
  return person;
}

double by(const domain::FittedPerson& own, const domain::FittedPerson& other) {
  return harder_by(test::shipped_catalogue(), own, other).value_or(0);
}

TEST(FitSteps, AreHarderWithMoreLoadMoreRepsMoreRoundsAndTheHarderVersion) {
  EXPECT_GT(by(doing({{"kb-swing", 10, 12}}), doing({{"kb-swing", 10, 16}})), 0);
  EXPECT_GT(by(doing({{"push-up", 9}}), doing({{"push-up", 11}})), 0);
  EXPECT_GT(by(doing({{"push-up"}}, 3), doing({{"push-up"}}, 4)), 0);
  EXPECT_GT(by(doing({{"wall-push-up"}}), doing({{"push-up"}})), 0);
}

TEST(FitSteps, AreEasierTheOtherWayRound) {
  EXPECT_LT(by(doing({{"kb-deadlift", 6, 12}}), doing({{"kb-deadlift", 6, 6}})), 0);
  EXPECT_LT(by(doing({{"pull-up", 8}}), doing({{"pull-up", 6}})), 0);
  EXPECT_LT(by(doing({{"push-up"}}), doing({{"wall-push-up"}})), 0);
  EXPECT_LT(by(doing({{"run"}}), doing({{"walk-brisk"}})), 0) << "though a walk takes longer";
}

TEST(FitSteps, AreFartherTheFartherTheLoadOrTheLadder) {
  const auto own = doing({{"kb-swing", 10, 6}});
  EXPECT_LT(by(own, doing({{"kb-swing", 10, 8}})), by(own, doing({{"kb-swing", 10, 16}})));
  EXPECT_NEAR(by(own, doing({{"kb-swing", 10, 8}})), 1, 0.02) << "a third more is one step";
}

TEST(FitSteps, AreNoneWhereOneThingGetsHarderAndAnotherEasier) {
  const auto none = [](const domain::FittedPerson& own, const domain::FittedPerson& other) {
    return !harder_by(test::shipped_catalogue(), own, other);
  };
  EXPECT_TRUE(
      none(doing({{"push-up", 9}, {"kb-swing", 9, 12}}), doing({{"push-up", 7}, {"kb-swing", 9, 16}})));
  EXPECT_TRUE(none(doing({{"crunch-reach", 14}}), doing({{"hanging-knee-raise", 8}})));
  EXPECT_TRUE(none(doing({{"push-up"}}), doing({{"box-step-up"}}))) << "on no ladder of each other";
  EXPECT_TRUE(none(doing({{"push-up"}}), doing({{"push-up"}}))) << "the same";
}

TEST(FitSteps, CountMoreOfTheSameMachineAsMoreWhateverItStandsFor) {
  auto own = doing({{"fan-bike", 510}});
  auto other = doing({{"fan-bike", 650}});
  own.items[0].score_factor = 2.55;
  other.items[0].score_factor = 3.3;
  EXPECT_GT(by(own, other), 0);
}

TEST(FitSteps, LookAtTheOtherLinesBeforeTheRun) {
  const auto own = doing({{"run", 200}, {"pull-up", 8}});
  EXPECT_GT(std::abs(by(own, doing({{"walk-brisk", 200}, {"pull-up", 8}}))),
            std::abs(by(own, doing({{"run", 200}, {"band-pull-up", 8}}))));
}

TEST(FitSteps, CountThreeSinglesForADoubleAsOne) {
  auto singles = doing({{"single-under", 150}});
  singles.items[0].score_factor = 3;
  EXPECT_LT(by(doing({{"double-under", 50}}), singles), 0);
}

}  // namespace
}  // namespace repwright::advice
