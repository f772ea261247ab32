#include "board/item_amounts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace repwright::board {
namespace {

using domain::Unit;

/// `4x8`, `3 x 8-10`, `4x max-2`: sets and the amount of one.
bool take_sets_by_amount(Session& session, Cursor& cursor, Entry& entry) {
  if (!cursor.at_number() || !cursor.at_symbol(times_sign, 1)) return false;
  Cursor ahead = cursor;
  const auto sets = ahead.take_count();
  ahead.next();
  if (!sets) return false;
  const std::size_t amount_from = ahead.position();
  auto amount = take_numbers(ahead, session.remarks);
  if (!amount && ahead.take_any({"amrap", "as many as possible"}))
    amount = Numbers{.values = {domain::Max{}}, .span = ahead.span_from(amount_from)};
  if (!amount) return false;
  entry.sets = sets;
  entry.amount = std::move(amount);
  cursor = ahead;
  return true;
}

bool number_begins_next_item(const Session& session, const Cursor& cursor) {
  Cursor ahead = cursor;
  Remarks silent;
  const auto numbers = take_numbers(ahead, silent);
  return numbers && session.names.find(ahead).has_value();
}

/// `1-arm row 3x8`: the number is the name's. Apart, as in `1 leg raise`, it is an amount.
bool begins_with_limb(const Cursor& cursor) {
  return limb_marks(cursor) > 0 && cursor.at_symbol('-', 1);
}

void take_star(Cursor& cursor, Entry& entry) {
  if (cursor.take_symbol('*')) entry.tail = true;
}

/// `after each round 200 m run`: the last of every round.
void take_turn_of_tail(const Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  if (!ahead.take_any({"after each round", "after every round", "after each set", "after every set",
                       "at the end of each round", "at the end of every round"}))
    return;
  const std::size_t to = ahead.position();
  ahead.take_symbol(':');
  ahead.take_symbol(',');
  Cursor work = ahead;
  Remarks silent;
  if (!take_numbers(work, silent) || !session.names.find(work)) return;
  entry.tail = true;
  entry.item.note = session.kept(ahead.span_of(from, to));
  cursor = ahead;
}

/// `1:00 max cal row`: as much as the time allows, which is all that a station is.
void take_max_in_time(const Session& session, Cursor& cursor, Entry& entry) {
  if (!entry.amount || entry.amount->unit != Unit::Seconds || !cursor.at("max")) return;
  Cursor ahead = cursor;
  ahead.take_any({"max reps", "max effort", "max"});
  ahead.take("of");
  const auto unit = take_unit(ahead);
  ahead.take("of");
  if (!session.names.find(ahead)) return;
  if (unit) entry.unit = unit->unit;
  entry.max_in_time = true;
  cursor = ahead;
}

/// `5 sets of 5`, `3 sets x 8-10` behind a name.
bool take_sets_of(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  const auto sets = ahead.take_count();
  if (!sets || !ahead.take_any({"sets", "set"})) return false;
  if (!ahead.take("of") && !ahead.take_symbol(times_sign)) return false;
  auto amount = take_numbers(ahead, session.remarks);
  if (!amount) return false;
  entry.sets = sets;
  entry.amount = std::move(amount);
  cursor = ahead;
  return true;
}

/// `30 min easy bike`: a pace before what can be paced.
void take_pace_before(Session& session, Cursor& cursor, Entry& entry) {
  constexpr std::array<std::string_view, 6> paces{"easy", "steady", "hard", "moderate", "fast", "slow"};
  const auto at_pace = std::ranges::find_if(paces, [&](std::string_view pace) { return cursor.at(pace); });
  if (at_pace == paces.end()) return;
  const auto named = session.names.find(cursor.part(cursor.position() + 1, cursor.end()));
  const domain::Movement* movement =
      named ? session.names.movement(named->meaning.movements.front()) : nullptr;
  if (movement == nullptr || (movement->category != "run" && movement->category != "ergometer")) return;
  entry.item.pace = *at_pace;
  cursor.next();
}

}  // namespace

bool amount_comes_from_piece(Session& session) {
  const Draft& draft = session.draft();
  return draft.scheme || draft.said.stations || draft.said.every || draft.block.work ||
         draft.said.max_effort || draft.said.for_distance || draft.said.accumulate || draft.said.build ||
         draft.said.ladder;
}

