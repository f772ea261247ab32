#pragma once

#include <filesystem>
#include <memory>

#include "store/sqlite_accounts.hpp"
#include "store/sqlite_file.hpp"
#include "store/store.hpp"

namespace repwright::store {

/// Keeps everything in one SQLite file, durable when a call returns (docs/decisions/sqlite.md).
class SqliteStore final : public Store {
 public:
  /// Opens the file, brings older tables up to date and checks that it is whole. Fails with NotFound if it is
  /// not there and not to be made, ReadOnly, NotADatabase if it is another program's or damaged, NewerSchema,
  /// Locked, Full, Unavailable.
  static base::Result<std::unique_ptr<SqliteStore>> open(const std::filesystem::path& path,
                                                         const SqliteOptions& options = {});

  base::Result<std::uint64_t> mark() override;
  base::Result<std::optional<std::string>> own_movements() override;
  base::Result<KeptGym> gym(const domain::Catalogue& catalogue) override;
  base::Result<void> put_gym(const GymFolder& gym, const std::optional<std::string>& own_movements,
                             const domain::Stamp& by) override;
  base::Result<domain::Saved> save_people(const std::vector<domain::Person>& people,
                                          const domain::Seen& seen) override;
  base::Result<domain::Saved> save_hall(const domain::Hall& hall, const domain::Seen& seen) override;
  base::Result<domain::Saved> save_house(const domain::House& house, const domain::Seen& seen) override;
  base::Result<domain::Saved> save_own_movements(const std::string& toml, const domain::Seen& seen) override;
  base::Result<domain::Saved> save_board(const std::string& id, const std::string& text,
                                         const domain::Seen& seen) override;
  base::Result<domain::Saved> save_class(const domain::GymClass& gym_class,
                                         const domain::Seen& seen) override;
  base::Result<void> remove_class(const std::string& id, const domain::Seen& seen) override;
  base::Result<domain::KeptPaper> paper(domain::Paper which) override;
  base::Result<domain::Saved> save_paper(domain::Paper which, const std::string& text,
                                         const domain::Seen& seen) override;
  base::Result<std::vector<domain::BoardVersion>> board_versions(const std::string& id) override;
  base::Result<std::vector<domain::KeptScore>> scores() override;
  base::Result<std::vector<domain::KeptScore>> scores_of_class(const std::string& class_id) override;
  base::Result<std::vector<domain::AddedScore>> add_scores(
      const std::vector<domain::NewScore>& scores) override;
  base::Result<domain::Saved> correct_score(std::int64_t number, const domain::ScoreEntry& entry,
                                            const domain::Seen& seen) override;
  base::Result<std::vector<domain::KeptScore>> score_versions(std::int64_t number) override;
  base::Result<void> put_effort(const domain::ClassEffort& effort, const domain::Stamp& by) override;
  base::Result<std::vector<domain::ClassEffort>> efforts(const std::string& class_id) override;
  base::Result<std::int64_t> add_door_line(const domain::DoorLine& line, const domain::Stamp& by) override;
  base::Result<std::vector<domain::KeptDoorLine>> door_lines(const std::string& class_id) override;
  base::Result<std::int64_t> add_note(const domain::Note& note, const domain::Stamp& by) override;
  base::Result<std::vector<domain::KeptNote>> notes_on(std::chrono::year_month_day day) override;
  base::Result<void> remove_note(std::int64_t number, const domain::Stamp& by) override;
  base::Result<std::vector<domain::ClockAct>> clock_acts(const std::string& class_id) override;
  base::Result<std::int64_t> add_clock_act(const std::string& class_id, const domain::ClockAct& act,
                                           std::int64_t seen) override;
  base::Result<domain::Forgotten> forget(const domain::PersonId& person, const domain::Catalogue& catalogue,
                                         const domain::Stamp& by) override;
  base::Result<std::vector<domain::TrailLine>> trail(const domain::TrailPage& page) override;
  Accounts* accounts() override { return &accounts_; }

  /// A copy of this moment as a file of its own, while others go on working. Fails with Conflict if the file
  /// is there already.
  base::Result<void> back_up(const std::filesystem::path& to);

 private:
  SqliteStore(Sqlite writing, Sqlite reading)
      : file_(std::move(writing), std::move(reading)), accounts_(file_) {}

  base::Result<domain::Saved> save_part(const std::string& kind, const std::string& text,
                                        const domain::Seen& seen);

  SqliteFile file_;
  SqliteAccounts accounts_;
};

/// Puts the backup in place of what is in `to`, which is made if it is not there. Fails as
/// `SqliteStore::open`; then `to` is as it was.
base::Result<void> restore(const std::filesystem::path& backup, const std::filesystem::path& to);

}  // namespace repwright::store
