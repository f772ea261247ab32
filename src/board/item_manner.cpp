#include <fmt/format.h>

#include <algorithm>

#include "board/item_details.hpp"

/// How it is done: sides, effort, tempo, pace, who of a team does it.
namespace repwright::board {
namespace {

using domain::Range;
using domain::Span;

bool take_side_words(Cursor& cursor, std::string& words) {
  const std::size_t from = cursor.position();
  const bool slash_side =
      cursor.at_symbol('/') && cursor.glued(1) && cursor.at_any({"s", "side", "leg", "arm", "hand", "es"}, 1);
  const bool each_side =
      cursor.at("e") && cursor.at_symbol('/', 1) && cursor.at_any({"s", "side", "l", "a"}, 2);
  const bool left_right =
      cursor.at("l") && (cursor.at_symbol('/', 1) || cursor.at_symbol('+', 1)) && cursor.at_any({"r"}, 2);
  bool found = slash_side || each_side || left_right;
  if (found) {
    cursor.next(slash_side ? 2 : 3);
  } else if (cursor.take_any({"each side",  "each leg",     "each arm",    "each hand",  "each foot",
                              "per side",   "per leg",      "per arm",     "per hand",   "ea side",
                              "ea leg",     "ea arm",       "ea",          "both sides", "a side",
                              "left right", "on each side", "on each leg", "a leg",      "an arm",
                              "side each",  "every side"})) {
    found = true;
  }
  if (found) words = kept_words(cursor.text_of(cursor.span_from(from)));
  return found;
}

/// The same four digits for who means the other order: the last two first. Nothing if they are not four
/// signs.
std::vector<std::string> other_tempo_order(const std::string& digits) {
  if (digits.size() == 4) return {digits.substr(2) + digits.substr(0, 2)};
  if (digits.size() == 7) return {digits.substr(4) + digits[3] + digits.substr(0, 3)};
  return {};
}

domain::Tempo in_house_order(Session& session, const domain::Tempo& read, const Span& span) {
  const bool down_first = session.house.tempo == domain::TempoOrder::DownPauseUpTop;
  session.remarks.add_once({"tempo-order", span,
                            fmt::format("`{}` is read {}", session.kept(span),
                                        down_first ? "down, pause, up, top" : "up, top, down, pause"),
                            "the order is a rule of the house", other_tempo_order(session.kept(span))});
  return down_first ? read : domain::Tempo{read[2], read[3], read[0], read[1]};
}

}  // namespace

bool read_sides(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  std::string words;
  if (!take_side_words(ahead, words)) {
    const bool pairs = !session.draft().block.team_sizes.empty();
    if (pairs || !ahead.at("each") || ahead.at("each set") || ahead.at("each round")) return false;
    ahead.next();
    words = "each";
  }
  entry.both_sides = true;
  entry.side_words = words;
  cursor = ahead;
  return true;
}

bool read_effort(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  std::optional<Bounds> bounds;
  const std::size_t from = ahead.position();
  if (ahead.take("rpe")) {
    ahead.take_symbol(':');
    bounds = take_bounds(ahead);
  } else {
    bounds = take_bounds(ahead);
    if (!bounds || !ahead.take("rpe")) return false;
  }
  if (!bounds) return false;
  const double max = bounds->max.value_or(bounds->min);
  if (max < bounds->min)
    session.remarks.add({"backwards",
                         ahead.span_from(from),
                         fmt::format("`{}` runs backwards: the lower effort comes first",
                                     session.kept(ahead.span_from(from))),
                         "swap the two",
                         {}});
  if (max > 10)
    session.remarks.add({"too-many",
                         ahead.span_from(from),
                         fmt::format("`{}`: effort runs from 1 to 10", session.kept(ahead.span_from(from))),
                         "write RPE 1 to 10",
                         {}});
  entry.item.effort = Range{std::min(bounds->min, max), std::max(bounds->min, max)};
  cursor = ahead;
  return true;
}

bool read_tempo(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  const bool said = ahead.take_any({"tempo", "at tempo"});
  ahead.take_symbol(':');
  ahead.take_symbol('@');
  const std::size_t from = ahead.position();
  const auto tempo = take_tempo(ahead);
  if (!tempo) return false;
  const bool dashed = ahead.position() - from >= 4;
  const bool explosive = !(*tempo)[0] || !(*tempo)[1] || !(*tempo)[2] || !(*tempo)[3];
  if (!said && !dashed && !explosive && !cursor.at_symbol('@')) return false;
  entry.item.tempo = in_house_order(session, *tempo, ahead.span_from(from));
  ahead.take("tempo");
  cursor = ahead;
  return true;
}

bool paced(const Session& session, const Entry& entry) {
  const domain::Movement* movement = movement_of(session, entry);
  return movement != nullptr && (movement->category == "run" || movement->category == "ergometer");
}

/// `5k pace`, `easy talk pace`, `talk`, `easy`.
bool read_pace(Session& session, Cursor& cursor, Entry& entry, Announced announced) {
  bool behind_at = announced == Announced::Yes;
  Cursor ahead = cursor;
  if (!behind_at && ahead.take_any({"at"})) behind_at = true;
  const std::size_t words = ahead.position();
  if (ahead.at_number() && ahead.at_any({"k", "km"}, 1) &&
      (ahead.at_any({"pace", "speed", "effort"}, 2) || behind_at)) {
    ahead.next(2);
  } else if (ahead.at_any({"mile pace", "race pace", "own pace", "goal pace", "threshold pace"})) {
    ahead.next();
  } else if (ahead.at_any({"easy", "talk", "steady", "hard", "moderate", "fast", "conversation", "chat",
                           "slow", "recovery"}) &&
             (behind_at || paced(session, entry))) {
    while (ahead.at_any(
        {"easy", "talk", "steady", "hard", "moderate", "fast", "conversation", "chat", "slow", "recovery"}))
      ahead.next();
  } else {
    return false;
  }
  const Span said = ahead.span_of(words, ahead.position());
  entry.item.pace = session.kept(said);
  std::erase(entry.item.pace, ' ');
  if (!ahead.at_number() && entry.item.pace.find_first_of("0123456789") == std::string::npos)
    entry.item.pace = session.kept(said);
  for (char& c : entry.item.pace)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  ahead.take_any({"pace", "speed"});
  cursor = ahead;
  return true;
}

bool read_share(Session& session, Cursor& cursor, Entry& entry) {
  const bool team = !session.draft().block.team_sizes.empty();
  if (cursor.take_any({"sync", "synced", "synchro", "synchronised", "synchronized", "in sync", "together",
                       "both together"})) {
    entry.item.share = domain::Share::Sync;
    return true;
  }
  if (team && cursor.take_any({"each", "each person", "per person", "each partner"})) {
    entry.item.share = domain::Share::Each;
    return true;
  }
  if (cursor.take_any({"shared", "total", "between you", "in total", "as a team"})) {
    if (team) {
      entry.item.share = domain::Share::Total;
      session.shared_line = true;
    }
    return true;
  }
  if (cursor.take_any({"split anyhow", "split as you like", "split any way", "split how you like",
                       "split as needed", "split however", "free split", "anyhow", "shared anyhow",
                       "split it anyhow"})) {
    if (!entry.item.mode) entry.item.mode = domain::PartnerMode::Free;
    return true;
  }
  Cursor alone = cursor;  // `40 wall balls - split`
  if (team && alone.take("split") && (alone.done() || alone.at_symbol(',') || alone.at_symbol('/'))) {
    if (!entry.item.mode) entry.item.mode = domain::PartnerMode::Free;
    cursor = alone;
    return true;
  }
  return false;
}

/// `easy talk pace:`, `easy:`: how to go at the work below.
bool read_pace_words(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  Entry loose;
  if (!read_pace(session, ahead, loose, Announced::Yes)) return false;
  const bool said = ahead.before().text == "pace";
  const bool alone = ahead.done() || ahead.at_symbol(':') || ahead.at_symbol(',') || ahead.at_symbol(')');
  if (cursor.at_number() ? !said : !alone) return false;
  Draft& draft = session.draft();
  Entry* last = draft.last_entry();
  if (last != nullptr && last->line == session.line_index) {
    if (!paced(session, *last)) return false;
    last->item.pace = loose.item.pace;
  } else {
    draft.pace = loose.item.pace;
  }
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
