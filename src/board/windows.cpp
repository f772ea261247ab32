#include <fmt/format.h>

#include <cmath>

#include "board/headings.hpp"
#include "board/rule_parts.hpp"

/// Parts of the class by the clock: from one minute to another, or from one start to the next.
namespace repwright::board {
using base::Duration;

namespace {

struct Window {
  Duration from, to;
};

std::optional<Window> take_window(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  Remarks silent;
  ahead.take_any({"min", "mins", "minute", "minutes"});
  const auto clock = [&](bool& naked) -> std::optional<Duration> {
    Cursor time = ahead;
    const auto said = take_time(time, silent, Naked::Refused);
    naked = !said;
    if (said) {
      const bool worded = time.before().kind == TokenKind::Word;
      if (worded && !time.at_symbol(':')) return std::nullopt;  // `6-8 min run` is an amount
      naked = worded;
      ahead = time;
      return said;
    }
    const auto number = ahead.take_count();
    return number ? std::optional(*number * base::minute) : std::nullopt;
  };
  bool naked_from = false;
  bool naked_to = false;
  const auto from = clock(naked_from);
  if (!from || !(ahead.take_symbol('-') || ahead.take("to"))) return std::nullopt;
  const auto to = clock(naked_to);
  if (!to || *to <= *from) return std::nullopt;
  ahead.take_symbol('\'');
  ahead.take_any({"min", "mins", "minutes"});
  if (ahead.at_symbol('-') && ahead.glued(0)) return std::nullopt;
  ahead.take_symbol(':');
  if (naked_from && naked_to) {
    const bool first = from->si() == 0;
    const Chapter* last = session.chapters.empty() ? nullptr : &session.chapters.back();
    const bool follows = last != nullptr && last->to && *last->to < *to;
    // '46-54 walk for distance': an amount would say nothing there, so these are minutes.
    if (!first && !follows && !for_distance_follows(ahead)) return std::nullopt;
    if (first && !follows &&
        (ahead.at_any({"reps", "m", "cal", "s"}) ||
         (session.names.find(ahead) && last != nullptr && !last->drafts.empty())))
      return std::nullopt;
  }
  cursor = ahead;
  return Window{*from, *to};
}

Chapter& open_window(Session& session, const Cursor& behind, const Window& window, const domain::Span& span) {
  Chapter& chapter = session.open_chapter(part_at(behind), "", span);
  chapter.from = window.from;
  chapter.to = window.to;
  session.score_from = session.chapters.size() - 1;
  return chapter;
}

/// `Str:` behind the times is the window's heading.
void take_part_of_window(Session& session, Cursor& cursor, Chapter& chapter) {
  const Part part = chapter.part;
  const bool work_part = part == Part::Skill || part == Part::Strength || part == Part::Piece ||
                         part == Part::Finisher || part == Part::Extra;
  if (!work_part) return;
  Cursor behind = cursor;
  behind.next(part_reach(cursor));
  if (!behind.at_symbol(':') && !behind.done()) return;
  chapter.words.push_back(session.kept(cursor.span_of(cursor.position(), behind.position())));
  behind.take_symbol(':');
  cursor = behind;
}

/// The minute at which the work of a line begins: `5:00`, `at 10:00`, behind which the cursor then stands.
std::optional<Duration> take_start(Cursor& cursor) {
  Cursor ahead = cursor;
  Remarks silent;
  ahead.take("at");
  const bool colon = ahead.at_number() && ahead.at_symbol(':', 1) && ahead.glued(1);
  const auto time = colon ? take_time(ahead, silent, Naked::Refused) : std::nullopt;
  if (!time || (ahead.at_symbol('-') && ahead.glued(0))) return std::nullopt;
  if (!ahead.take_symbol(':')) ahead.take_symbol('-');
  cursor = ahead;
  return time;
}

/// The start on a line below, the first that comes later.
std::optional<Duration> next_start(const Session& session, Duration now) {
  for (auto i = static_cast<std::size_t>(session.line_index) + 1; i < session.source.lines.size(); ++i) {
    const Line& line = session.source.lines[i];
    Cursor cursor(session.source, line.first, line.last);
    if (const auto time = take_start(cursor); time && *time > now) return time;
  }
  return std::nullopt;
}

bool says_end(Cursor cursor) {
  return cursor.take_any(
             {"done", "end", "finish", "finished", "stop", "time", "time is up", "end of piece"}) &&
         cursor.done();
}

/// Where the last start ends, for want of one below: after as long as the one before it.
Duration guessed_end(Session& session, const Chapter* before, Duration start, const domain::Span& span) {
  const Duration length =
      before != nullptr && before->from && start > *before->from ? start - *before->from : 5 * base::minute;
  session.remarks.add({"no-length", span,
                       fmt::format("`{}` does not say when its work ends: {:.0f} minutes were taken",
                                   session.kept(span), std::ceil(length / base::minute)),
                       "write the end on a line of its own: 15:00 done"});
  return start + length;
}

}  // namespace

bool begins_at_nothing(Cursor cursor) {
  const auto time = take_start(cursor);
  return time && time->si() == 0;
}

bool read_start_time(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const auto start = take_start(ahead);
  if (!start) return false;
  const Chapter* last = session.chapters.empty() ? nullptr : &session.chapters.back();
  const bool goes_on = last != nullptr && last->by_starts && last->from.value_or(*start) < *start;
  const auto next = next_start(session, *start);
  if (!goes_on && (start->si() > 0 || !next)) return false;
  if (goes_on && says_end(ahead)) {
    cursor.next(cursor.end() - cursor.position());
    return true;
  }
  const domain::Span span = ahead.span_from(cursor.position());
  const Duration end = next ? *next : guessed_end(session, last, *start, span);
  Chapter& chapter = open_window(session, ahead, {*start, end}, span);
  chapter.by_starts = true;
  take_part_of_window(session, ahead, chapter);
  cursor = ahead;
  return true;
}

bool read_window(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const auto window = take_window(session, ahead);
  if (!window) return false;
  const domain::Span span = ahead.span_from(cursor.position());
  const std::optional<Duration> before = session.chapters.empty() ? std::nullopt : session.chapters.back().to;
  if (before && *before > window->from)
    session.remarks.add({"window-order", span,
                         fmt::format("`{}` begins before the last window ends", session.kept(span)),
                         "mend the minutes"});
  Chapter& chapter = open_window(session, ahead, *window, span);
  take_part_of_window(session, ahead, chapter);
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
