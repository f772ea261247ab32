#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "board/session.hpp"

/// How a piece ends and what counts: caps, rests, scores, intents, prices, ends by level.
namespace repwright::board {

using base::Duration;

bool read_cap(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  std::optional<Duration> cap;
  if (ahead.take_any({"cap", "tc", "time cap", "capped at", "cap at", "hard cap", "time limit", "cap of"})) {
    ahead.take_symbol(':');
    ahead.take_symbol('=');
    cap = take_time(ahead, session.remarks, Naked::Minutes);
  } else {
    ahead.take("in");
    cap = take_time(ahead, session.remarks, Naked::Minutes);
    if (!cap || !ahead.take_any({"cap", "tc", "time cap", "limit", "time limit"})) return false;
  }
  if (!cap) return false;
  Draft& draft = session.draft();
  if (draft.span.line == 0) draft.span = ahead.span_from(from);
  if (cap->si() <= 0)
    session.remarks.add(
        {"no-amount", ahead.span_from(from),
         fmt::format("`{}`: a cap is longer than nothing", session.kept(ahead.span_from(from))),
         "write the minutes"});
  if (draft.block.cap && *draft.block.cap != *cap)
    session.remarks.add({"second-clock", ahead.span_from(from),
                         fmt::format("`{}`: the piece already has a cap, the last one counts",
                                     session.kept(ahead.span_from(from))),
                         "keep one of the two"});
  draft.block.cap = cap;
  draft.cap_span = ahead.span_from(from);
  cursor = ahead;
  return true;
}

namespace {

/// `leave 30 s spare every round`
bool read_spare(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  if (!ahead.take_any({"leave", "keep", "save"})) return false;
  const auto spare = take_time(ahead, session.remarks, Naked::Seconds);
  if (!spare || !ahead.take_any({"spare", "to spare", "of rest", "rest", "left"})) return false;
  ahead.take_any({"every time", "each time", "every round", "each round", "every interval", "each interval",
                  "at least"});
  domain::Intent intent = session.draft().block.intent.value_or(domain::Intent{});
  intent.spare = spare;
  session.draft().block.intent = intent;
  cursor = ahead;
  return true;
}

/// `10-14 min`, `12:00+`, `20 s spare`, the cursor behind a first time that was read; whether it was one.
bool take_intended_time(Session& session, Cursor& cursor, Duration time, domain::Intent& intent) {
  if (cursor.take_any({"spare", "to spare"})) {
    intent.spare = time;
    return true;
  }
  std::optional<double> max = time.si();
  if (cursor.take_symbol('+')) {
    max.reset();
  } else if (cursor.take_symbol('-') || cursor.take("to")) {
    const auto end = take_time(cursor, session.remarks, Naked::Minutes);
    if (!end) return false;
    max = end->si();
  }
  intent.time = domain::Intent::Window{time.si(), max};
  return true;
}

/// `3+ rounds`, `RPE 7`, `10-14 min`: bounds and what they bound; whether it was one.
bool take_intended_bounds(Cursor& cursor, domain::Intent& intent) {
  const bool effort_first = cursor.take("rpe");
  const std::optional<Bounds> read = take_bounds(cursor);
  if (!read) return false;
  const Bounds bounds = *read;
  const auto in_seconds = [&](double unit) {
    const std::optional<double> max = bounds.max ? std::optional(*bounds.max * unit) : std::nullopt;
    return domain::Intent::Window{bounds.min * unit, max};
  };
  if (effort_first || cursor.take("rpe")) {
    intent.effort = domain::Range{bounds.min, bounds.max.value_or(10)};
  } else if (cursor.take_any({"rounds", "round", "rds", "rd", "rnds"})) {
    intent.rounds = domain::Intent::Window{bounds.min, bounds.max};
  } else if (cursor.take_any({"min", "mins", "minutes", "minute"}) || cursor.take_symbol('\'')) {
    intent.time = in_seconds(60);
  } else if (cursor.take_any({"s", "sec", "seconds"}) || cursor.take_symbol('"')) {
    intent.time = in_seconds(1);
  } else {
    return false;
  }
  return true;
}

/// Swaps bounds that run backwards; whether they did.
bool put_forwards(std::optional<domain::Intent::Window>& window) {
  if (!window || !window->max || *window->max >= window->min) return false;
  std::swap(window->min, *window->max);
  return true;
}

}  // namespace

bool read_intent(Session& session, Cursor& cursor) {
  if (read_spare(session, cursor)) return true;
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  if (!ahead.take_any({"intent", "aim for", "aim", "meant to be", "should take", "goal"})) return false;
  ahead.take_symbol(':');
  ahead.take_symbol('=');
  domain::Intent intent;
  bool found = false;
  while (!ahead.done()) {
    Cursor part = ahead;
    if (part.take_symbol(',') || part.take_symbol(';') || part.take("and")) {
      ahead = part;
      continue;
    }
    Cursor timed = part;
    const auto time = part.at("rpe") ? std::nullopt : take_time(timed, session.remarks, Naked::Refused);
    if (time) part = timed;
    const bool taken =
        time ? take_intended_time(session, part, *time, intent) : take_intended_bounds(part, intent);
    if (!taken) break;
    found = true;
    ahead = part;
  }
  if (!found) return false;
  const bool time_backwards = put_forwards(intent.time);
  const bool rounds_backwards = put_forwards(intent.rounds);
  const bool effort_backwards = intent.effort && intent.effort->max < intent.effort->min;
  if (time_backwards || rounds_backwards || effort_backwards) {
    session.remarks.add({"backwards", ahead.span_from(from),
                         fmt::format("`{}` runs backwards: the smaller number comes first",
                                     session.kept(ahead.span_from(from))),
                         "swap the two numbers"});
    if (effort_backwards) std::swap(intent.effort->min, intent.effort->max);
  }
  Draft& draft = session.draft();
  const auto spare = draft.block.intent ? draft.block.intent->spare : std::nullopt;
  if (!intent.spare) intent.spare = spare;
  draft.block.intent = intent;
  cursor = ahead;
  return true;
}

namespace {

using domain::Score;
using Phrase = std::pair<std::string_view, Score>;

constexpr std::array score_phrases{Phrase{"total cals", Score::KcalSum},
                                   Phrase{"total cal", Score::KcalSum},
                                   Phrase{"total kcal", Score::KcalSum},
                                   Phrase{"total calories", Score::KcalSum},
                                   Phrase{"sum of cals", Score::KcalSum},
                                   Phrase{"total m", Score::DistanceSum},
                                   Phrase{"total metres", Score::DistanceSum},
                                   Phrase{"total meters", Score::DistanceSum},
                                   Phrase{"total distance", Score::DistanceSum},
                                   Phrase{"total reps", Score::RepsSum},
                                   Phrase{"sum of reps", Score::RepsSum},
                                   Phrase{"all reps", Score::RepsSum},
                                   Phrase{"slowest round", Score::MaxTime},
                                   Phrase{"slowest", Score::MaxTime},
                                   Phrase{"slowest time", Score::MaxTime},
                                   Phrase{"slowest interval", Score::MaxTime},
                                   Phrase{"fastest round", Score::MinTime},
                                   Phrase{"fastest", Score::MinTime},
                                   Phrase{"fastest time", Score::MinTime},
                                   Phrase{"lowest round", Score::MinInterval},
                                   Phrase{"lowest interval", Score::MinInterval},
                                   Phrase{"lowest set", Score::MinInterval},
                                   Phrase{"lowest", Score::MinInterval},
                                   Phrase{"worst round", Score::MinInterval},
                                   Phrase{"best round", Score::MaxInterval},
                                   Phrase{"best interval", Score::MaxInterval},
                                   Phrase{"best set", Score::MaxInterval},
                                   Phrase{"best", Score::MaxInterval},
                                   Phrase{"highest round", Score::MaxInterval},
                                   Phrase{"first team home", Score::Place},
                                   Phrase{"first home", Score::Place},
                                   Phrase{"place", Score::Place},
                                   Phrase{"order", Score::Place},
                                   Phrase{"points", Score::Points},
                                   Phrase{"pts", Score::Points},
                                   Phrase{"rounds reps", Score::RoundsReps},
                                   Phrase{"rounds", Score::RoundsReps},
                                   Phrase{"rung reps", Score::RungReps},
                                   Phrase{"last full minute", Score::LastFullMinute},
                                   Phrase{"times", Score::Times},
                                   Phrase{"each time", Score::Times},
                                   Phrase{"time", Score::Time},
                                   Phrase{"load", Score::Load},
                                   Phrase{"weight", Score::Load},
                                   Phrase{"kg", Score::Load},
                                   Phrase{"heaviest set", Score::Load},
                                   Phrase{"heaviest", Score::Load},
                                   Phrase{"reps", Score::Reps},
                                   Phrase{"max reps", Score::Reps},
                                   Phrase{"cals", Score::Kcal},
                                   Phrase{"calories", Score::Kcal},
                                   Phrase{"distance", Score::Distance},
                                   Phrase{"metres", Score::Distance},
                                   Phrase{"meters", Score::Distance},
                                   Phrase{"none", Score::None},
                                   Phrase{"no score", Score::None}};

/// The longest score phrase here; a plus between its words does not matter.
std::optional<Score> take_score_words(Cursor& cursor) {
  std::size_t longest = 0;
  Score score = Score::None;
  for (const auto& [phrase, meant] : score_phrases) {
    std::size_t reach = cursor.reach(phrase);
    if (phrase == "rounds reps" || phrase == "rung reps") {
      const std::string_view first = phrase.substr(0, phrase.find(' '));
      const std::size_t words = cursor.reach(first);
      if (words > 0 &&
          (cursor.at_symbol('+', words) || cursor.at_symbol('&', words) || cursor.at_any({"and"}, words)) &&
          cursor.at_any({"reps"}, words + 1))
        reach = words + 2;
    }
    if (reach <= longest) continue;
    longest = reach;
    score = meant;
  }
  if (longest == 0) return std::nullopt;
  cursor.next(longest);
  return score;
}

void add_score(Session& session, Score score) {
  const Draft& draft = session.draft();
  (void)draft;
  ScoreLine line;
  line.score = score;
  line.chapter = session.score_from;
  line.last_chapter = session.chapters.size() - 1;
  line.last_draft = session.chapter().drafts.size();
  session.scores.push_back(line);
}

}  // namespace

bool read_score(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const bool said = ahead.take_any({"score", "scores", "scored", "record", "scoring", "score is"});
  if (said) {
    ahead.take_symbol(':');
    ahead.take_symbol('=');
    ahead.take_any({"is", "your", "by", "the", "for"});
  }
  Cursor words = ahead;
  const auto score = take_score_words(words);
  if (!score) {
    if (!said || ahead.at_number()) return false;
    // 'score: spread of the 3 times' is for people.
    const domain::Span whole = cursor.rest_span();
    keep_words(session, whole);
    cursor.next(cursor.end() - cursor.position());
    return true;
  }
  const bool plain_word = !said;
  if (plain_word) {
    const bool counts = words.take_any(
        {"counts", "count", "wins", "is your score", "is the score", "scores", "decides", "is score"});
    const bool first_home = *score == Score::Place && cursor.at("first");
    if (!counts && !first_home && *score != Score::LastFullMinute) {
      const bool total = *score == Score::KcalSum || *score == Score::DistanceSum || *score == Score::RepsSum;
      if (!total || !words.done()) return false;
    }
  }
  words.take_any({"counts", "wins", "is the score"});
  // 'A and B added' and the like say nothing more.
  while (!words.done() && !words.at_symbol(';') && !words.at("cap") && !words.at("rest")) words.next();
  (void)from;
  add_score(session, *score);
  cursor = words;
  return true;
}

namespace {

struct RestRead {
  domain::RestRule rule;
  bool laps = false;
  bool bare = false;
};

bool take_between(Cursor& cursor, bool& laps) {
  if (cursor.take_any({"b t", "between", "btw", "btwn", "between each", "in between", "between the"}) ||
      (cursor.at("b") && cursor.at_symbol('/', 1) && cursor.at_any({"t"}, 2) && (cursor.next(3), true))) {
    laps = cursor.at_any({"laps", "lap"});
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
  const bool between = word && take_between(cursor, read.laps);
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
  ahead.take("with");
  bool word = ahead.take_any({"rest", "rests", "recover", "recovery", "rest for", "rest exactly", "r"});
  if (word && ahead.before().text == "r" && !ahead.at_number()) return std::nullopt;
  ahead.take_symbol(':');
  ahead.take_symbol('=');
  if (word &&
      ahead.take_any({"as needed", "as you need", "as required", "as you like", "freely", "when needed"})) {
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
    word = ahead.take_any({"rest", "recovery", "off", "break", "to change", "to rotate", "to move",
                           "to move on", "rotation", "change over", "changeover", "transition", "to reset"});
  const bool between = take_between(ahead, read.laps);
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
  if (read.laps) {
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

}  // namespace

bool read_rest(Session& session, Cursor& cursor) {
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

/// `every break = 5 down-ups`, `each drop: 5 burpees`.
bool read_penalty(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const bool said = ahead.take_any({"every break",
                                    "each break",
                                    "on every break",
                                    "on each break",
                                    "per break",
                                    "break",
                                    "every drop",
                                    "each drop",
                                    "on every drop",
                                    "every time you break",
                                    "every time you drop",
                                    "if you break",
                                    "penalty",
                                    "price of a break",
                                    "each time you break",
                                    "each time you drop",
                                    "every time you come off",
                                    "each time you come off",
                                    "every stop",
                                    "each stop",
                                    "every set down",
                                    "each set down"});
  if (!said) return false;
  if (!ahead.take_symbol('=') && !ahead.take_symbol(':') && !ahead.take_symbol(',') && !ahead.at_number() &&
      !ahead.take_symbol(arrow_sign) && !ahead.take_symbol('-') && !ahead.take("do"))
    return false;
  std::vector<Entry> entries = read_entries(session, ahead);
  if (entries.empty()) return false;
  session.draft().penalty = std::move(entries);
  cursor = ahead;
  return true;
}

/// `until you can't`; `cash in every unfinished min to 20 with 60m walk`.
bool read_failing(Session& session, Cursor& cursor) {
  if (cursor.take_any({"until you cant", "until you fail", "until failure", "as long as you can",
                       "till you cant", "until you miss"})) {
    session.draft().said.until_fail = true;
    return true;
  }
  Cursor ahead = cursor;
  ahead.take("cash in");
  ahead.take_any({"every", "each"});
  if (!ahead.take_any({"unfinished min", "unfinished minute", "unfinished minutes", "after failing",
                       "once out", "whoever is out", "when out", "minute left", "remaining minute"}))
    return false;
  Draft& draft = session.draft();
  if (ahead.take_any({"to", "up to", "until"})) {
    ahead.take_any({"min", "minute"});
    const auto last = ahead.take_count();
    if (!last) return false;
    draft.block.intervals = last;
  }
  ahead.take_any({"with", "do", "does"});
  ahead.take_symbol(':');
  ahead.take_symbol('=');
  std::vector<Entry> entries = read_entries(session, ahead);
  if (entries.empty()) return false;
  session.draft().after_fail = std::move(entries);
  session.draft().said.until_fail = true;
  cursor = ahead;
  return true;
}

/// `C may stop at 3 rds`, `level C: 3 rounds`, `levels A / B / C`.
bool read_levels(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  if (ahead.take("levels")) {
    ahead.take_symbol(':');
    std::vector<std::string> levels;
    while (!ahead.done() && !ahead.at_symbol(',') && !ahead.at_symbol(':')) {
      const std::size_t word = ahead.position();
      while (!ahead.done() && !ahead.at_symbol('/') && !ahead.at_symbol('|') && !ahead.at_symbol(','))
        ahead.next();
      levels.push_back(session.kept(ahead.span_of(word, ahead.position())));
      if (!ahead.take_symbol('/') && !ahead.take_symbol('|')) break;
    }
    if (levels.size() < 2) return false;
    session.draft().block.levels = std::move(levels);
    cursor = ahead;
    return true;
  }
  const bool level_word = ahead.take("level");
  const std::size_t name = ahead.position();
  std::size_t words = 0;
  while (ahead.at_word() && words < 3 &&
         !ahead.at_any({"may", "can", "stop", "stops", "does", "do", "only"})) {
    ahead.next();
    ++words;
  }
  if (words == 0) return false;
  const std::string level = session.kept(ahead.span_of(name, ahead.position()));
  const bool rule =
      ahead.take_any({"may stop at", "may stop after", "can stop at", "can stop after", "stops at",
                      "stops after", "stop at", "stop after", "does", "only", "do"}) ||
      (level_word && (ahead.take_symbol(':') || ahead.at_number()));
  if (!rule) return false;
  ahead.take("only");
  const auto rounds = ahead.take_count();
  if (!rounds) return false;
  const bool stop =
      cursor.reach("stop", words + (level_word ? 1 : 0) + 1) > 0 || ahead.done() || ahead.at_symbol(',');
  if (!ahead.take_any({"rounds", "round", "rds", "rd", "rnds"}) && !stop) return false;
  const auto& levels = session.draft().block.levels;
  const auto known = std::ranges::find_if(levels, [&](const std::string& l) {
    return std::ranges::equal(l, level, [](char a, char b) {
      return std::tolower(static_cast<unsigned char>(a)) == std::tolower(static_cast<unsigned char>(b));
    });
  });
  if (known == levels.end()) {
    session.remarks.add(
        {"level-ignored", ahead.span_from(from),
         fmt::format("`{}`: the piece has no level `{}`", session.kept(ahead.span_from(from)), level),
         "name the levels in a line above: A / B / C"});
  } else {
    session.draft().block.level_rules.push_back({*known, *rounds});
  }
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
