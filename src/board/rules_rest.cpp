#include "board/session.hpp"

/// Rests: of a set, an interval, a lap, or between pieces.
namespace repwright::board {
using base::Duration;

namespace {

struct RestRead {
  domain::RestRule rule;
  bool laps = false;
  bool rounds = false;  // between rounds, which are the laps of a circuit
  bool bare = false;
};

bool take_between(Cursor& cursor, RestRead& read) {
  if (cursor.take_any({"b t", "between", "btw", "btwn", "between each", "in between", "between the"}) ||
      (cursor.at("b") && cursor.at_symbol('/', 1) && cursor.at_any({"t"}, 2) && (cursor.next(3), true))) {
    read.laps = cursor.at_any({"laps", "lap"});
    read.rounds = cursor.at_any({"rounds", "round", "rds"});
    cursor.take_any({"laps", "lap", "rounds", "round", "sets", "set", "rds", "each", "intervals", "efforts",
                     "each round", "reps", "amraps", "pieces", "them"});
    return true;
  }
  return false;
}

/// `1:1`, `1:2`: rest in proportion to the work.
bool take_ratio(Cursor& cursor, domain::RestRule& rule) {
  if (!cursor.at_number() || !cursor.at_symbol(':', 1) || !cursor.at_number(2) ||
      cursor.peek(2).text.size() > 1)
    return false;
  rule.kind = domain::RestKind::Ratio;
  rule.work = cursor.number();
  cursor.next();
  rule.rest = cursor.number();
  return true;
}

/// A length of rest behind its word, or before it (`90 s rest`); whether there is a rest at all.
bool take_rest_length(Session& session, Cursor& cursor, bool word, RestRead& read) {
  const bool between = word && take_between(cursor, read);
  read.rule.between_only = between;
  const Cursor range = cursor;
  auto time = take_time(cursor, session.remarks, word ? Naked::Minutes : Naked::Refused);
  if (!time) {
    read.bare = word;
    return word && !between;
  }
  // 'rest 60-90 s': the middle of the range would be a guess, the first number is what was said.
  if (cursor.at_symbol('-') && cursor.at_number(1)) {
    cursor.next();
    const auto more = take_time(cursor, session.remarks, Naked::Minutes);
    const std::string& unit = cursor.before().text;
    if (more && range.at_number() && (unit.starts_with("s") || unit == "\""))
      time = Duration::from_si(range.peek().value);
  }
  // A naked number of twenty and more after 'rest' is seconds.
  const bool naked = word && range.at_number() && cursor.position() == range.position() + 1;
  if (naked && range.peek().value >= 20) time = Duration::from_si(range.peek().value);
  read.rule.length = *time;
  return true;
}

std::optional<RestRead> take_rest(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  RestRead read;
  if (!ahead.take("with") && ahead.at("w") && ahead.at_symbol('/', 1)) ahead.next(2);
  bool word = ahead.take_any({"rest", "rests", "recover", "recovery", "rest for", "rest exactly", "r"});
  if (word && ahead.before().text == "r" && !ahead.at_number()) return std::nullopt;
  ahead.take_symbol(':');
  ahead.take_symbol('=');
  if (word && ahead.take_any({"the remaining time", "remaining time", "the rest of the time",
                              "the rest of the minute", "the remainder", "what is left"})) {
    read.bare = true;
  } else if (word && ahead.take_any({"as needed", "as you need", "as required", "as you like", "freely",
                                     "when needed"})) {
    read.rule.kind = domain::RestKind::Free;
  } else if (word && ahead.take_any({"as long as the work", "as long as work", "work time",
                                     "the same as work", "equal to work", "work"})) {
    read.rule.kind = domain::RestKind::Ratio;
  } else if (take_ratio(ahead, read.rule)) {
    if (!word && !ahead.take_any({"rest", "work to rest", "work rest"})) return std::nullopt;
    word = true;
  } else if (!take_rest_length(session, ahead, word, read)) {
    return std::nullopt;
  }
  if (!word)
    word = ahead.take_any({"rest", "recovery", "off", "break", "to change", "to rotate", "rotate", "change",
                           "to move", "to move on", "rotation", "change over", "changeover", "transition",
                           "to reset"});
  const bool between = take_between(ahead, read);
  read.rule.between_only |= between;
  if (!word && !between) return std::nullopt;
  ahead.take_any({"after each set", "after each round", "after each", "after every set", "after every round",
                  "each set", "each round", "after each pair", "exactly"});
  cursor = ahead;
  return read;
}

bool more_work_below(const Session& session) {
  for (std::size_t i = static_cast<std::size_t>(session.line_index) + 1; i < session.source.lines.size();
       ++i) {
    const Line& line = session.source.lines[i];
    const Cursor cursor(session.source, line.first, line.last);
    if (!cursor.at_any({"score", "cap", "tc", "intent", "scores", "lowest", "slowest", "best", "odd"}) &&
        line.indent == 0)
      return true;
  }
  return false;
}

void rest_block(Session& session, const RestRead& read, const domain::Span& span) {
  Draft& draft = session.fresh(span);
  draft.said.rest = true;
  draft.span = span;
  if (!read.bare && read.rule.kind == domain::RestKind::Fixed) draft.clock = read.rule.length;
}

/// `-> 1' ->`: a time between two arrows is a rest.
bool read_rest_between_arrows(Session& session, Cursor& cursor) {
  if (!session.arrow || session.bracketed) return false;
  Cursor ahead = cursor;
  const auto length = take_time(ahead, session.remarks, Naked::Refused);
  if (!length || (!ahead.at_symbol(arrow_sign) && !ahead.at("then"))) return false;
  RestRead read;
  read.rule.length = *length;
  const domain::Span span = ahead.span_from(cursor.position());
  rest_block(session, read, span);
  session.fresh(span);
  cursor = ahead;
  return true;
}

/// Whether the rest belongs to the piece that stands, where it then is.
bool rest_of_piece(Session& session, Draft& draft, RestRead& read) {
  const bool own_line = session.statement == session.line->first && !session.bracketed;
  const bool blank = own_line && session.line->after_blank;
  const bool fixed = read.rule.kind == domain::RestKind::Fixed;
  if (draft.said.every && (read.bare || draft.slot >= 0) && !blank) return true;  // the slot stays empty
  if (read.laps || (read.rounds && draft.said.stations && fixed)) {
    draft.block.lap_rest = read.rule.length;
    return true;
  }
  const bool joined = !blank && !session.then;
  const bool rounds = draft.block.rounds || draft.said.repeats || draft.said.each_for_time ||
                      (draft.said.amrap && session.bracketed);
  if (draft.said.sets || draft.said.superset) {
    if (!blank && fixed && !read.bare) draft.set_rest = read.rule.length;
    return !blank;
  }
  // The rest of each interval has been said: a line of its own with more below parts two pieces.
  const bool parts = own_line && session.line->indent == 0 && fixed && !read.bare &&
                     !read.rule.between_only && draft.block.rest && draft.has_work();
  if (draft.block.work && parts && more_work_below(session)) return false;
  if (draft.block.work && joined) {
    const bool new_rest = !read.bare && (read.rule.between_only || !draft.block.rest);
    if (new_rest && read.rule.between_only && !draft.said.stations)
      draft.block.rest_rule = read.rule;
    else if (new_rest)
      draft.block.rest = read.rule.length;
    return true;
  }
  if (rounds && joined) {
    const bool apart = own_line && session.line->indent == 0 && !read.rule.between_only && draft.has_work() &&
                       more_work_below(session);
    if (apart) return false;
    if (read.bare) read.rule.kind = domain::RestKind::Free;
    draft.block.rest_rule = read.rule;
    return true;
  }
  if (session.bracketed && !draft.has_work() && !read.bare) {
    draft.set_rest = read.rule.length;
    return true;
  }
  return false;
}

/// `no rest between stations`: what holds anyway where no rest is written.
bool take_no_rest(Cursor& cursor) {
  if (!cursor.take_any({"no rest", "no rests", "without rest", "no break", "no breaks"})) return false;
  RestRead none;
  take_between(cursor, none);
  cursor.take_any({"stations", "station", "movements", "exercises"});
  return true;
}

}  // namespace

bool read_rest(Session& session, Cursor& cursor) {
  if (take_no_rest(cursor)) return true;
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  std::optional<RestRead> read = take_rest(session, ahead);
  if (!read) return read_rest_between_arrows(session, cursor);
  cursor = ahead;
  Draft& draft = session.draft();
  if (rest_of_piece(session, draft, *read)) return true;
  const bool free_words = read->rule.kind != domain::RestKind::Fixed;
  if (free_words && (draft.said.for_time || draft.has_work())) {
    draft.block.rest_rule = read->rule;
    return true;
  }
  const domain::Span span = ahead.span_from(from);
  rest_block(session, *read, span);
  session.fresh(span);
  return true;
}

}  // namespace repwright::board
