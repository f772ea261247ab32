#include <fmt/format.h>

#include <algorithm>

#include "board/session.hpp"

/// What follows from a break, from failing, and from the level that somebody takes.
namespace repwright::board {
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
                                    "every time you stop",
                                    "each time you stop",
                                    "every time you rest",
                                    "each time you rest",
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
  if (session.draft().said.every && cursor.take_any({"and so on", "so on", "etc"})) {
    session.draft().said.climbing = true;
    return true;
  }
  if (session.draft().said.every && cursor.take_any({"to failure", "until you drop", "till failure"})) {
    session.draft().said.until_fail = true;
    return true;
  }
  if (cursor.take_any({"until you cant", "until you fail", "till you fail", "until failure",
                       "as long as you can", "till you cant", "until you miss"})) {
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
