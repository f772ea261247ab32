#include "timetable/length.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/board_of_json.hpp"

namespace repwright::timetable {
namespace {

using nlohmann::json;

/// Seconds, or null.
json length_of(const std::string& blocks) {
  const auto length = fixed_length(test::board_of_json(json::parse(blocks)));
  return length ? json(length->si()) : json();
}

TEST(FixedLength, IsWhatEveryExampleSays) {
  for (const test::Example& example : test::examples()) {
    const auto length = fixed_length(test::board_of_json(example.expect["blocks"]));
    EXPECT_EQ(length ? json(length->si()) : json(), example.expect["fixed_seconds"]) << example.id;
  }
}

TEST(FixedLength, OfNothingIsNone) {
  EXPECT_EQ(length_of("[]"), json());
  EXPECT_EQ(length_of(R"([{"kind": "note", "text": "gloves optional"}])"), json());
}

TEST(FixedLength, TakesTheHeadingsMinutesBeforeTheBlocksOwn) {
  EXPECT_EQ(length_of(R"([{"kind": "every", "every_s": 60, "intervals": 8, "duration_s": 600}])"), 600);
  EXPECT_EQ(length_of(R"([{"kind": "optional", "duration_s": 600}, {"kind": "rest", "duration_s": 60}])"),
            60);
}

TEST(FixedLength, CountsEveryRestOfIntervalsUnlessItIsBetween) {
  EXPECT_EQ(length_of(R"([{"kind": "intervals", "rounds": 8, "work_s": 20, "rest_s": 10}])"), 240);
  EXPECT_EQ(length_of(R"([{"kind": "intervals", "rounds": 3, "work_s": 120,
                           "rest": {"kind": "fixed", "seconds": 60, "between_only": true}}])"),
            480);
  EXPECT_EQ(length_of(R"([{"kind": "intervals", "rounds": 3, "work_s": 120,
                           "rest": {"kind": "ratio", "work": 2, "rest": 1, "between_only": true}}])"),
            480);
}

TEST(FixedLength, IsOpenWhereTheRestIs) {
  EXPECT_EQ(length_of(R"([{"kind": "intervals", "rounds": 3, "work_s": 120, "rest": {"kind": "free"}}])"),
            json());
  EXPECT_EQ(length_of(R"([{"kind": "intervals", "rounds": 6, "rest": {"kind": "fixed", "seconds": 60}}])"),
            json());
}

TEST(FixedLength, PutsTheLapRestBetweenLaps) {
  EXPECT_EQ(length_of(R"([{"kind": "circuit", "work_s": 40, "rest_s": 20, "laps": 3, "lap_rest_s": 60,
                           "stations": [[], [], [], [], [], []]}])"),
            1200);
}

TEST(FixedLength, CountsABlockOncePerHeat) {
  EXPECT_EQ(length_of(R"([{"kind": "amrap", "duration_s": 480, "heats": 2}])"), 960);
  EXPECT_EQ(length_of(R"([{"kind": "for_time", "cap_s": 480, "heats": 2}])"), json());
}

TEST(FixedLength, OfAPartIsItsMinutesOrTheSumOfItsChildren) {
  const std::string children =
      R"("children": [{"kind": "amrap", "duration_s": 480}, {"kind": "rest", "duration_s": 60}])";
  EXPECT_EQ(length_of(R"([{"kind": "part", )" + children + "}]"), 540);
  EXPECT_EQ(length_of(R"([{"kind": "part", "duration_s": 900, )" + children + "}]"), 900);
}

TEST(FixedLength, OfAWindowIsItsClockTimesWhateverIsInside) {
  EXPECT_EQ(length_of(R"([{"kind": "window", "from_s": 600, "to_s": 900,
                           "children": [{"kind": "for_time", "rounds": 1}]}])"),
            300);
}

}  // namespace
}  // namespace repwright::timetable
