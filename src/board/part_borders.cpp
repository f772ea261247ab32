#include "board/part_borders.hpp"

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

/// What follows a change of place or a talk is no more of it.
bool spoken_part_is_over(const Chapter& now) {
  return now.part == Part::Rest || now.part == Part::Talk;
}

/// A clock below a warm-up that the coach leads, or that has minutes of its own, other than the clock's.
bool quiet_part_is_over(const Chapter& now, const Cursor& line) {
  if (now.part != Part::WarmUp && now.part != Part::CoolDown) return false;
  if (!now.words.empty()) return begins_with_clock(line);
  const bool untouched = now.drafts.empty() || now.drafts.back().untouched();
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

void leave_part(Session& session, const Cursor& line) {
  if (session.chapters.empty() || session.line->indent > 0) return;
  const Chapter& now = session.chapter();
  if (now.from) return;
  if (spoken_part_is_over(now) || quiet_part_is_over(now, line) || lifting_is_over(session, now, line))
    session.open_chapter(Part::None, "", line.rest_span());
}

}  // namespace repwright::board
