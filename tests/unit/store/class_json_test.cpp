#include "store/class_json.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/shipped_catalogue.hpp"

namespace repwright::store {
namespace {

using base::minute;
using base::second;
using ::repwright::test::shipped_catalogue;
using testing::AllOf;
using testing::HasSubstr;

std::string complaint(std::string_view bytes) {
  const auto file = read_class(bytes, "wed.json", "wed", shipped_catalogue());
  return file ? std::string() : file.error().message;
}

TEST(ClassFile, ReadsWhoComesAndWhatIsOut) {
  const auto file = read_class(R"({
    "id": "wed-19-for-12", "date": "2027-04-14", "start": "17:30", "minutes": 60, "board_id": "wed-every-three",
    "booked": ["a01", "a04"], "arrivals": [{"id": "a01", "late_s": 0}, {"id": "a08", "late_s": 120}],
    "walk_ins": ["a08"], "faults": [{"equipment": "pull-up-bar", "out": 1, "text": "end bar: loose bolt"}],
    "weather": {"text": "steady rain", "temp_c": 8, "wbgt_c": 7.5, "rain": true, "daylight": false,
                "closed_routes": ["r200"]},
    "boxes_min": {"briefing": 3, "scores": 2.5}, "indoors": true, "coach": "evening-coach"})",
                               "wed.json", "wed", shipped_catalogue());
  ASSERT_TRUE(file.has_value()) << file.error().message;
  using namespace std::chrono_literals;
  domain::GymClass expected;
  expected.id = "wed-19-for-12";
  expected.date = 2027y / 4 / 14;
  expected.start_minute = 17 * 60 + 30;
  expected.length = 60 * minute;
  expected.board_id = "wed-every-three";
  expected.booked = {{"a01"}, {"a04"}};
  expected.arrivals = {{{"a01"}, 0 * second}, {{"a08"}, 120 * second}};
  expected.walk_ins = {{"a08"}};
  expected.faults = {{{"pull-up-bar"}, 1, "end bar: loose bolt"}};
  expected.weather = {"steady rain", 8, 7.5, true, false, {{"r200"}}};
  expected.boxes.briefing = 3 * minute;
  expected.boxes.scores = 2.5 * minute;
  expected.indoors = true;
  EXPECT_EQ(file->gym_class, expected);
  EXPECT_EQ(file->notes, std::vector<std::string>{"wed.json: /coach is left out: not a known key"});
}

TEST(ClassFile, IsCalledLikeItsFileIfItNamesNoId) {
  const auto file = read_class("{}", "wed.json", "wed", shipped_catalogue());
  ASSERT_TRUE(file.has_value());
  EXPECT_EQ(file->gym_class.id, "wed");
  EXPECT_FALSE(file->gym_class.date.has_value());
}

TEST(ClassFile, NamesEverythingThatIsWrongByPointer) {
  EXPECT_THAT(
      complaint(R"({"date": "2027-02-30", "start": "25:00", "minutes": 0, "booked": ["a", "a", 3],
                            "arrivals": [{"late_s": -5}, {"id": "b"}, {"id": "b"}],
                            "faults": [{"equipment": "sofa", "out": -1}], "boxes_min": {"clean": 500},
                            "weather": {"temp_c": 90, "rain": "yes"}})"),
      AllOf(HasSubstr("/date: is '2027-02-30', expected a day"), HasSubstr("/start: is '25:00'"),
            HasSubstr("/minutes: is 0"), HasSubstr("/booked: names 'a' twice"),
            HasSubstr("/booked: has an element that is a number"), HasSubstr("/arrivals/0/id: is missing"),
            HasSubstr("/arrivals/0/late_s: is -5"), HasSubstr("/arrivals/2/id: 'b' arrives twice"),
            HasSubstr("/faults/0/equipment: no equipment is called 'sofa'"),
            HasSubstr("/faults/0/out: is -1"), HasSubstr("/boxes_min/clean: is 500"),
            HasSubstr("/weather/temp_c: is 90"),
            HasSubstr("/weather/rain: is a text, expected true or false")));
}

}  // namespace
}  // namespace repwright::store
