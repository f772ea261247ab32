#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "board/phrases.hpp"
#include "board/words.hpp"
#include "support/board_of_json.hpp"
#include "support/files.hpp"
#include "support/shipped_catalogue.hpp"

namespace repwright::board {
namespace {

using nlohmann::json;

std::vector<std::string> said(const json& blocks, const domain::House& house = {}) {
  return in_words(test::board_of_json(blocks), test::shipped_catalogue(), house);
}

/// The only sentence.
std::string said(const char* block, const domain::House& house = {}) {
  const auto sentences = said(json::array({json::parse(block)}), house);
  return sentences.size() == 1 ? sentences.front() : "not one sentence";
}

/// A piece of one line of work.
std::string said_of(const std::string& item, const domain::House& house = {}) {
  const std::string block = R"({"kind": "for_time", "rounds": 1, "score": "time", "items": [)" + item + "]}";
  return said(block.c_str(), house);
}

TEST(Words, SayEveryExampleAsACoachWould) {
  std::string all;
  for (const test::Example& example : test::examples()) {
    all += example.id + "\n";
    for (const std::string& sentence : said(example.expect["blocks"])) all += "  " + sentence + "\n";
  }
  EXPECT_EQ(all, test::test_data("examples-in-words.txt"));
}

TEST(Words, SayTheCarriedWords) {
  EXPECT_EQ(
      said(R"({"kind": "for_time", "rounds": 3, "cap_s": 1200, "heats": 2, "vest_kg": 6, "score": "time",
                     "keep_place": true, "quiet": true, "odd_start": "push-up",
                     "start": {"kind": "stagger", "every_s": 15, "people": 2},
                     "intent": {"time_s": {"min": 600, "max": 840}, "effort": 7},
                     "items": [{"move": "push-up", "qty": 10, "unit": "reps"},
                               {"move": "pull-up", "qty": 5, "unit": "reps", "second_station": "ring-row"}]})"),
      "Three rounds for time, cap 20 minutes, in two heats, two people starting every 15 seconds, in a 6 kg "
      "vest: "
      "10 push-ups, 5 pull-ups (second station: ring rows); every second person starts with the push-ups; "
      "keep the bar while resting; quiet, please; meant for 10 to 14 minutes at RPE 7.");
  EXPECT_EQ(said(R"({"kind": "amrap", "duration_s": 660, "score": "rounds+reps",
                     "intent": {"rounds": {"min": 4}, "effort": {"min": 6, "max": 7}, "spare_s": 45},
                     "items": [{"move": "burpee", "qty": 1, "unit": "reps"}]})"),
            "As many rounds as possible in 11 minutes: 1 burpee; meant for 4 or more rounds, RPE 6 to 7 at "
            "45 seconds to spare.");
}

TEST(Words, SayLoadsInTheHousesUnit) {
  const std::string swing =
      R"({"move": "kb-swing", "qty": 14, "unit": "reps", "load_kg": [24.04039561, 15.87573295]})";
  domain::House house;
  house.mass_unit = domain::MassUnit::Pounds;
  EXPECT_EQ(said_of(swing, house), "For time: 14 kettlebell swings with 53 or 35 lb.");
  EXPECT_EQ(said_of(R"({"move": "bb-deadlift", "qty": 5, "unit": "reps",
                        "load_rel": {"of": "last-week", "plus_kg": 2.5}})"),
            "For time: 5 deadlifts at last week's load plus 2.5 kg.");
}

TEST(Words, SayAmountsOfEveryForm) {
  const auto reps = [](const std::string& quantity) {
    return said_of(R"({"move": "burpee", "unit": "reps", "qty": )" + quantity + "}");
  };
  EXPECT_EQ(reps("1"), "For time: 1 burpee.");
  EXPECT_EQ(reps("\"3+\""), "For time: 3 or more burpees.");
  EXPECT_EQ(reps(R"({"min": 6, "max": 8})"), "For time: 6 to 8 burpees.");
  EXPECT_EQ(reps(R"({"pair": [18, 14]})"), "For time: 18 or 14 burpees.");
  EXPECT_EQ(reps("\"max-2\""), "For time: max burpees minus two.");
  EXPECT_EQ(said_of(R"({"move": "rower", "qty": "max", "unit": "m"})"), "For time: max metres of row.");
  EXPECT_EQ(said_of(R"({"move": "plank", "qty": [60, 45], "unit": "s"})"),
            "For time: 60-45 seconds of plank.");
}

TEST(Words, SayMannerAndHeight) {
  EXPECT_EQ(said_of(R"({"move": "box-jump", "qty": 9, "unit": "reps", "height_cm": [60, 50],
                        "effort": {"min": 7, "max": 8}, "tempo": [3, 1, "X", 0], "pace": "easy"})"),
            "For time: 9 box jumps at 60 or 50 cm at RPE 7 to 8 in tempo 3-1-X-0 at easy pace.");
}

