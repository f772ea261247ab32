#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "domain/catalogue.hpp"
#include "domain/clock_act.hpp"
#include "domain/door.hpp"
#include "domain/kept.hpp"
#include "domain/new_score.hpp"
#include "domain/paper.hpp"
#include "store/accounts.hpp"
#include "store/gym_folder.hpp"

namespace repwright::store {

/// A gym with the versions that a change of its parts must name.
struct KeptGym {
  GymFolder gym;
  domain::GymVersions versions;
};

/// The port to where a gym is kept. Every call may come from any thread. A call that succeeded is kept even
/// if the program is killed right after; one that failed has changed nothing. A change names the version that
/// was looked at, 0 for what is new; if another one lies there by now it fails with Conflict. Every call may
/// also fail with NotKept (this kind of store has no place for that), Locked (another program writes), Full,
/// ReadOnly or Unavailable; the message says it in words.
class Store {
 public:
  virtual ~Store() = default;

  /// Differs from what it was when another program, or another object of this kind, may have changed what is
  /// kept; quick. Own changes may change it, too.
  virtual base::Result<std::uint64_t> mark() = 0;

  /// The gym's own rows of the catalogue, as text; to be put into the catalogue before `gym` is read.
  virtual base::Result<std::optional<std::string>> own_movements() = 0;
  /// Fails also with NotFound if no gym was put there yet, Invalid if what is kept does not fit together.
  virtual base::Result<KeptGym> gym(const domain::Catalogue& catalogue) = 0;
  /// The first gym of an empty store. Fails with Conflict if there is one, Invalid if an id cannot be a file
  /// name.
  virtual base::Result<void> put_gym(const GymFolder& gym, const std::optional<std::string>& own_movements,
                                     const domain::Stamp& by) = 0;

  virtual base::Result<domain::Saved> save_people(const std::vector<domain::Person>& people,
                                                  const domain::Seen& seen) = 0;
  virtual base::Result<domain::Saved> save_hall(const domain::Hall& hall, const domain::Seen& seen) = 0;
  virtual base::Result<domain::Saved> save_house(const domain::House& house, const domain::Seen& seen) = 0;
  virtual base::Result<domain::Saved> save_own_movements(const std::string& toml,
                                                         const domain::Seen& seen) = 0;
  virtual base::Result<domain::Saved> save_board(const std::string& id, const std::string& text,
                                                 const domain::Seen& seen) = 0;
  virtual base::Result<domain::Saved> save_class(const domain::GymClass& gym_class,
                                                 const domain::Seen& seen) = 0;
  /// Takes a class away for good, with what was done to its clock and seen at its door. Fails with NotFound,
  /// and with Conflict also where scores or efforts of it are kept: what was said of a class keeps it.
  virtual base::Result<void> remove_class(const std::string& id, const domain::Seen& seen) = 0;
  virtual base::Result<domain::KeptPaper> paper(domain::Paper which) = 0;
  virtual base::Result<domain::Saved> save_paper(domain::Paper which, const std::string& text,
                                                 const domain::Seen& seen) = 0;
  /// Every text that was saved of a board, oldest first. Fails with NotFound.
  virtual base::Result<std::vector<domain::BoardVersion>> board_versions(const std::string& id) = 0;

  /// The score sheet as it says now, in the order of entry.
  virtual base::Result<std::vector<domain::KeptScore>> scores() = 0;
  /// Those of one class.
  virtual base::Result<std::vector<domain::KeptScore>> scores_of_class(const std::string& class_id) = 0;
  /// Adds the lines in their order, all or none of them, for the price of one; where a line has the same key
  /// already it is that line, and nothing is added.
  virtual base::Result<std::vector<domain::AddedScore>> add_scores(
      const std::vector<domain::NewScore>& scores) = 0;
  /// The same for one line: its number.
  base::Result<std::int64_t> add_score(const domain::ScoreEntry& entry, const domain::Stamp& by);
  /// Fails with NotFound if there is no such line. What it said before stays in `score_versions`.
  virtual base::Result<domain::Saved> correct_score(std::int64_t number, const domain::ScoreEntry& entry,
                                                    const domain::Seen& seen) = 0;
  /// All that a line ever said, oldest first. Fails with NotFound.
  virtual base::Result<std::vector<domain::KeptScore>> score_versions(std::int64_t number) = 0;

