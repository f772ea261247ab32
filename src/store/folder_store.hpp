#pragma once

#include <filesystem>
#include <map>
#include <mutex>
#include <utility>

#include "store/door_list.hpp"
#include "store/forget.hpp"
#include "store/store.hpp"

namespace repwright::store {

/// Keeps a gym in a folder (docs/guide/gym-folder.md), a file for each part; a reader never sees half a file.
/// The version of a part is a hash of its file, so that a change made by hand meanwhile is never written
/// over. What was done to clocks
/// lies in `clocks/CLASS.csv`. Earlier texts, corrections, effort of the hour, notes, the trail and accounts
/// are NotKept.
class FolderStore final : public Store {
 public:
  explicit FolderStore(std::filesystem::path folder) : folder_(std::move(folder)) {}

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
  Accounts* accounts() override { return nullptr; }

 private:
  /// What lies there now: version and when it was written; version 0 if there is no file.
  base::Result<domain::Saved> saved_in(const std::filesystem::path& file) const;
  base::Result<domain::Saved> save(const std::filesystem::path& file, const std::string& bytes,
                                   const domain::Seen& seen);
  void find_class_files(const domain::Catalogue& catalogue);
  std::filesystem::path class_file(const std::string& id) const;
  base::Result<domain::GymVersions> versions(const GymFolder& gym) const;
  base::Result<std::vector<domain::ScoreEntry>> score_sheet() const;
  base::Result<std::vector<domain::ClockAct>> acts_of(const std::string& class_id) const;
  base::Result<void> forget_in_clock(const std::string& class_id, const Leaver& leaver);

  std::filesystem::path folder_;
  std::mutex busy_;
  DoorList door_;
  std::map<std::string, std::filesystem::path> class_files_;  // of classes that are not called as their file
};

}  // namespace repwright::store
