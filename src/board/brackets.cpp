#include <algorithm>
#include <utility>

#include "board/movement_choice.hpp"
#include "board/session.hpp"

namespace repwright::board {
namespace {

/// `strict / band / row`: one version per part, or nothing.
std::vector<domain::ScaleOption> versions_in(Session& session, const Cursor& inside, const Entry& entry) {
  std::vector<domain::ScaleOption> options;
  std::size_t from = inside.position();
  for (Cursor cursor = inside;; cursor.next()) {
    if (cursor.done() || cursor.at_symbol('/')) {
      const auto id = option_of(session, cursor.part(from, cursor.position()), entry.item.movement);
      if (!id) return {};
      options.push_back({*id, 1});
      from = cursor.position() + 1;
      if (cursor.done()) break;
    } else if (!cursor.at_word() && !cursor.at_symbol('-')) {
      return {};
    }
  }
  return options.size() > 1 ? options : std::vector<domain::ScaleOption>{};
}

/// `one works, other holds plank`.
bool read_gate(Session& session, Cursor& cursor, Entry& entry) {
  if (!cursor.take_any({"one works", "one working", "one at a time", "1 works"})) return false;
  entry.item.mode = domain::PartnerMode::OneWorks;
  cursor.take_symbol(',');
  cursor.take_symbol('/');
  Cursor ahead = cursor;
  ahead.take("the");
  ahead.take_any({"one", "other", "others", "partner"});
  if (!ahead.take_any({"holds", "hold", "in", "does", "holding", "hangs"})) {
    if (ahead.take_any({"rests", "rest", "one rests"})) cursor = ahead;
    return true;
  }
  ahead.take_any({"a", "the"});
  const auto named = session.names.find(ahead);
  domain::Gate gate;
  const std::size_t from = ahead.position();
  if (named) {
    ahead.next(named->marks);
    gate.movement = choose_movement(session, *named, Entry{}, ahead.span_from(from));
    const domain::Movement* held = session.names.movement(*gate.movement);
    gate.unit = held != nullptr && !held->pace.contains(domain::Unit::Seconds) ? held->default_unit
                                                                               : domain::Unit::Seconds;
  } else {
    while (ahead.at_word()) ahead.next();
    gate.free_text = session.kept(ahead.span_from(from));
    if (gate.free_text.empty()) return true;
  }
  entry.item.gate = std::move(gate);
  cursor = ahead;
  return true;
}

bool only_words(const Cursor& inside) {
  for (Cursor cursor = inside; !cursor.done(); cursor.next())
    if (!cursor.at_word() && !cursor.at_symbol('-') && !cursor.at_symbol(',')) return false;
  return true;
}

/// `row (cals)`: what the machine is to show; beside another amount, words.
bool read_unit(const Session& session, const Cursor& inside, Entry& entry) {
  Cursor cursor = inside;
  if (!cursor.take_any({"cal", "cals", "kcal", "calories"}) || !cursor.done()) return false;
  const std::string words = session.kept(inside.rest_span());
  if (entry.unit || (entry.amount && entry.amount->unit)) {
    entry.item.note += (entry.item.note.empty() ? "" : "; ") + words;
  } else {
    entry.unit = domain::Unit::Kilocalories;
    entry.shown_in = words;
  }
  return true;
}

/// Levels `strict / band / row`, or options in falling order.
bool read_versions(Session& session, const Cursor& inside, Entry& entry) {
  if (!inside.at_word() || inside.at_any({"each", "per", "scale", "or", "e", "l"})) return false;
  std::vector<domain::ScaleOption> options = versions_in(session, inside, entry);
  if (options.empty()) return false;
  const bool by_level = session.has_levels(options.size());
  entry.item.scale = domain::Scale{std::move(options), by_level};
  return true;
}

}  // namespace

void read_bracket(Session& session, Cursor inside, Entry* entry) {
  if (inside.done()) return;
  const domain::Span whole = inside.rest_span();
  const bool was = std::exchange(session.bracketed, true);
  if (entry != nullptr) {
    if (read_unit(session, inside, *entry)) {
      session.bracketed = was;
      return;
    }
    if (read_versions(session, inside, *entry)) {
      session.bracketed = was;
      return;
    }
    Cursor cursor = inside;
    bool all = true;
    // '9 box step-ups (9 each leg)': the count again is no load.
    while (!cursor.done() && all) {
      if (cursor.take_symbol(',') || cursor.take_symbol(';')) continue;
      if (cursor.at("build") || cursor.at("building")) {
        cursor.next();
        session.draft().said.load_scored = true;
        continue;
      }
      all = read_gate(session, cursor, *entry) || read_detail(session, cursor, *entry) ||
            read_rest(session, cursor) || read_cap(session, cursor);
    }
    if (!all) {
      if (!entry->item.note.empty()) entry->item.note += "; ";
      const domain::Span rest = cursor.rest_span();
      entry->item.note += session.kept(cursor.position() == inside.position() ? whole : rest);
    }
    session.bracketed = was;
    return;
  }
  if (only_words(inside) &&
      !inside.at_any({"then",  "rest",  "every",   "cap",  "one",  "any",         "heats",     "quiet",
                      "build", "ygig",  "igyg",    "with", "w",    "alternating", "alternate", "pairs",
                      "in",    "teams", "partner", "pick", "keep", "no"})) {
    keep_words(session, whole);
  } else {
    read_statements(session, inside);
  }
  session.bracketed = was;
}

}  // namespace repwright::board