TEST(Words, KeepTheCoachsWordsWhereTheCatalogueHasNone) {
  EXPECT_EQ(said_of(R"({"move": null, "free_text": "target throws", "qty": 20, "unit": "reps"})"),
            "For time: 20 target throws.");
  EXPECT_EQ(said_of(R"({"move": "moon-walk", "qty": 20, "unit": "m"})"), "For time: 20 m moon-walk.");
}

TEST(Words, SayRestsOfEveryKind) {
  const auto rests = [](const std::string& rest) {
    const std::string block = R"({"kind": "intervals", "rounds": 6, "score": "times", "rest": )" + rest +
                              R"(, "items": [{"move": "run", "qty": 400, "unit": "m"}]})";
    return said(block.c_str());
  };
  EXPECT_EQ(rests(R"({"kind": "free"})"), "Six times 400 m run, rest as needed.");
  EXPECT_EQ(rests(R"({"kind": "ratio", "work": 1, "rest": 2})"),
            "Six times 400 m run, rest at 1:2 of the work.");
  EXPECT_EQ(rests(R"({"kind": "fixed", "seconds": 150})"), "Six times 400 m run, 2 minutes 30 of rest.");
}

TEST(Words, SayPartsWarmUpsAndExtras) {
  EXPECT_EQ(said(R"({"kind": "part", "title": "Skill", "duration_s": 600, "children": [
                      {"kind": "rounds", "rounds": 2, "items": [{"move": "ring-row", "qty": 5, "unit": "reps"}]},
                      {"kind": "rest", "duration_s": 60}]})"),
            "Skill, 10 minutes: two rounds of 5 ring rows, then rest 1 minute.");
  EXPECT_EQ(
      said(R"({"kind": "once", "duration_s": 300, "items": [{"move": "run", "qty": 400, "unit": "m"}]})"),
      "400 m run, 5 minutes.");
  EXPECT_EQ(
      said(R"({"kind": "optional", "rounds": 2, "items": [{"move": "plank", "qty": 30, "unit": "s"}]})"),
      "Extra, if time allows: two rounds of 30 seconds of plank.");
  EXPECT_EQ(said(R"({"kind": "window", "from_s": 0, "to_s": 450, "text": "talk"})"),
            "0 seconds to 7 minutes 30: talk.");
}

TEST(Words, PutTheHeadingBeforeAndTheCoachsRemarkBehind) {
  EXPECT_EQ(said(R"({"kind": "amrap", "title": "Piece A", "text": "write which felt best", "duration_s": 660,
                     "score": "rounds+reps", "items": [{"move": "burpee", "qty": 5, "unit": "reps"}]})"),
            "Piece A: as many rounds as possible in 11 minutes: 5 burpees; write which felt best.");
  EXPECT_EQ(said(R"({"kind": "rest", "duration_s": 300, "text": "Change-over"})"),
            "Rest 5 minutes (Change-over).");
}

TEST(Words, SayPartnersByRoundAndRelaysOnOneLane) {
  EXPECT_EQ(said(R"({"kind": "partner", "team_size": [3, 4], "duration_s": 900, "score": "rounds+reps",
                     "work_mode": "alternate-by-round", "items": [{"move": "burpee", "qty": 5, "unit": "reps"}]})"),
            "In teams of three or four for 15 minutes, you go, I go after each round: 5 burpees.");
  EXPECT_EQ(said(R"({"kind": "relay", "team_size": 4, "turns_each": 1, "lanes": 1, "score": "place",
                     "items": [{"move": "run", "qty": 100, "unit": "m"}]})"),
            "Relay in teams of four on one lane, one turn each: 100 m run; first home wins.");
}

TEST(Phrases, SayTimesAsTheyAreSpoken) {
  const auto words = [](double seconds) { return time_words(base::Duration::from_si(seconds)); };
  EXPECT_EQ(words(0), "0 seconds");
  EXPECT_EQ(words(1), "1 second");
  EXPECT_EQ(words(60), "1 minute");
  EXPECT_EQ(words(90), "90 seconds");
  EXPECT_EQ(words(120), "2 minutes");
  EXPECT_EQ(words(150), "2 minutes 30");
  EXPECT_EQ(words(4500), "75 minutes");
  EXPECT_EQ(words(7500), "2 hours 5 minutes");
}

TEST(Phrases, CountInWordsUpToTwelve) {
  EXPECT_EQ(count_word(12), "twelve");
  EXPECT_EQ(count_word(13), "13");
  EXPECT_EQ(times_word(1), "once");
  EXPECT_EQ(times_word(2), "twice");
  EXPECT_EQ(times_word(5), "five times");
}

TEST(Phrases, ListWithoutAmbiguity) {
  const std::vector<std::string> plain{"a", "b", "c"};
  const std::vector<std::string> with_commas{"a, b", "c"};
  EXPECT_EQ(listed(plain), "a, b and c");
  EXPECT_EQ(listed(with_commas), "a, b; and c");
  EXPECT_EQ(in_order(plain), "a, b, c");
  EXPECT_EQ(in_order(with_commas), "a, b; c");
  EXPECT_EQ(listed({}), "");
}

}  // namespace
}  // namespace repwright::board
