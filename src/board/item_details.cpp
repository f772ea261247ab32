#include "board/item_details.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "board/movement_choice.hpp"

/// What stands beside one line of work.
namespace repwright::board {
namespace {

using domain::Span;

bool read_version(Session&, Cursor& cursor, Entry& entry) {
  if (!cursor.take_any({"your version", "own version", "your own version"})) return false;
  entry.item.personal_version = true;
  return true;
}

bool read_second_station(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  if (ahead.at_number() && ahead.peek().value == 2 && ahead.at_any({"nd"}, 1)) {
    ahead.next(2);
    if (!ahead.take("station")) return false;
  } else if (!ahead.take_any({"second station"})) {
    return false;
  }
  ahead.take_symbol(':');
  ahead.take_symbol('=');
  const auto named = session.names.find(ahead);
  if (!named) return false;
  const std::size_t from = ahead.position();
  ahead.next(named->marks);
  entry.item.second_station = choose_movement(session, *named, Entry{}, ahead.span_from(from));
  cursor = ahead;
  return true;
}

bool read_small_words(Session& session, Cursor& cursor, Entry& entry) {
  const std::size_t from = cursor.position();
  if (cursor.at_number() && cursor.at_any({"ft", "feet", "foot"}, 1)) {  // `rope climb 15 ft`
    cursor.next(2);
    add_note(entry, session.kept(cursor.span_from(from)));
    return true;
  }
  if (cursor.take_any({"in remaining time", "in the remaining time", "in the time left", "in time left",
                       "rest of the minute", "to the end of the minute", "reps", "in remainder",
                       "in the remainder", "rest of the time"}))
    return true;
  const bool after = cursor.take_any({"after each set", "after each round", "after every set",
                                      "after every round", "each set", "each round", "between sets",
                                      "between rounds", "between", "every round", "every set"});
  if (after || cursor.take_any({"unbroken", "ub", "alt", "alternating", "touch and go", "tng", "to failure",
                                "total reps", "slow", "strict", "weighted", "wtd"})) {
    add_note(entry, session.kept(cursor.span_from(from)));
    return true;
  }
  if (cursor.take_any({"pair of", "two bells", "two kbs", "two dbs", "double bells"})) {
    entry.item.implements = 2;
    return true;
  }
  return false;
}

/// `w/ 2 x 22.5's`, `with 16 kg`: a load with its word.
bool read_with_load(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  if (!ahead.take("with") && !(ahead.take("w") && ahead.take_symbol('/'))) return false;
  ahead.take("a");
  if (!read_pair_of_bells(session, ahead, entry) && !read_load(session, ahead, entry)) return false;
  if (ahead.at_symbol('\'') && ahead.glued(0)) ahead.next();
  if (ahead.glued(0)) ahead.take("s");
  cursor = ahead;
  return true;
}

/// `no dubs?`, `if no dubs:`, `no rope yet ->`: who has to do something else, told behind it.
bool take_who_cannot(Cursor& cursor) {
  Cursor ahead = cursor;
  const bool said = ahead.take_any({"if no", "no", "if you have no", "without", "cant do", "cant"});
  if (!said) return false;
  constexpr int most_words = 5;
  for (int words = 0; words < most_words && (ahead.at_word() || ahead.at_symbol('-')); ++words) ahead.next();
  const bool told = ahead.take_symbol(unknown_sign) || ahead.take_symbol(':') || ahead.take_symbol('=') ||
                    ahead.take_symbol(arrow_sign);
  if (!told || !(ahead.at_number() || ahead.at_word())) return false;
  cursor = ahead;
  return true;
}

/// `or 3x singles`, `or 90 singles`, `or ring rows`, `scale: pull-up / ring row`.
bool read_options(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  const bool scale = take_who_cannot(ahead) ||
                     ahead.take_any({"scale", "scaled", "scale to", "scaling", "scales", "easier"});
  if (!scale && !ahead.take("or")) return false;
  ahead.take_symbol(':');
  domain::Scale found = entry.item.scale.value_or(domain::Scale{});
  const std::size_t before = found.options.size();
  while (!ahead.done()) {
    Cursor option = ahead;
    double factor = 1;
    std::optional<domain::Unit> said;
    if (option.at_number() && option.at_symbol(times_sign, 1)) {
      factor = option.number();
      option.next();
    } else if (const auto amount = entry.amount ? entry.amount->plain() : std::nullopt;
               amount && *amount > 0 && option.at_number()) {
      factor = option.number() / *amount;
      if (const auto unit = take_unit(option)) {
        factor *= unit->factor;
        said = unit->unit;
      }
    }
    const std::size_t from = option.position();
    while (!option.done() && (option.at_word() || option.at_symbol('-')) && !option.at("or") &&
           !option.at("then") && !option.at("for"))
      option.next();
    if (option.position() == from) break;
    const auto id = option_of(session, option.part(from, option.position()), entry.item.movement, said);
    if (!id) {
      if (!scale) break;
      const Span span = option.span_of(from, option.position());
      remark_unknown(session, span, session.kept(span), said);
    } else {
      found.options.push_back({*id, factor});
    }
    ahead = option;
    if (!ahead.at_symbol('/') && !ahead.at("or") && !(scale && ahead.at_symbol(','))) break;
    ahead.next();
  }
  if (found.options.size() == before && !scale) return false;
  if (!found.options.empty()) entry.item.scale = std::move(found);
  cursor = ahead;
  return true;
}

}  // namespace

const domain::Movement* movement_of(const Session& session, const Entry& entry) {
  return entry.item.movement ? session.names.movement(*entry.item.movement) : nullptr;
}

void add_note(Entry& entry, const std::string& words) {
  if (words.empty()) return;
  if (!entry.item.note.empty()) entry.item.note += "; ";
  entry.item.note += words;
}

bool read_detail(Session& session, Cursor& cursor, Entry& entry) {
  if (cursor.done()) return false;
  if (cursor.at_symbol('(')) {
    const std::size_t close = cursor.closing();
    const Cursor inside = cursor.part(cursor.position() + 1, close);
    cursor.next(close - cursor.position() + 1);
    read_bracket(session, inside, &entry);
    return true;
  }
  if (cursor.peek().kind == TokenKind::Bracketed) {
    add_note(entry, cursor.peek().text);
    cursor.next();
    return true;
  }
  if (read_with_load(session, cursor, entry)) return true;
  if (!entry.amount && !session.draft().gives_amounts() && cursor.at_number() &&
      cursor.at_symbol(times_sign, 1))
    return false;
  return read_height(session, cursor, entry) || read_at(session, cursor, entry) ||
         read_load_step(session, cursor, entry) || read_sides(session, cursor, entry) ||
         read_share_of_best(session, cursor, entry) || read_effort(session, cursor, entry) ||
         read_tempo(session, cursor, entry) || read_pair_of_bells(session, cursor, entry) ||
         read_load(session, cursor, entry) || read_pace(session, cursor, entry, Announced::No) ||
         read_share(session, cursor, entry) || read_version(session, cursor, entry) ||
         read_second_station(session, cursor, entry) || read_small_words(session, cursor, entry) ||
         read_options(session, cursor, entry);
}

/// `24/40/96/48` alone: amounts of something that the line does not name.
bool read_bare_numbers(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  Remarks silent;
  const auto numbers = take_numbers(ahead, silent);
  if (!numbers || numbers->joined != Joined::Slashes || numbers->values.size() < 3 || numbers->unit)
    return false;
  if (session.names.find(ahead) || ahead.at_symbol('@') || session.has_levels(numbers->values.size()))
    return false;
  if (ahead.at_word() && !ahead.at_any({"any", "your", "in", "own", "partition", "then"})) return false;
  session.remarks.add(
      {"numbers-without-movement", numbers->span,
       fmt::format("`{}` names no movements and is kept for people", session.kept(numbers->span)),
       "write each amount with its movement"});
  ahead.take_any({"any order", "in any order", "your partition", "own partition", "partition as you like"});
  session.draft().texts.push_back(session.kept(ahead.span_from(cursor.position())));
  cursor = ahead;
  return true;
}

/// Details behind a comma: of the last work on this line, else of all the work below.
bool read_details(Session& session, Cursor& cursor) {
  Draft& draft = session.draft();
  Entry* last = draft.last_entry();
  if (last != nullptr && (last->line == session.line_index || draft.said.sets || draft.said.superset)) {
    Cursor load = cursor;
    LoadUnit unit = LoadUnit::Unsaid;
    const bool loads =
        last->loads.empty() && !take_load_numbers(load, unit).empty() && unit != LoadUnit::Unsaid;
    if (cursor.at_symbol('(') ||
        (cursor.at_number() && !loads && !cursor.at_any({"rpe"}, 1) && !cursor.at_symbol('%', 1)))
      return false;
    return read_detail(session, cursor, *last);
  }
  Entry loose;
  Cursor ahead = cursor;
  if (read_effort(session, ahead, loose)) {
    draft.effort = loose.item.effort;
  } else if (read_tempo(session, ahead, loose)) {
    draft.tempo = loose.item.tempo;
  } else if (read_share(session, ahead, loose)) {
    if (loose.item.share && ahead.done()) draft.share = loose.item.share;
    if (loose.item.mode && !draft.mode) draft.mode = loose.item.mode;
  } else if (read_pace(session, ahead, loose, Announced::No) ||
             (ahead.at_symbol('@') && (ahead.next(), read_pace(session, ahead, loose, Announced::Yes)))) {
    draft.pace = loose.item.pace;
  } else {
    return false;
  }
  cursor = ahead;
  return true;
}

/// `2nd station: ring rows` on a line of its own: beside the work that it makes easier, else the work above.
bool read_second_station_line(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  Entry said;
  Draft& draft = session.draft();
  Entry* beside = draft.last_entry();
  if (beside == nullptr || !read_second_station(session, ahead, said)) return false;
  const auto eased = [&](const Entry& entry) {
    const domain::Movement* movement =
        entry.item.movement ? session.names.movement(*entry.item.movement) : nullptr;
    return movement != nullptr && said.item.second_station &&
           std::ranges::find(movement->easier, *said.item.second_station) != movement->easier.end();
  };
  for (Section& section : draft.sections)
    for (Entry& entry : section.entries)
      if (eased(entry)) beside = &entry;
  beside->item.second_station = said.item.second_station;
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
