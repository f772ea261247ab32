#include <gmock/gmock.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>

#include "store/sqlite_schema.hpp"
#include "stores.hpp"
#include "support/files.hpp"
#include "support/shipped_catalogue.hpp"

/// What can go wrong with a database file: said plainly, and nothing lost.
namespace repwright {
namespace {

namespace fs = std::filesystem;
using base::ErrorCode;
using store::SqliteStore;
using testing::HasSubstr;

const domain::Stamp kim{"Kim", std::chrono::sys_days{std::chrono::year{2027} / 5 / 14}};

class DatabaseFile : public testing::Test {
 protected:
  fs::path file() const { return scratch_.path() / "gym.db"; }
  void fill() {
    const auto put = test::open_database(file())->put_gym({}, std::nullopt, kim);
    ASSERT_TRUE(put) << put.error().message;
  }
  void write(const std::string& bytes) const { std::ofstream(file(), std::ios::binary) << bytes; }
  base::Error refusal(const store::SqliteOptions& options = {}) const {
    const auto opened = SqliteStore::open(file(), options);
    return opened ? base::Error{ErrorCode::Stopped, "it was opened"} : opened.error();
  }
  base::Result<store::KeptGym> gym() const {
    return test::open_database(file())->gym(test::shipped_catalogue());
  }

