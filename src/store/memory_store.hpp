#pragma once

#include <map>
#include <mutex>
#include <utility>

#include "store/door_list.hpp"
#include "store/forget.hpp"
#include "store/memory_accounts.hpp"
#include "store/store.hpp"

namespace repwright::store {

/// A store that ends with the program: the twin that tests work with.
class MemoryStore final : public Store {
 public:
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

  /// From now on every change of the gym is refused with Full, as on a full disk.
  void fill_up();

 private:
  /// Keeps `value` in `place`, and in `saved` and the trail who did it.
  template <class T>
  base::Result<domain::Saved> save(T& place, const T& value, domain::Saved& saved, const std::string& what,
                                   const domain::Seen& seen);
  base::Result<void> room() const;
  void tell(const domain::Stamp& by, const std::string& what);
  void note_down(const domain::Stamp& by, const std::string& what);
  domain::Forgotten forget_in_lines(const Leaver& leaver);
  std::int64_t add_line(const domain::ScoreEntry& entry, const domain::Stamp& by);
  std::optional<std::int64_t> line_of_key(const std::string& key) const;
  std::vector<domain::KeptScore>* line(std::int64_t number);

  std::mutex busy_;
  bool full_ = false;
  bool there_ = false;
  KeptGym kept_;
  std::string own_movements_;
  std::map<std::string, std::vector<domain::BoardVersion>> boards_;
  std::vector<std::vector<domain::KeptScore>> scores_;  // by number from 1, the newest version last
  std::map<std::pair<std::string, domain::PersonId>, domain::ClassEffort> efforts_;
  DoorList door_;
  std::map<domain::Paper, domain::KeptPaper> papers_;
  std::vector<domain::KeptNote> notes_;
  std::map<std::string, std::vector<domain::ClockAct>> clocks_;  // by class
  std::int64_t last_note_ = 0;
  std::mutex telling_;  // of the trail, which the accounts leave lines in, too
  std::vector<domain::TrailLine> trail_;
  std::uint64_t changes_ = 0;  // of the gym, not of accounts
  MemoryAccounts accounts_{[this](const domain::Stamp& by, const std::string& what) { note_down(by, what); }};
};

}  // namespace repwright::store
