#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <random>

#include "stores.hpp"
#include "support/shipped_catalogue.hpp"

/// A process that writes is killed at any moment: every write that it acknowledged is there, and the next
/// process goes on with what there is.
namespace repwright {
namespace {

using test::StoreKind;

const domain::Stamp kim{"Kim", std::chrono::sys_days{std::chrono::year{2027} / 5 / 14}};

store::KeptGym kept(store::Store& store) {
  auto gym = store.gym(test::shipped_catalogue());
  if (!gym) throw std::runtime_error(gym.error().message);
  return std::move(*gym);
}

/// What the writing process keeps as its write of that number.
struct NumberedWrite {
  std::string board;
  std::string text;
};
NumberedWrite numbered_write(int count) {
  return {"board-" + std::to_string(count % 7),
          std::to_string(count) + " rounds\n" + std::string(static_cast<std::size_t>(count % 50) * 97, 'x')};
}

/// Writes board after board from number `first` on and says each number on the pipe once it is kept; never
/// returns.
[[noreturn]] void write_for_ever(StoreKind kind, const std::filesystem::path& folder, int first, int pipe) {
  const auto store = test::make_store(kind, folder);
  domain::GymVersions versions = kept(*store).versions;
  for (int count = first;; ++count) {
    const auto [board, text] = numbered_write(count);
    domain::Saved& saved = versions.boards[board];
    const auto done = store->save_board(board, text, {saved.version, kim});
    if (!done) _exit(1);
    saved = *done;
    if (write(pipe, &count, sizeof count) != sizeof count) _exit(2);
  }
}

/// The last write that a process acknowledged before it was killed; it is given about so many writes.
int last_before_the_kill(StoreKind kind, const std::filesystem::path& folder, int first,
                         std::mt19937& random) {
  int ends[2] = {};
  if (pipe(ends) != 0) throw std::runtime_error("no pipe");
  const pid_t child = fork();
  if (child == 0) {
    close(ends[0]);
    write_for_ever(kind, folder, first, ends[1]);
  }
  close(ends[1]);
  int last = first - 1;
  const auto wanted = static_cast<unsigned>(random() % 12);
  for (unsigned i = 0; i <= wanted; ++i)
    if (read(ends[0], &last, sizeof last) != sizeof last) throw std::runtime_error("the writer stopped");
  usleep(static_cast<unsigned>(random() % 3000));
  kill(child, SIGKILL);
  int status = 0;
  waitpid(child, &status, 0);
  if (!WIFSIGNALED(status)) throw std::runtime_error("the writer ended by itself");
  while (read(ends[0], &last, sizeof last) == sizeof last) {
  }
  close(ends[0]);
  return last;
}

/// The number of the last write that is there; fails unless all before it are there, too.
int last_that_is_there(StoreKind kind, const std::filesystem::path& folder, int acknowledged) {
  const auto boards = kept(*test::make_store(kind, folder)).gym.boards;
  const auto is_there = [&](int count) {
    const auto [board, text] = numbered_write(count);
    return boards.contains(board) && boards.at(board) == text;
  };
  int last = acknowledged;
  // One more may have been kept and not yet acknowledged.
  if (is_there(acknowledged + 1)) ++last;
  for (int count = std::max(1, last - 6); count <= last; ++count)
    EXPECT_TRUE(is_there(count)) << "write " << count << " of " << acknowledged << " acknowledged is lost";
  return last;
}

void survive_kills(StoreKind kind, int kills) {
  const test::Scratch scratch;
  ASSERT_TRUE(test::make_store(kind, scratch.path())->put_gym({}, std::nullopt, kim));
  std::mt19937 random(2027);
  int last = 0;
  for (int i = 0; i < kills && !testing::Test::HasFailure(); ++i) {
    const int acknowledged = last_before_the_kill(kind, scratch.path(), last + 1, random);
    ASSERT_GT(acknowledged, last);
    last = last_that_is_there(kind, scratch.path(), acknowledged);
  }
  EXPECT_GE(last, kills);
}

// Opening a database checks that it is whole (`quick_check`), so each round checks that, too.
TEST(Killed, ADatabaseKeepsEveryAcknowledgedWrite) {
  survive_kills(StoreKind::Database, 50);
}

TEST(Killed, AGymFolderKeepsEveryAcknowledgedWrite) {
  survive_kills(StoreKind::Folder, 50);
}

}  // namespace
}  // namespace repwright