  test::Scratch scratch_;
};

TEST_F(DatabaseFile, IsNotMadeByWhoOnlyWantsToOpenIt) {
  EXPECT_EQ(refusal().code, ErrorCode::NotFound);
  EXPECT_FALSE(fs::exists(file()));
}

TEST_F(DatabaseFile, LeavesFilesOfAnotherKindAsTheyAre) {
  const std::string bytes = "name,sex\n" + std::string(5000, 'x');
  write(bytes);
  EXPECT_EQ(refusal().code, ErrorCode::NotADatabase);
  EXPECT_THAT(refusal().message, HasSubstr("is not a database of this program"));
  EXPECT_EQ(test::text_of_file(file()), bytes);
}

TEST_F(DatabaseFile, LeavesTheDatabaseOfAnotherProgramAsItIs) {
  store::Sqlite(file(), {.access = store::SqliteAccess::WriteOrMake, .most_pages = std::nullopt})
      .run("CREATE TABLE other (x)");
  const std::string bytes = test::text_of_file(file());
  EXPECT_EQ(refusal().code, ErrorCode::NotADatabase);
  EXPECT_EQ(test::text_of_file(file()), bytes);
}

TEST_F(DatabaseFile, RefusesTheTablesOfANewerProgram) {
  fill();
  store::Sqlite(file(), {}).run("PRAGMA user_version = 99");
  EXPECT_EQ(refusal().code, ErrorCode::NewerSchema);
}

TEST_F(DatabaseFile, SaysThatAFileIsDamaged) {
  fill();
  std::string bytes = test::text_of_file(file());
  ASSERT_GT(bytes.size(), 3 * 4096u);
  write(bytes.substr(0, bytes.size() / 2));
  EXPECT_EQ(refusal().code, ErrorCode::NotADatabase);
  std::fill(bytes.begin() + 4096, bytes.end(), '\x55');
  write(bytes);
  EXPECT_EQ(refusal().code, ErrorCode::NotADatabase);
  EXPECT_THAT(refusal().message, HasSubstr("is damaged"));
}

TEST_F(DatabaseFile, BringsTheTablesOfAnOlderProgramUpToDate) {
  store::Sqlite(file(), {.access = store::SqliteAccess::WriteOrMake, .most_pages = std::nullopt})
      .run(test::test_data("schema-1.sql"));
  const auto opened = test::open_database(file());
  const auto kept = opened->gym(test::shipped_catalogue());
  ASSERT_TRUE(kept) << kept.error().message;
  EXPECT_EQ(kept->gym.boards.at("thursday"), "3 RFT\n9 pull-ups\n");
  EXPECT_EQ(kept->gym.people.at(0).name, "Ravindra Coelho-Munk");
  ASSERT_EQ(kept->gym.scores.size(), 1u);
  EXPECT_EQ(kept->gym.scores[0].text, "22:10");
  EXPECT_TRUE(opened->put_effort({"thu-6", {"a04"}, 7}, kim));
  EXPECT_EQ(opened->trail({.most = 5})->size(), 1u);
  EXPECT_EQ(store::Sqlite(file(), {}).number("PRAGMA user_version"), store::newest_schema());
}

TEST_F(DatabaseFile, SaysThatAnotherProgramWrites) {
  fill();
  const auto opened =
      SqliteStore::open(file(), {.patience = std::chrono::milliseconds(1), .most_pages = std::nullopt});
  ASSERT_TRUE(opened);
  store::Sqlite other(file(), {});
  other.run("BEGIN IMMEDIATE");
  const auto saved = (*opened)->save_board("thursday", "text", {0, kim});
  ASSERT_FALSE(saved);
  EXPECT_EQ(saved.error().code, ErrorCode::Locked);
  EXPECT_THAT(saved.error().message, HasSubstr("the database is locked by another program"));
  other.roll_back();
  EXPECT_TRUE((*opened)->save_board("thursday", "text", {0, kim}));
}

TEST_F(DatabaseFile, LosesNothingWhenTheDiskIsFull) {
  fill();
  const auto pages = static_cast<int>(store::Sqlite(file(), {}).number("PRAGMA page_count"));
  const auto opened = SqliteStore::open(file(), {.most_pages = pages + 20});
  ASSERT_TRUE(opened);
  domain::Version version = 0;
  std::string last;
  base::ErrorCode refused = ErrorCode::Stopped;
  for (int i = 0; i < 100 && refused == ErrorCode::Stopped; ++i) {
    const std::string text = std::to_string(i) + std::string(5000, 'x');
    const auto saved = (*opened)->save_board("thursday", text, {version, kim});
    if (!saved) {
      refused = saved.error().code;
    } else {
      version = saved->version;
      last = text;
    }
  }
  EXPECT_EQ(refused, ErrorCode::Full);
  EXPECT_GT(version, 0u);
  EXPECT_EQ((*opened)->board_versions("thursday")->back().text, last);
  EXPECT_EQ((*opened)->board_versions("thursday")->size(), version);
  EXPECT_EQ(gym()->gym.boards.at("thursday"), last);
}

TEST_F(DatabaseFile, SaysThatItMayNotBeWritten) {
  fill();
  ASSERT_EQ(chmod(file().c_str(), 0444), 0);
  ASSERT_EQ(chmod(scratch_.path().c_str(), 0755), 0);
  // The rights of a file do not bind root: somebody else has to try.
  const pid_t child = fork();
  ASSERT_GE(child, 0);
  if (child == 0) {
    constexpr uid_t nobody = 65534;
    if (geteuid() == 0 && setuid(nobody) != 0) _exit(100);
    _exit(static_cast<int>(refusal().code));
  }
  int status = 0;
  ASSERT_EQ(waitpid(child, &status, 0), child);
  ASSERT_TRUE(WIFEXITED(status));
  EXPECT_EQ(WEXITSTATUS(status), static_cast<int>(ErrorCode::ReadOnly));
}

TEST_F(DatabaseFile, IsBackedUpWhileSomebodyWorksInIt) {
  fill();
  const auto opened = test::open_database(file());
  ASSERT_TRUE(opened->save_board("thursday", "one", {0, kim}));
  const fs::path backup = scratch_.path() / "backup.db";
  const auto done = opened->back_up(backup);
  ASSERT_TRUE(done) << done.error().message;
  ASSERT_TRUE(opened->save_board("thursday", "two", {1, kim}));
  EXPECT_EQ(opened->back_up(backup).error().code, ErrorCode::Conflict);
  const auto restored = store::restore(backup, scratch_.path() / "new.db");
  ASSERT_TRUE(restored) << restored.error().message;
  EXPECT_EQ(test::open_database(scratch_.path() / "new.db")->board_versions("thursday")->back().text, "one");
}

TEST_F(DatabaseFile, IsAsItWasWhenABackupIsNoGood) {
  fill();
  const fs::path bad = scratch_.path() / "bad.db";
  std::ofstream(bad) << "not a database at all, but longer than a header of one hundred bytes would be, "
                        "so that nobody takes it for an empty file";
  const auto restored = store::restore(bad, file());
  ASSERT_FALSE(restored);
  EXPECT_EQ(restored.error().code, ErrorCode::NotADatabase);
  EXPECT_TRUE(gym());
}

}  // namespace
}  // namespace repwright