  /// Replaces what the same person said of the same class, unless it was said with that key. Fails with
  /// NotFound if there is no such class.
  virtual base::Result<void> put_effort(const domain::ClassEffort& effort, const domain::Stamp& by) = 0;
  virtual base::Result<std::vector<domain::ClassEffort>> efforts(const std::string& class_id) = 0;

  /// The number of the new line, as `add_score`. A gym folder keeps these only while the program runs.
  virtual base::Result<std::int64_t> add_door_line(const domain::DoorLine& line, const domain::Stamp& by) = 0;
  /// Of one class, in the order in which they came.
  virtual base::Result<std::vector<domain::KeptDoorLine>> door_lines(const std::string& class_id) = 0;

  /// Takes out for good what wore off before that day, then keeps the note. The number of the new one, or of
  /// the one that has its key already.
  virtual base::Result<std::int64_t> add_note(const domain::Note& note, const domain::Stamp& by) = 0;
  /// Those that hold on that day, in the order in which they came.
  virtual base::Result<std::vector<domain::KeptNote>> notes_on(std::chrono::year_month_day day) = 0;
  /// Fails with NotFound if there is no such note.
  virtual base::Result<void> remove_note(std::int64_t number, const domain::Stamp& by) = 0;

  /// What was done to the clock of a class, in order; its stamps are those of the acts.
  virtual base::Result<std::vector<domain::ClockAct>> clock_acts(const std::string& class_id) = 0;
  /// Keeps the act as the next of the class's clock. Its number, from 1; that of before if an act of its key
  /// is kept already. Fails with NotFound if there is no such class, with Conflict unless `seen` acts are
  /// kept.
  virtual base::Result<std::int64_t> add_clock_act(const std::string& class_id, const domain::ClockAct& act,
                                                   std::int64_t seen) = 0;

  /// Takes a person out of the list of people, of classes, notes and accounts, for good; their scores and
  /// efforts stay as those of somebody (`store/forget.hpp`), with what they said before taken out. The trail
  /// says that somebody was forgotten. Fails with NotFound.
  virtual base::Result<domain::Forgotten> forget(const domain::PersonId& person,
                                                 const domain::Catalogue& catalogue,
                                                 const domain::Stamp& by) = 0;

  /// Who changed what and when, newest first.
  virtual base::Result<std::vector<domain::TrailLine>> trail(const domain::TrailPage& page) = 0;

  /// Null if this kind of store keeps none.
  virtual Accounts* accounts() = 0;
};

/// "emergency", "rankings": the paper's name in files, tables and the trail.
std::string_view name_of(domain::Paper paper);

/// A text of lines without that line.
std::string without_line(const std::string& text, const std::string& line);

/// Those of `all` that belong to the class, in their order.
std::vector<domain::KeptScore> those_of_class(const std::vector<domain::KeptScore>& all,
                                              const std::string& class_id);

/// The refusal of a change of something that is not as it was when the change was made; nothing if it is.
std::optional<base::Error> stale(const std::string& what, domain::Version kept, domain::Version seen);

/// Why a class that lies there like this, with so many scores and efforts, cannot be taken away; nothing if
/// it can.
std::optional<base::Error> holds_class(const std::string& id, domain::Version kept, domain::Version seen,
                                       std::int64_t lines);

/// Who did the act, and when; and what the trail says of it.
domain::Stamp stamp_of(const domain::ClockAct& act);
std::string clock_words(const std::string& class_id, const domain::ClockAct& act);

/// The number of the act with that key, or nothing if this act may be kept as the next; Conflict unless
/// `seen` acts are there.
base::Result<std::optional<std::int64_t>> kept_before(const std::vector<domain::ClockAct>& acts,
                                                      const domain::ClockAct& act, std::int64_t seen);

}  // namespace repwright::store
