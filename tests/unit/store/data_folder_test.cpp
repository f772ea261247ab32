#include "store/data_folder.hpp"
#include "support/source_dir.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace repwright::store {
namespace {

namespace fs = std::filesystem;

TEST(DataFolder, IsLookedForBesideTheProgramAndInItsPrefix) {
  EXPECT_EQ(data_places(std::nullopt, "/opt/rep/build/release/repwright"),
            (std::vector<fs::path>{"/opt/rep/data", "/opt/rep/build/release/data",
                                   "/opt/rep/build/share/repwright"}));
  EXPECT_EQ(data_places(std::nullopt, "/usr/bin/repwright").back(), "/usr/share/repwright");
}

TEST(DataFolder, IsWhereTheEnvironmentSaysAndNowhereElse) {
  EXPECT_EQ(data_places("/srv/data", "/usr/bin/repwright"), std::vector<fs::path>{"/srv/data"});
}

TEST(DataFolder, IsTheFirstPlaceThatHoldsACatalogue) {
  const fs::path source = test::source_dir() / "data";
  const auto found = first_data_folder({"/nowhere", source, "/elsewhere"});
  ASSERT_TRUE(found.has_value()) << found.error().message;
  EXPECT_EQ(*found, source);
}

TEST(DataFolder, NamesEveryPlaceThatWasLookedIn) {
  const auto found = first_data_folder({"/nowhere", "/elsewhere"});
  ASSERT_FALSE(found.has_value());
  EXPECT_EQ(found.error().code, base::ErrorCode::NotFound);
  EXPECT_THAT(found.error().message,
              testing::AllOf(testing::HasSubstr("/nowhere"), testing::HasSubstr("/elsewhere"),
                             testing::HasSubstr("REPWRIGHT_DATA")));
}

}  // namespace
}  // namespace repwright::store
