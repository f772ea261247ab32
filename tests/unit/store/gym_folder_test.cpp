#include "store/gym_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "store/read_file.hpp"
#include "support/shipped_catalogue.hpp"

namespace repwright::store {
namespace {

namespace fs = std::filesystem;
using ::repwright::test::shipped_catalogue;
using testing::AllOf;
using testing::HasSubstr;

/// An empty folder for each test.
class GymFolderTest : public testing::Test {
 protected:
  void SetUp() override {
    const auto* test = testing::UnitTest::GetInstance()->current_test_info();
    folder = fs::path(testing::TempDir()) / (std::string("gym-folder-") + test->name());
    fs::remove_all(folder);
    fs::create_directories(folder);
  }
  void TearDown() override { fs::remove_all(folder); }

  void put(const std::string& name, const std::string& bytes) const {
    ASSERT_TRUE(write_file(folder / name, bytes).has_value());
  }
  std::string complaint() const {
    const auto gym = read_gym(folder, shipped_catalogue());
    return gym ? std::string() : gym.error().message;
  }
  fs::path folder;
};

GymFolder small_gym() {
  using namespace std::chrono_literals;
  GymFolder gym;
  domain::Person ada;
  ada.id = {"a1"};
  ada.name = "Ada Brandvoll";
  ada.marks = {domain::BestSet{{"push-up"}, 12, false}};
  ada.limits = {{{"knee"}, "no deep bends", {}}};
  gym.people = {ada};
  gym.hall.name = "The Lock Shed";
  gym.hall.places = {{{"pull-up-bar"}, 8}};
  gym.hall.unlimited = false;
  gym.house.pull_up_may_swing = true;
  gym.boards = {{"sat", "AMRAP 11\n8 pull-ups\n"}};
  domain::GymClass sat;
  sat.id = "sat-24";
  sat.board_id = "sat";
  sat.booked = {{"a1"}};
  sat.faults = {{{"pull-up-bar"}, 1, "loose bolt"}};
  gym.classes = {{"sat-24", sat}};
  gym.scores = {{2027y / 5 / 1,
                 "sat-24",
                 "sat",
                 "",
                 {"a1"},
                 "4+3",
                 domain::RoundsScore{4, 3},
                 "",
                 {},
                 domain::DayFlag::None,
                 "head-coach",
                 ""}};
  return gym;
}

TEST_F(GymFolderTest, ReadsWhatItWrote) {
  const GymFolder gym = small_gym();
  ASSERT_TRUE(write_gym(folder, gym).has_value());
  const auto read = read_gym(folder, shipped_catalogue());
  ASSERT_TRUE(read.has_value()) << read.error().message;
  EXPECT_EQ(read->people, gym.people);
  EXPECT_EQ(read->hall, gym.hall);
  EXPECT_EQ(read->house, gym.house);
  EXPECT_EQ(read->boards, gym.boards);
  EXPECT_EQ(read->classes, gym.classes);
  EXPECT_EQ(read->scores, gym.scores);
  EXPECT_TRUE(read->notes.empty());
}

TEST_F(GymFolderTest, NeedsPeopleAndNothingElse) {
  EXPECT_THAT(complaint(), HasSubstr("people.csv: there is no such file"));
  put("people.csv", "name\nAda\n");
  const auto read = read_gym(folder, shipped_catalogue());
  ASSERT_TRUE(read.has_value()) << read.error().message;
  EXPECT_TRUE(read->hall.unlimited);
  EXPECT_TRUE(read->boards.empty());
}

TEST_F(GymFolderTest, NamesWhatIsWrongInAnyFileAtOnce) {
  put("people.csv", "name,age\nAda,old\n");
  put("hall.json", "{\"places\": 3}");
  put("house.json", "{");
  put("classes/sat.json", "{\"date\": \"soon\"}");
  put("scores.csv", "date,person,score\nsoon,Ada,3\n");
  EXPECT_THAT(complaint(),
              AllOf(HasSubstr("people.csv:2"), HasSubstr("hall.json: /places"), HasSubstr("house.json:1"),
                    HasSubstr("sat.json: /date"), HasSubstr("scores.csv:2")));
}

TEST_F(GymFolderTest, NamesWhatAClassAsksForThatIsNotThere) {
  GymFolder gym = small_gym();
  domain::GymClass& sat = gym.classes.at("sat-24");
  sat.booked.push_back({"a99"});
  sat.board_id = "sun";
  sat.faults[0].out = 9;
  sat.weather.closed_routes = {{"r1"}};
  ASSERT_TRUE(write_gym(folder, gym).has_value());
  EXPECT_THAT(complaint(), AllOf(HasSubstr("class 'sat-24': no person is called 'a99'"),
                                 HasSubstr("no board is called 'sun'"), HasSubstr("no route is called 'r1'"),
                                 HasSubstr("9 places of 'pull-up-bar' are out, but the hall has 8")));
}

TEST_F(GymFolderTest, NotesScoresOfPeopleWhoLeft) {
  put("people.csv", "name\nAda\n");
  put("scores.csv", "date,person,score\n2027-05-01,Ivo,3+1\n2027-05-02,Ivo,3+2\n");
  const auto read = read_gym(folder, shipped_catalogue());
  ASSERT_TRUE(read.has_value());
  EXPECT_EQ(read->notes,
            std::vector<std::string>{"scores.csv has scores of 'Ivo', who is not among the people"});
}

TEST_F(GymFolderTest, NeverWritesOutsideItself) {
  for (const char* id : {"../outside", "a/b", "", ".hidden", "a b", "\xC3\xA4"}) {
    GymFolder gym;
    gym.boards = {{id, "x"}};
    const auto written = write_gym(folder, gym);
    ASSERT_FALSE(written.has_value()) << id;
    EXPECT_THAT(written.error().message, HasSubstr("cannot be a file name"));
  }
  EXPECT_TRUE(fs::is_empty(folder));
}

TEST_F(GymFolderTest, FindsTheGymsOwnMovements) {
  EXPECT_FALSE(gyms_own_movements(folder).has_value());
  put("movements.toml", "");
  EXPECT_EQ(gyms_own_movements(folder), folder / "movements.toml");
}

TEST(ReadGym, SaysThatTheFolderIsNotThere) {
  const auto gym = read_gym("/nowhere/at/all", shipped_catalogue());
  ASSERT_FALSE(gym.has_value());
  EXPECT_EQ(gym.error().code, base::ErrorCode::NotFound);
}

}  // namespace
}  // namespace repwright::store
