#include "advice/edits.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <string>

#include "board/read.hpp"
#include "domain/board_search.hpp"
#include "support/shipped.hpp"

namespace repwright::advice {
namespace {

using domain::Edit;
using domain::RepairKind;

/// The edits of a board whose rehearsal says that people wait for the bars, or that the class runs over.
struct Class {
  double bar_wait_s = 0;
  double box_wait_s = 0;
  double route_wait_s = 0;
  double over_share = 0;
  int people = 12;
  std::optional<domain::PieceOutcome> outcome{};  // of everybody in the one piece
  std::optional<double> enough_home_s{};          // by then
  domain::Hall hall{};
  domain::House house{};

  std::vector<Edit> edits(const std::string& text) const {
    static const domain::Catalogue catalogue = test::shipped_catalogue();
    const domain::Board board = board::read(text, catalogue, {}).board;
    domain::Rehearsal before;
    before.people.resize(static_cast<std::size_t>(people));
    if (outcome)
      for (domain::PersonOutcome& person : before.people) person.pieces = {*outcome};
    before.timetable.over_share = over_share;
    before.places.push_back({.place = {"pull-up-bar"}, .count = 4, .wait_mean_s = bar_wait_s, .queue = {}});
    before.places.push_back({.place = {"shuttle"}, .count = 12, .wait_mean_s = route_wait_s, .queue = {}});
    before.places.push_back({.place = {"box"}, .count = 4, .wait_mean_s = box_wait_s, .queue = {}});
    std::vector<domain::PieceTarget> targets;
    if (enough_home_s) targets.push_back({.cap = domain::CapTarget{.seconds = *enough_home_s}});
    return edits_of({board, timetable::lay_out(board, {}), catalogue, before, hall, house, targets});
  }
};

std::vector<std::string> words_of(const std::vector<Edit>& edits, RepairKind kind) {
  std::vector<std::string> words;
  for (const Edit& edit : edits)
    if (edit.kind == kind) words.push_back(edit.words);
  return words;
}

const std::string rounds = "5 rounds for time\nrun 400 m\n10 pull-ups\n15 push-ups\n";

using ::testing::ElementsAre;
using ::testing::IsEmpty;

TEST(Edits, AreNoneWhereNobodyWaitsAndTheClassFits) {
  EXPECT_THAT(Class{}.edits(rounds), IsEmpty());
}

TEST(Edits, AgainstAQueueAreStartsOrdersHeatsStationsAndCounts) {
  const std::vector<Edit> edits = Class{.bar_wait_s = 30}.edits(rounds);
  EXPECT_THAT(words_of(edits, RepairKind::OddStart),
              ElementsAre("every second person starts with the pull-ups",
                          "every second person starts with the push-ups"));
  EXPECT_THAT(words_of(edits, RepairKind::Swap),
              ElementsAre("the pull-ups before the runs", "the push-ups before the pull-ups"));
  EXPECT_THAT(words_of(edits, RepairKind::Stagger),
              ElementsAre("one starts every 15 seconds", "one starts every 30 seconds"));
  EXPECT_THAT(words_of(edits, RepairKind::Heats), ElementsAre("two heats"));
  EXPECT_EQ(words_of(edits, RepairKind::SecondStation).size(), 1U);
  EXPECT_THAT(words_of(edits, RepairKind::FewerReps), ElementsAre("7 pull-ups instead of 10"));
  EXPECT_THAT(words_of(edits, RepairKind::FewerRounds), IsEmpty()) << "the class fits";
}

TEST(Edits, SendNobodyToStairsThatTheHallDoesNotList) {
  Class boxes{.box_wait_s = 30};
  boxes.hall.unlimited = false;
  const std::string stepping = "5 rounds for time\nrun 400 m\n20 box step-ups\n15 push-ups\n";
  EXPECT_THAT(words_of(boxes.edits(stepping), RepairKind::SecondStation), IsEmpty());
  boxes.hall.places.push_back({.equipment = {"stairs"}, .count = 8});
  EXPECT_THAT(words_of(boxes.edits(stepping), RepairKind::SecondStation),
              ElementsAre("stair climbs as a second station beside the box step-ups"));
}

TEST(Edits, OfferNoStationThatTheHallDoesNotList) {
  Class bars{.bar_wait_s = 30};
  bars.hall.unlimited = false;
  bars.hall.places.push_back({.equipment = {"pull-up-bar"}, .count = 2});
  for (const std::string& words : words_of(bars.edits(rounds), RepairKind::SecondStation))
    EXPECT_THAT(words, ::testing::Not(::testing::HasSubstr("ring row")));
  bars.hall.places.push_back({.equipment = {"rings"}, .count = 6});
  EXPECT_THAT(words_of(bars.edits(rounds), RepairKind::SecondStation),
              ElementsAre("ring rows as a second station beside the pull-ups"));
}

TEST(Edits, AgainstTheClockAreShorterRunsAndFewerRounds) {
  const std::vector<Edit> edits = Class{.over_share = 0.5}.edits(rounds);
  EXPECT_THAT(words_of(edits, RepairKind::ShorterRun),
              ElementsAre("run 300 m instead of 400 m", "run 200 m instead of 400 m"));
  EXPECT_THAT(words_of(edits, RepairKind::FewerRounds),
              ElementsAre("4 rounds instead of 5", "3 rounds instead of 5"));
  EXPECT_THAT(words_of(edits, RepairKind::OddStart), IsEmpty()) << "nobody waits";
}

TEST(Edits, OfferNoOtherStartWhereTheClockSaysWhenToDoWhat) {
  const std::vector<Edit> edits =
      Class{.bar_wait_s = 30}.edits("EMOM 12\nodd: 6 pull-ups\neven: 8 push-ups\n");
  EXPECT_THAT(words_of(edits, RepairKind::OddStart), IsEmpty());
  EXPECT_THAT(words_of(edits, RepairKind::FewerReps), ElementsAre("4 pull-ups instead of 6"));
}

TEST(Edits, OfferAnotherStartWithinAnInterval) {
  const std::vector<Edit> edits =
      Class{.bar_wait_s = 30}.edits("Every 3 min x 6\n200 m run\n6 pull-ups\n8 push-ups\n");
  EXPECT_THAT(words_of(edits, RepairKind::OddStart),
              ElementsAre("every second person starts with the pull-ups",
                          "every second person starts with the push-ups"));
}

TEST(Edits, ShortenTheRunWhenTheRouteIsFull) {
  const std::vector<Edit> edits = Class{.route_wait_s = 30}.edits(rounds);
  EXPECT_THAT(words_of(edits, RepairKind::ShorterRun),
              ElementsAre("run 300 m instead of 400 m", "run 200 m instead of 400 m"));
}

TEST(Edits, SendPartOfAFullCourseToTheMachinesOfTheHall) {
  Class full{.route_wait_s = 30};
  EXPECT_THAT(words_of(full.edits(rounds), RepairKind::SecondStation), IsEmpty()) << "no hall, no machine";
  full.hall.unlimited = false;
  full.hall.places = {{.equipment = {"rower"}, .count = 5}};
  const std::vector<Edit> edits = full.edits(rounds);
  ASSERT_EQ(words_of(edits, RepairKind::SecondStation).size(), 1u);
  for (const Edit& edit : edits)
    if (edit.kind == RepairKind::SecondStation) {
      EXPECT_EQ(domain::find_item(edit.board, edit.steps.front())->second_station,
                domain::MovementId{"rower"});
    }
}

TEST(Edits, HalveTheRoundsOfWhatIsFarTooLong) {
  EXPECT_THAT(
      words_of(Class{.over_share = 1}.edits("8 rounds for time\n10 push-ups\n"), RepairKind::FewerRounds),
      ElementsAre("7 rounds instead of 8", "6 rounds instead of 8", "4 rounds instead of 8"));
}

domain::PieceOutcome timed(double seconds, double capped = 0) {
  domain::PieceOutcome outcome;
  outcome.score.p50 = seconds;
  outcome.capped = capped;
  return outcome;
}
const std::string meant = rounds + "intent 12-16 min\n";

TEST(Edits, OfWhatIsTooMuchForItsIntentAreLessOfAllOrFewerRounds) {
  const std::vector<Edit> edits = Class{.outcome = timed(1300)}.edits(meant);
  EXPECT_THAT(words_of(edits, RepairKind::LessOfEach),
              ElementsAre("a quarter less of every line", "half of every line"));
  EXPECT_THAT(words_of(edits, RepairKind::FewerRounds),
              ElementsAre("4 rounds instead of 5", "3 rounds instead of 5"));
  EXPECT_THAT(words_of(edits, RepairKind::MoreRounds), IsEmpty());
  const std::vector<domain::Item>& items = edits.at(4).board.blocks.front().items;
  ASSERT_EQ(edits.at(4).kind, RepairKind::LessOfEach);
  EXPECT_EQ(items[0].amount, domain::Amount(300.0));
  EXPECT_EQ(items[1].amount, domain::Amount(8.0));
  EXPECT_EQ(items[2].amount, domain::Amount(11.0));
}

TEST(Edits, OfWhatIsTooShortForItsIntentAreMoreRounds) {
  const std::vector<Edit> edits = Class{.outcome = timed(600)}.edits(meant);
  EXPECT_THAT(words_of(edits, RepairKind::MoreRounds),
              ElementsAre("6 rounds instead of 5", "7 rounds instead of 5"));
  EXPECT_EQ(edits.size(), 2u);
  EXPECT_THAT(Class{.outcome = timed(800)}.edits(meant), IsEmpty()) << "as it is meant";
}

TEST(Edits, OfACapThatStopsPeopleAreALaterOneAndLessWork) {
  const std::string capped = "5 rounds for time, cap 20 min\n10 pull-ups\n15 push-ups\n";
  const std::vector<Edit> edits = Class{.outcome = timed(1200, 0.3), .enough_home_s = 1500}.edits(capped);
  EXPECT_THAT(words_of(edits, RepairKind::Cap), ElementsAre("cap 25:00 instead of 20:00"));
  EXPECT_EQ(words_of(edits, RepairKind::LessOfEach).size(), 2u);
  EXPECT_THAT(
      words_of(Class{.outcome = timed(1200, 0.3), .enough_home_s = 1500}.edits(capped + "intent 12-16 min\n"),
               RepairKind::Cap),
      IsEmpty())
      << "it is meant to end long before the cap";
  EXPECT_THAT(
      words_of(Class{.over_share = 1, .outcome = timed(1200, 0.3), .enough_home_s = 1500}.edits(capped),
               RepairKind::Cap),
      IsEmpty())
      << "the class has no time for it";
}

TEST(Edits, OfIntervalsThatLeaveTooLittleAreLongerOnesInTheSameTime) {
  domain::PieceOutcome full;
  full.measure = domain::Measure::Reps;
  full.interval_s = {170, 180};
  const std::vector<Edit> edits =
      Class{.outcome = full}.edits("Every 3 min x 7\n200 m run\n6 pull-ups\nleave 45 s spare\n");
  EXPECT_THAT(
      words_of(edits, RepairKind::LongerInterval),
      ElementsAre("every 3:30 x 6 instead of every 3:00 x 7", "every 4:00 x 5 instead of every 3:00 x 7"));
}

TEST(Edits, LeaveTheRoundsOfALadderAlone) {
  const Class over{.over_share = 1};
  EXPECT_THAT(words_of(over.edits("30-20-10 for time\npull-ups\npush-ups\n"), RepairKind::FewerRounds),
              IsEmpty());
}

TEST(Edits, GiveNoBoardTwice) {
  const std::vector<Edit> edits = Class{.route_wait_s = 30, .over_share = 1}.edits(rounds);
  for (std::size_t a = 0; a < edits.size(); ++a)
    for (std::size_t b = 0; b < a; ++b) EXPECT_NE(edits[a].board, edits[b].board) << edits[a].words;
}

TEST(Edits, OfferNoHeatsToAHandfulOfPeople) {
  EXPECT_THAT(words_of(Class{.bar_wait_s = 30, .people = 5}.edits(rounds), RepairKind::Heats), IsEmpty());
}

TEST(Edits, LeaveEveryOtherFieldOfTheBoardAsItWas) {
  const domain::Catalogue catalogue = test::shipped_catalogue();
  const domain::Board board = board::read(rounds, catalogue, {}).board;
  for (const Edit& edit : Class{.bar_wait_s = 30, .over_share = 0.5}.edits(rounds)) {
    EXPECT_NE(edit.board, board) << edit.words;
    EXPECT_EQ(edit.board.blocks.size(), board.blocks.size());
    EXPECT_EQ(edit.board.blocks.front().items.size(), board.blocks.front().items.size()) << edit.words;
    EXPECT_GT(edit.change, 0);
  }
}

}  // namespace
}  // namespace repwright::advice
