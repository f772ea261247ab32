#pragma once

#include <map>
#include <mutex>
#include <utility>

#include "store/memory_accounts.hpp"
#include "store/store.hpp"

namespace repwright::store {

/// A store that ends with the program: the twin that tests work with.
class MemoryStore final : public Store {
 public:
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
  base::Result<std::vector<domain::BoardVersion>> board_versions(const std::string& id) override;
  base::Result<std::vector<domain::KeptScore>> scores() override;
  base::Result<std::int64_t> add_score(const domain::ScoreEntry& entry, const domain::Stamp& by) override;
  base::Result<domain::Saved> correct_score(std::int64_t number, const domain::ScoreEntry& entry,
                                            const domain::Seen& seen) override;
  base::Result<std::vector<domain::KeptScore>> score_versions(std::int64_t number) override;
  base::Result<void> put_effort(const domain::ClassEffort& effort, const domain::Stamp& by) override;
  base::Result<std::vector<domain::ClassEffort>> efforts(const std::string& class_id) override;
  base::Result<void> add_note(const domain::Note& note, const domain::Stamp& by) override;
  base::Result<std::vector<domain::Note>> notes_on(std::chrono::year_month_day day) override;
  base::Result<std::vector<domain::TrailLine>> trail(int most) override;
  Accounts* accounts() override { return &accounts_; }

  /// From now on every change of the gym is refused with Full, as on a full disk.
  void fill_up();

 private:
  /// Keeps `value` in `place`, and in `saved` and the trail who did it.
  template <class T>
  base::Result<domain::Saved> save(T& place, const T& value, domain::Saved& saved, const std::string& what,
                                   const domain::Seen& seen);
  base::Result<void> room() const;
  std::int64_t add_line(const domain::ScoreEntry& entry, const domain::Stamp& by);
  std::vector<domain::KeptScore>* line(std::int64_t number);

  std::mutex busy_;
  bool full_ = false;
  bool there_ = false;
  KeptGym kept_;
  std::string own_movements_;
  std::map<std::string, std::vector<domain::BoardVersion>> boards_;
  std::vector<std::vector<domain::KeptScore>> scores_;  // by number from 1, the newest version last
  std::map<std::pair<std::string, domain::PersonId>, double> efforts_;
  std::vector<domain::Note> notes_;
  std::vector<domain::TrailLine> trail_;
  MemoryAccounts accounts_;
};

}  // namespace repwright::store
