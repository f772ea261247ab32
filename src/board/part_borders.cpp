#include "board/part_borders.hpp"

#include <algorithm>

#include "board/movement_choice.hpp"

namespace repwright::board {
namespace {

using base::Duration;

constexpr std::size_t marks_of_a_clock = 5;  // a clock stands at the beginning of its line

bool begins_with_clock(Cursor cursor) {
  for (std::size_t i = 0; i < marks_of_a_clock && !cursor.done(); ++i, cursor.next())
    if (cursor.at_any(
            {"amrap", "emom", "otm", "rft", "for time", "teams of", "in pairs", "every", "buy in"}) ||
        (cursor.at_word() && cursor.peek().text.ends_with("mom")))
      return true;
  return false;
}

bool at_turns(const Cursor& cursor) {
  return cursor.at_any({"emom", "otm", "every"}) || (cursor.at_word() && cursor.peek().text.ends_with("mom"));
}

/// A clock that a line begins with, and its minutes where they stand beside its word.
struct LineClock {
  bool turns = false;  // every minute and the like
  std::optional<Duration> length = {};
};

std::optional<LineClock> clock_of(Cursor cursor) {
  Remarks silent;
  std::optional<Duration> before;
  for (std::size_t i = 0; i < marks_of_a_clock && !cursor.done(); ++i) {
    const bool turns = at_turns(cursor);
    if (turns || cursor.at_any({"amrap", "rft", "for time"})) {
      cursor.next(cursor.at("for time") ? 2 : 1);
      if (before) return LineClock{turns, before};
      cursor.take_symbol('-');
      return LineClock{turns, take_time(cursor, silent, Naked::Minutes)};
    }
    before = take_time(cursor, silent, Naked::Refused);
    if (!before) cursor.next();
  }
  return std::nullopt;
}

/// A share of a best (`75 %`) anywhere in the line.
bool says_share(Cursor line) {
  for (; !line.done(); line.next())
    if (line.at_number() && line.at_symbol('%', 1)) return true;
  return false;
}

/// Sets of a lift with the bar: what people warm up for.
bool at_sets_with_bar(const Session& session, const Cursor& line) {
  const std::optional<Named> named = sets_of_lift_at(session, line);
  if (!named) return false;
  const std::optional<domain::MovementId> lift = lift_of(session, *named);
  const domain::Movement* movement = session.names.movement(lift ? *lift : named->meaning.movements.front());
  return movement != nullptr &&
         std::ranges::find(movement->equipment, domain::EquipmentId{"barbell"}) != movement->equipment.end();
}

/// Lifting below a warm-up: in shares of a best, or with the bar below a blank line.
bool lifting_begins(const Session& session, const Chapter& now, bool untouched, const Cursor& line) {
  if (!sets_of_lift_at(session, line)) return false;
  const bool apart = session.line->after_blank || (now.minutes && untouched);
  return (apart && says_share(line)) || (session.line->after_blank && at_sets_with_bar(session, line));
}

/// What follows a change of place or a talk is no more of it.
bool spoken_part_is_over(const Chapter& now) {
  return now.part == Part::Rest || now.part == Part::Talk;
}

/// A clock below a warm-up that the coach leads, or that has minutes of its own, other than the clock's; or
/// lifting.
bool quiet_part_is_over(const Session& session, const Chapter& now, const Cursor& line) {
  if (now.part != Part::WarmUp && now.part != Part::CoolDown) return false;
  const bool untouched = now.drafts.empty() || now.drafts.back().untouched();
  if (lifting_begins(session, now, untouched, line)) return true;
  if (!now.words.empty()) return begins_with_clock(line);
  const std::optional<LineClock> clock = clock_of(line);
  if (!now.minutes || !untouched || !clock) return false;
  return clock->turns ? clock->length > now.minutes : clock->length != now.minutes;
}

/// `B. EMOM 6`: the letters of a part go on.
bool lettered(const Cursor& line) {
  return line.at_word() && line.peek().text.size() == 1 &&
         (line.at_symbol('.', 1) || line.at_symbol(')', 1) || line.at_symbol(':', 1));
}

/// A clock below a blank line is no more of the lifting or the practice above it.
bool lifting_is_over(const Session& session, const Chapter& now, const Cursor& line) {
  if (!session.line->after_blank || lettered(line) || !begins_with_clock(line)) return false;
  // What is practised may be words alone; beside a lift, words alone are a remark on what follows.
  if (now.part == Part::Skill && !now.words.empty()) return true;
  const bool lifts = now.part == Part::Strength || now.part == Part::Skill;
  return lifts && !now.drafts.empty() && now.drafts.back().has_work();
}

}  // namespace

std::optional<Named> sets_of_lift_at(const Session& session, Cursor cursor) {
  const auto at_times = [](const Cursor& c) {
    return c.at_number() && c.at_symbol(times_sign, 1) && (c.at_number(2) || c.at_any({"max"}, 2));
  };
  if (auto named = session.names.find(cursor)) {
    cursor.next(named->marks);
    return at_times(cursor) ? named : std::nullopt;
  }
  if (!at_times(cursor)) return std::nullopt;
  cursor.next(2);
  Remarks silent;
  return take_numbers(cursor, silent) ? session.names.find(cursor) : std::nullopt;
}

void leave_part(Session& session, const Cursor& line) {
  if (session.chapters.empty() || session.line->indent > 0) return;
  const Chapter& now = session.chapter();
  if (now.from) return;
  if (spoken_part_is_over(now) || quiet_part_is_over(session, now, line) ||
      lifting_is_over(session, now, line))
    session.open_chapter(Part::None, "", line.rest_span());
}

}  // namespace repwright::board
