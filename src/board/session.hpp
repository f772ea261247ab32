#pragma once

#include "board/cursor.hpp"
#include "board/draft.hpp"
#include "board/names.hpp"
#include "board/remarks.hpp"
#include "domain/house.hpp"

namespace repwright::board {

/// All that one reading carries from rule to rule.
struct Session {
  const Lexed& source;
  const domain::House& house;
  const Names& names;
  Remarks remarks = {};
  std::string title = {};
  std::vector<std::string> levels = {};  // of a header line, for the next piece
  std::vector<Chapter> chapters = {};
  std::vector<ScoreLine> scores = {};
  std::vector<domain::Span> rules = {};  // stretches that were read and are no step
  std::size_t score_from = 0;            // chapter of the last score line or heading
  const Line* line = nullptr;
  int line_index = 0;
  std::optional<domain::MovementId> lift = {};  // the last movement named, for lines that go on with it
  std::optional<domain::MovementId> lift_in_sets = {};  // what that name stands for where it is lifted
  bool then = false;        // 'then', an arrow or a plus stood before this statement
  bool then_below = false;  // a line said no more than 'then': what is below comes after it
  bool arrow = false;
  bool plus = false;
  bool new_slot = false;  // a separator that parts slots and stations was seen
  char letter = 0;        // A of `A1` on this line
  bool letter_digit = false;
  std::size_t statement = 0;  // where the statement being read began
  bool shared_line = false;   // 'shared' was said on this line
  bool bracketed = false;     // inside a bracket
  int depth = 0;
  int unknown_movements = 0;

  Chapter& chapter();
  /// The piece being read.
  Draft& draft();
  /// The piece that a new clock belongs to: the one being read if it has neither clock nor work.
  Draft& clocked(const domain::Span& span);
  /// A new piece in any case, unless the one being read is still empty.
  Draft& fresh(const domain::Span& span);
  Chapter& open_chapter(Part part, std::string title, const domain::Span& span);
  bool has_levels(std::size_t count) { return draft().block.levels.size() == count; }
  std::string seen(const domain::Span& span) const {
    return std::string(source.text.substr(span.begin, span.end - span.begin));
  }
  std::string kept(const domain::Span& span) const { return kept_words(seen(span)); }
};

/// A rule of the language: reads what it knows at the cursor into the session, or leaves both alone.
using Rule = bool (*)(Session&, Cursor&);

// Each returns whether it took something.
bool read_cap(Session&, Cursor&);
bool read_heats(Session&, Cursor&);
bool read_intent(Session&, Cursor&);
bool read_carried_words(Session&, Cursor&);
bool read_start(Session&, Cursor&);
bool read_score(Session&, Cursor&);
bool read_rest(Session&, Cursor&);
bool read_every(Session&, Cursor&);
bool read_amrap(Session&, Cursor&);
bool read_for_time(Session&, Cursor&);
bool read_rounds(Session&, Cursor&);
bool read_work_rest(Session&, Cursor&);
bool read_repeats(Session&, Cursor&);
bool read_stations(Session&, Cursor&);
bool read_people(Session&, Cursor&);
bool read_build(Session&, Cursor&);
bool read_partners(Session&, Cursor&);
bool read_odd_team(Session&, Cursor&);
bool read_accumulate(Session&, Cursor&);
bool read_for_distance(Session&, Cursor&);
bool read_scope(Session&, Cursor&);
bool read_set_words(Session&, Cursor&);
bool read_levels(Session&, Cursor&);
bool read_scheme(Session&, Cursor&);
bool read_details(Session&, Cursor&);
bool read_bare_clock(Session&, Cursor&);
bool read_same_again(Session&, Cursor&);
bool read_penalty(Session&, Cursor&);
bool read_slot_label(Session&, Cursor&);
bool read_group(Session&, Cursor&);
bool read_failing(Session&, Cursor&);
bool read_ladder(Session&, Cursor&);
bool read_loads_behind(Session&, Cursor&);
bool read_bare_numbers(Session&, Cursor&);
bool read_pace_words(Session&, Cursor&);
bool read_inline_heading(Session&, Cursor&);

/// One line of work; true if there is one.
bool read_second_station_line(Session&, Cursor&);
bool read_item(Session&, Cursor&);
/// `same burpees`: as many as of the work above.
bool read_same_count(Session&, Cursor&);
/// `1 in the first minute, 2 in the second ...`: an amount that grows with the minutes.
bool read_minutes_that_grow(Session&, Cursor&);
/// The work up to the end of the cursor, for duties that stand apart from the piece.
std::vector<Entry> read_entries(Session&, Cursor&);
/// What stands behind a name: loads, sides, effort, tempo, pace, options, notes. True if it took something.
bool read_detail(Session&, Cursor&, Entry&);
/// What a bracket says of the entry, or of the piece if there is none.
void read_bracket(Session&, Cursor inside, Entry*);
/// Statements from the cursor to its end.
void read_statements(Session&, Cursor&);

/// One line of the board; lines come in order.
void read_line(Session&, const Line&);

/// Puts the entry where the piece keeps its work.
void place_entry(Session&, Entry);
/// `5-5-3-3-1` below the name of a lift: its sets. False if no name waits for them.
bool give_counts_to_name_above(Session&, const Numbers&);
void keep_words(Session&, const domain::Span&);

}  // namespace repwright::board
