#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <set>

#include "api/reading_json.hpp"
#include "board/read.hpp"
#include "board/tidy.hpp"
#include "support/board_of_json.hpp"
#include "support/files.hpp"
#include "support/reading_compare.hpp"
#include "support/shipped_catalogue.hpp"

/// Reading what was tidied gives the same board, and leaves nothing in doubt but what stays so however it is
/// written: whose load is whose, which tempo digit is which, a movement that nobody knows.
namespace repwright {
namespace {

using nlohmann::json;

board::Reading read(const std::string& text, const domain::House& house = {}) {
  return board::read(text, test::shipped_catalogue(), house);
}

/// What breaks the law for that text, in words; empty if it holds.
std::string broken_by(const std::string& text, const domain::House& house = {}) {
  const board::Reading first = read(text, house);
  const std::string tidied = board::tidy(first.board, test::shipped_catalogue(), house);
  const board::Reading second = read(tidied, house);
  std::string words;
  if (first.board != second.board) {
    words += "another board\n";
    const json expected = api::blocks_json(first.board);
    for (const std::string& each : test::differences(expected, api::blocks_json(second.board)))
      words += each + "\n";
  }
  static const std::set<std::string> stays{"tier-order", "tempo-order", "unknown-movement"};
  for (const domain::Diagnostic& diagnostic : second.diagnostics)
    if (!stays.contains(diagnostic.name)) words += diagnostic.name + ": " + diagnostic.text + "\n";
  return words.empty() ? "" : words + "--- chalked\n" + text + "\n--- tidied\n" + tidied;
}

TEST(TidyLaw, HoldsForTheThirtyBoardsAndTheEightExamples) {
  for (const test::Example& example : test::examples()) EXPECT_EQ(broken_by(example.text), "") << example.id;
}

TEST(TidyLaw, HoldsForTheScenariosBoards) {
  const json boards = json::parse(test::test_data("scenario-boards.json"))["boards"];
  ASSERT_EQ(boards.size(), 14u);
  for (const json& each : boards) EXPECT_EQ(broken_by(each["text"]), "") << each["id"];
}

TEST(TidyLaw, HoldsInEveryHouse) {
  domain::House house;
  house.mass_unit = domain::MassUnit::Pounds;
  house.tempo = domain::TempoOrder::UpTopDownPause;
  house.tiers = domain::TierRule::ByChoice;
  house.legs_counted_together = false;
  house.pull_up_may_swing = true;
  house.minute_one_is_odd = false;
  for (const test::Example& example : test::examples())
    EXPECT_EQ(broken_by(example.text, house), "") << example.id;
}

/// One of them.
std::string one_of(std::initializer_list<std::string> choices) {
  return *rc::gen::elementOf(std::vector(choices));
}
std::string number(int from, int to) {
  return std::to_string(*rc::gen::inRange(from, to + 1));
}

std::string work() {
  return one_of({number(1, 60) + " push-ups", number(1, 9) + "00 m run", number(3, 50) + " cal row",
                 number(10, 90) + "s plank", number(5, 40) + " KB swings 24/16",
                 number(4, 40) + " DB lunges 2x15/10", number(3, 20) + " box jumps 60/50 cm",
                 number(3, 20) + " pull ups (scale: band / ring row)",
                 number(3, 20) + " box step ups each leg", number(3, 20) + " moon hops",
                 number(3, 12) + " DB rows each side", "18/14 cal ski", number(5, 30) + " goblet squats @16",
                 number(5, 30) + " wall balls 9/6 kg", "60 m farmers carry 2x24/16 (unbroken)"});
}
std::string lines() {
  std::string text;
  const int count = *rc::gen::inRange(1, 5);
  for (int i = 0; i < count; ++i) text += work() + "\n";
  return text;
}
std::string numbered(int count) {
  std::string text;
  for (int i = 1; i <= count; ++i) text += std::to_string(i) + ") " + work() + "\n";
  return text;
}
std::string condition() {
  return one_of({"", "", "", ", heats 2", ", vest 6 kg", ", keep the bar", ", quiet", ", start every 15 s"});
}
std::string rule() {
  return one_of({"", "", "", "intent 10-14 min, RPE 7\n", "intent 3+ rounds\n", "leave 45 s spare\n",
                 "[mind the door]\n"});
}

std::string circuit() {
  const int stations = *rc::gen::inRange(2, 7);
  return "40/20 x " + std::to_string(stations) + " stations x " + number(2, 4) + " laps, 1' between laps\n" +
         numbered(stations);
}
std::string every_minute() {
  const int slots = *rc::gen::inRange(2, 5);
  return "EMOM x " + std::to_string(slots * *rc::gen::inRange(2, 5)) + "\n" + numbered(slots);
}

std::string piece() {
  switch (*rc::gen::inRange(0, 17)) {
    case 0:
      return number(2, 9) + " RFT (cap 30)" + condition() + "\n" + lines() + rule();
    case 1:
      return "For time, TC 40'" + condition() + "\n" + lines() + rule();
    case 2:
      return "AMRAP " + number(4, 30) + condition() + "\n" + lines() + rule();
    case 3:
      return every_minute() + rule();
    case 4:
      return "E" + number(2, 5) + "MOM x" + number(2, 9) + "\n200m run + " + work() + " + max cal bike\n";
    case 5:
      return number(2, 6) + " x AMRAP " + number(2, 7) + " / 2 off\n" + lines();
    case 6:
      return number(2, 6) + " rounds, each for time, rest 2:00 b/t:\n" + lines() +
             one_of({"", "score slowest round\n"});
    case 7:
      return number(2, 9) + " x 400m @ 5k pace, 1:1 rest\n";
    case 8:
      return circuit();
    case 9:
      return "Teams of 2, cap 30:00\n" + number(20, 90) +
             " KB swings 24/16 (one works, other holds plank)\n" + number(20, 90) +
             " push-ups, split anyhow\n400 m run together\n";
    case 10:
      return "In pairs YGIG " + number(8, 30) + " min\n" + work() + "\n";
    case 11:
      return "Back squat " + number(3, 6) + "x" + number(2, 8) + " @ 75% (rest 2:30)\n";
    case 12:
      return "A1 bench 4x6-8 @ 8RPE\nA2 DB row 4x" + number(6, 12) + "/s\nrest 90s\n";
    case 13:
      return "Build to a heavy " + number(1, 5) + " front squat in " + number(8, 20) + "'\n";
    case 14:
      return "Accumulate " + number(2, 6) + ":00 dead hang\nevery break = 5 down-ups\n";
    case 15:
      return "Buy in: 600m run\nthen " + number(2, 6) + " rds: 9 pull-ups, 13 push ups\nCash out: 600m run\n";
    default:
      return "Rest " + number(1, 5) + ":00\n";
  }
}

std::string session() {
  std::string text = one_of({"", "Thu\n", "Saturday, 60 min\n"});
  const int pieces = *rc::gen::inRange(1, 5);
  for (int i = 0; i < pieces; ++i) text += "\n" + piece();
  return text;
}

RC_GTEST_PROP(TidyLaw, HoldsForSessionsMadeAtRandom, ()) {
  const auto text = *rc::gen::exec(session).as("session");
  const std::string broken = broken_by(text);
  if (!broken.empty()) RC_FAIL(broken);
}

RC_GTEST_PROP(TidyLaw, LeavesTidiedTextAlone, ()) {
  const std::string once =
      board::tidy(read(*rc::gen::exec(session).as("session")).board, test::shipped_catalogue(), {});
  RC_ASSERT(board::tidy(read(once).board, test::shipped_catalogue(), {}) == once);
}

}  // namespace
}  // namespace repwright
