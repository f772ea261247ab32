#include <gtest/gtest.h>

#include "base/text.hpp"
#include "store/class_json.hpp"
#include "store/hall_json.hpp"
#include "store/house_json.hpp"
#include "store/people_csv.hpp"
#include "store/read_file.hpp"
#include "store/scores_csv.hpp"
#include "support/shipped_catalogue.hpp"
#include "support/source_dir.hpp"

/// What docs/guide/gym-folder.md shows is what the program reads, without a note.
namespace repwright::store {
namespace {

using test::shipped_catalogue;

std::string guide() {
  auto page = read_file(test::source_dir() / "docs/guide/gym-folder.md");
  return page ? *page : std::string();
}

/// The fenced JSON after the heading.
std::string json_below(const std::string& heading) {
  const std::string page = guide();
  const std::string fence = "```json\n";
  const std::size_t begin = page.find(fence, page.find("## " + heading)) + fence.size();
  return page.substr(begin, page.find("```", begin) - begin);
}

/// The indented lines after the heading.
std::string table_below(const std::string& heading) {
  const std::string page = guide();
  std::string out;
  for (const std::string_view line :
       base::split(std::string_view(page).substr(page.find("## " + heading)), '\n')) {
    if (line.starts_with("    ")) out += std::string(base::trim(line)) + "\n";
    if (!line.starts_with("    ") && !out.empty()) break;
  }
  return out;
}

TEST(GuideToTheGymFolder, ShowsPeopleThatAreRead) {
  const auto file = read_people(table_below("people.csv"), "people.csv", shipped_catalogue());
  ASSERT_TRUE(file.has_value()) << file.error().message;
  EXPECT_EQ(file->people.size(), 2U);
  EXPECT_EQ(file->people[1].marks.size(), 4U);
  EXPECT_EQ(file->notes, std::vector<std::string>());
}

TEST(GuideToTheGymFolder, ShowsAHallThatIsRead) {
  const auto file = read_hall(json_below("hall.json"), "hall.json", shipped_catalogue());
  ASSERT_TRUE(file.has_value()) << file.error().message;
  EXPECT_EQ(file->hall.places.size(), 2U);
  EXPECT_EQ(file->notes, std::vector<std::string>());
}

TEST(GuideToTheGymFolder, ShowsTheDefaultHouse) {
  const auto file = read_house(json_below("house.json"), "house.json", shipped_catalogue());
  ASSERT_TRUE(file.has_value()) << file.error().message;
  EXPECT_EQ(file->house, domain::House());
  EXPECT_EQ(write_house(file->house), json_below("house.json"));
}

TEST(GuideToTheGymFolder, ShowsAClassThatIsRead) {
  const auto file = read_class(json_below("boards"), "class.json", "class", shipped_catalogue());
  ASSERT_TRUE(file.has_value()) << file.error().message;
  EXPECT_EQ(file->gym_class.arrivals.size(), 2U);
  EXPECT_EQ(file->notes, std::vector<std::string>());
}

TEST(GuideToTheGymFolder, ShowsScoresThatAreRead) {
  const auto file = read_scores(table_below("scores.csv"), "scores.csv");
  ASSERT_TRUE(file.has_value()) << file.error().message;
  EXPECT_EQ(file->entries.size(), 1U);
  EXPECT_EQ(file->notes, std::vector<std::string>());
}

}  // namespace
}  // namespace repwright::store
