#include "store/hall_json.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/shipped_catalogue.hpp"

namespace repwright::store {
namespace {

using base::kilogram;
using base::metre;
using base::second;
using ::repwright::test::shipped_catalogue;
using testing::AllOf;
using testing::HasSubstr;

std::string complaint(std::string_view bytes) {
  const auto hall = read_hall(bytes, "hall.json", shipped_catalogue());
  return hall ? std::string() : hall.error().message;
}

TEST(HallFile, ReadsPlacesKitRoutesAndQuietHours) {
  const auto file = read_hall(R"({
    "name": "The Lock Shed", "floor_m2": 216,
    "places": [{"equipment": "pull-up-bar", "count": 8}, {"equipment": "rower", "count": 0}],
    "displacements": [{"used": "rack", "taken": "pull-up-bar"}],
    "kit": [{"equipment": "kettlebell", "kg": 7.5, "count": 8}, {"equipment": "box", "height_cm": 30, "count": 4},
            {"equipment": "band", "size": "light", "count": 8}],
    "routes": [{"id": "r200", "name": "Footbridge and back", "lap_m": 200, "shape": "loop", "dark_ok": false,
                "wet_ok": false, "max_people": 24, "climb_m": 3, "door_s": 15, "use": "carry",
                "hazards": ["water edge"]}],
    "quiet_hours": [{"days": ["sat", "sun"], "until": "09:00", "rule": "no drops"}]
  })",
                              "hall.json", shipped_catalogue());
  ASSERT_TRUE(file.has_value()) << file.error().message;
  const domain::Hall& hall = file->hall;
  EXPECT_EQ(hall.name, "The Lock Shed");
  EXPECT_EQ(hall.floor, 216 * (metre * metre));
  EXPECT_EQ(hall.places_of({"pull-up-bar"}), 8);
  EXPECT_EQ(hall.places_of({"rower"}), 0) << "no place at all is a closed kind, not an unlimited one";
  EXPECT_EQ(hall.displacements, (std::vector<domain::Displacement>{{{"rack"}, {"pull-up-bar"}}}));
  EXPECT_EQ(hall.kit[0], (domain::KitLot{{"kettlebell"}, 7.5 * kilogram, {}, "", 8}));
  EXPECT_EQ(hall.kit[1], (domain::KitLot{{"box"}, {}, 0.3 * metre, "", 4}));
  EXPECT_EQ(hall.kit[2], (domain::KitLot{{"band"}, {}, {}, "light", 8}));
  EXPECT_EQ(hall.routes[0], (domain::Route{{"r200"},
                                           "Footbridge and back",
                                           200 * metre,
                                           "loop",
                                           false,
                                           false,
                                           false,
                                           24,
                                           3 * metre,
                                           15 * second,
                                           "carry",
                                           {"water edge"}}));
  EXPECT_EQ(hall.quiet_hours[0], (domain::QuietHours{{"sat", "sun"}, 540, "no drops"}));
  EXPECT_FALSE(hall.unlimited);
  EXPECT_TRUE(file->notes.empty());
}

TEST(HallFile, IsUnlimitedWithoutPlacesAndKit) {
  const auto file = read_hall(R"({"name": "Anywhere"})", "hall.json", shipped_catalogue());
  ASSERT_TRUE(file.has_value());
  EXPECT_TRUE(file->hall.unlimited);
}

TEST(HallFile, NamesEverythingThatIsWrongByPointer) {
  EXPECT_THAT(
      complaint(R"({"places": [{"equipment": "pull-up-bra", "count": -1}, {"equipment": "rower"}],
                            "kit": [{"equipment": "box", "height_cm": "tall", "count": 2.5}],
                            "routes": [{"id": "a", "lap_m": 0}, {"id": "a", "lap_m": 200, "shape": "round"}],
                            "quiet_hours": [{"until": "late"}]})"),
      AllOf(HasSubstr(
                "hall.json: /places/0/equipment: no equipment is called 'pull-up-bra', nearest: pull-up-bar"),
            HasSubstr("/places/0/count: is -1, expected 0 to 10000"),
            HasSubstr("/places/1/count: is missing"),
            HasSubstr("/kit/0/height_cm: is a text, expected a number"),
            HasSubstr("/kit/0/count: is 2.5, expected a whole number"),
            HasSubstr("/routes/0/lap_m: is 0, expected 1 to 100000"),
            HasSubstr("/routes/1/id: 'a' stands twice"),
            HasSubstr("/routes/1/shape: is 'round', expected one of out-and-back, loop, shuttle"),
            HasSubstr("/quiet_hours/0/until: is 'late'")));
  EXPECT_THAT(complaint(R"({"places": {"rower": 5}})"),
              HasSubstr("/places: is an object, expected a list of objects"));
  EXPECT_THAT(complaint(R"({"places": [{"equipment":"rower","count":5},{"equipment":"rower","count":4}]})"),
              HasSubstr("/places/1/equipment: 'rower' stands twice"));
}

TEST(HallFile, NamesTheLineOfWhatIsNotJson) {
  EXPECT_THAT(complaint("{\n  \"name\": \"x\",\n  \"places\": [}\n"),
              HasSubstr("hall.json:3: not readable as JSON"));
  EXPECT_THAT(complaint("[1]"), HasSubstr("is a list, expected an object"));
  EXPECT_THAT(complaint(""), HasSubstr("hall.json:1: not readable as JSON"));
  EXPECT_THAT(complaint(R"({"name": "a", "name": "b"})"), HasSubstr("name: stands twice in the same object"));
}

TEST(HallFile, NotesKeysThatItDoesNotKnow) {
  const auto file =
      read_hall(R"({"nmae": "x", "places": [{"equipment": "rower", "count": 1, "brand": "y"}]})", "hall.json",
                shipped_catalogue());
  ASSERT_TRUE(file.has_value());
  EXPECT_THAT(file->notes,
              testing::UnorderedElementsAre("hall.json: /nmae is left out: not a known key (nearest: name)",
                                            "hall.json: /places/0/brand is left out: not a known key"));
}

TEST(HallFile, SurvivesDeepNesting) {
  EXPECT_THAT(complaint(std::string(100000, '[')), HasSubstr("not readable as JSON"));
  EXPECT_EQ(
      complaint("{\"name\": \"x\", \"more\": " + std::string(50000, '[') + std::string(50000, ']') + "}"),
      "");
}

}  // namespace
}  // namespace repwright::store