bool reads_as_loads(Session& session, const Entry& entry, const Numbers& amount) {
  const Draft& draft = session.draft();
  const domain::Movement* movement =
      entry.item.movement ? session.names.movement(*entry.item.movement) : nullptr;
  const bool timed = draft.said.amrap || draft.block.work;
  return timed && movement != nullptr && movement->typical_load && amount.joined == Joined::Slashes &&
         amount.values.size() == 2 && !amount.unit;
}

void take_amount_behind(Session& session, Cursor& cursor, Entry& entry) {
  if (entry.amount || entry.sets) return;
  Cursor ahead = cursor;
  const bool dash = ahead.at_symbol('-') && !ahead.glued(0) && !ahead.glued(1);  // `Row - 500 m`
  if ((ahead.at_symbol(':') && !ahead.glued(1)) || dash) ahead.next();
  const bool given = session.draft().gives_amounts();
  if (!given && (take_sets_of(session, ahead, entry) || take_sets_by_amount(session, ahead, entry))) {
    cursor = ahead;
    return;
  }
  if (amount_comes_from_piece(session) && number_begins_next_item(session, ahead)) return;
  if (ahead.at_number() && ahead.at_any({"sets", "set"}, 1)) return;
  if (ahead.at_number() && (ahead.at_symbol('%', 1) || ahead.at_any({"kg", "lb", "lbs", "rpe"}, 1))) return;
  auto amount = take_numbers(ahead, session.remarks);
  if (!amount) return;
  Cursor load = ahead;
  if (take_load_unit(load) != LoadUnit::Unsaid) return;
  if (reads_as_loads(session, entry, *amount)) return;
  if (given && !amount->unit)
    return;  // 'thrusters 40/30' below 21-15-9: the amount is there, this is the load
  entry.amount = std::move(amount);
  cursor = ahead;
}

void refuse_second_amount(Session& session, Cursor& cursor, const Entry& entry) {
  if (!entry.amount || !cursor.at_number()) return;
  Cursor ahead = cursor;
  Remarks silent;
  const std::size_t from = ahead.position();
  const auto second = take_numbers(ahead, silent);
  if (!second || !second->unit || !entry.amount->unit) return;
  const bool name_follows = session.names.find(ahead).has_value();
  const bool between = entry.item.movement.has_value() && name_follows;
  if (between || *second->unit == Unit::Reps) return;
  session.remarks.add(
      {"two-units", ahead.span_from(from),
       fmt::format("`{}` is a second amount for the same work", session.kept(ahead.span_from(from))),
       "keep one of the two"});
  cursor = ahead;
}

void take_amount_before(Session& session, Cursor& cursor, Entry& entry) {
  take_star(cursor, entry);
  take_turn_of_tail(session, cursor, entry);
  const std::size_t from = cursor.position();
  if (cursor.take_any({"best set", "max set", "one max set", "one best set", "1 max set", "biggest set"})) {
    cursor.take_symbol(':');
    cursor.take("of");
    entry.sets = 1;
    entry.amount = Numbers{.values = {domain::Max{}}, .span = cursor.span_from(from)};
  } else if (!begins_with_limb(cursor) && !take_sets_by_amount(session, cursor, entry)) {
    entry.amount = take_numbers(cursor, session.remarks);
  }
  if (entry.amount) refuse_second_amount(session, cursor, entry);
  while (entry.amount && cursor.at_any({"each", "e", "ea", "per", "l"}) &&
         read_detail(session, cursor, entry)) {
  }
  if (entry.amount && cursor.at("of")) cursor.next();
  if (entry.amount && cursor.at_any({"sync", "synced", "synchro", "synchronised", "synchronized"}) &&
      session.names.find(cursor.part(cursor.position() + 1, cursor.end()))) {
    cursor.next();
    entry.item.share = domain::Share::Sync;
  }
  take_max_in_time(session, cursor, entry);
  take_pace_before(session, cursor, entry);
  if (entry.amount && cursor.at_symbol(times_sign)) cursor.next();
  if (!entry.amount && cursor.at_any({"cal", "cals", "kcal"}) &&
      session.names.find(cursor.part(cursor.position() + 1, cursor.end()))) {
    cursor.next();
    entry.unit = domain::Unit::Kilocalories;
  }
}

void take_unit_behind(Cursor& cursor, Entry& entry) {
  if (entry.unit || (entry.amount && entry.amount->unit)) return;
  if (!cursor.at_word() || !cursor.take_any({"cal", "cals", "kcal", "calories", "for cal", "for cals",
                                             "for kcal", "for calories"}))
    return;
  entry.unit = domain::Unit::Kilocalories;
}

}  // namespace repwright::board
