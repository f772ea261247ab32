#include "store/body_file.hpp"

#include <gmock/gmock.h>

#include "store/catalogue_file.hpp"
#include "support/source_dir.hpp"

namespace repwright::store {
namespace {

using testing::HasSubstr;

const std::filesystem::path data = test::source_dir() / "data";

domain::Catalogue shipped() {
  return load_catalogue(data / "catalogue", std::nullopt).value();
}

TEST(BodyConstants, KnowWhatEveryMovementCosts) {
  const domain::Catalogue catalogue = shipped();
  const auto constants = load_body_constants(data / "body.toml", catalogue);
  ASSERT_TRUE(constants) << constants.error().message;
  for (const domain::Movement& movement : catalogue.movements)
    EXPECT_EQ(constants->movements.count(movement.id), 1U) << movement.id.text;
}

TEST(BodyConstants, TakeOverWhatTheModelTableSays) {
  const auto constants = read_body_constants(R"(version = 1
movement = []
[model]
fade = 0.5
fast_time = { grip = 50 }
)",
                                             "body.toml", {});
  ASSERT_TRUE(constants) << constants.error().message;
  EXPECT_EQ(constants->fade, 0.5);
  EXPECT_EQ(constants->fast_time, (std::array<double, 5>{60, 60, 30, 40, 50}));
}

TEST(BodyConstants, NameEveryBrokenRow) {
  const auto constants = read_body_constants(R"(version = 1
[[movement]]
id = "push-up"
group = "arms"
cost = 1
mode = 7
source = "x"
[[movement]]
id = "no-such"
group = "legs"
weight = { toes = 1 }
cost = 1
mode = 0.9
strength = "curl"
ratio = 1
share = 1
)",
                                             "body.toml", shipped());
  ASSERT_FALSE(constants);
  const std::string& said = constants.error().message;
  for (const char* part : {"'push-up'", "group: is 'arms'", "mode: is 7", "'no-such'",
                           "no movement of the catalogue", "toes", "'curl'", "source", "beside a share"})
    EXPECT_THAT(said, HasSubstr(part));
}

TEST(BodyConstants, SayWhereTheTextIsNoToml) {
  const auto constants = read_body_constants("version = 1\n[[movement", "body.toml", {});
  ASSERT_FALSE(constants);
  EXPECT_THAT(constants.error().message, HasSubstr("body.toml:2"));
}

TEST(BodyConstants, SayThatTheFileIsMissing) {
  const auto constants = load_body_constants(data / "nothing.toml", {});
  ASSERT_FALSE(constants);
  EXPECT_EQ(constants.error().code, base::ErrorCode::NotFound);
}

}  // namespace
}  // namespace repwright::store
