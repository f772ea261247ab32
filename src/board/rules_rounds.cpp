#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

#include "board/rule_parts.hpp"

/// Rounds, and lists of counts for every line below.
namespace repwright::board {
namespace {

/// Whether work follows on this line behind the cursor.
bool work_follows(const Cursor& cursor) {
  for (std::size_t i = 0; i < 60 && cursor.position() + i < cursor.end(); ++i)
    if (cursor.at_word(i) && !cursor.at_any({"of", "for", "time"}, i)) return true;
  return false;
}

/// `5 rounds`, read: how many, from where to where, and whether for time was said with them.
struct RoundsSaid {
  int count = 1;
  bool for_time = false;
  std::size_t from = 0;
};

/// Rounds that say again, or say more of, what the piece has said; whether they did.
bool rounds_of_piece(Session& session, Draft& draft, const Cursor& behind, const RoundsSaid& said) {
  const bool first_below_blank = session.line->after_blank && session.statement == session.line->first;
  const bool new_piece = said.for_time || first_below_blank;
  // '(4 rounds)' of an EMOM says the same again
  if ((draft.said.every && !new_piece) || session.bracketed) return true;
  if (draft.said.stations && !new_piece) {
    draft.block.laps = said.count;
    return true;
  }
  if (!new_piece && (draft.block.work || draft.block.rest_rule)) {
    if (!draft.block.rounds) draft.block.rounds = said.count;
    return true;
  }
  if (draft.has_work() && !draft.block.rounds && !draft.said.amrap && !work_follows(behind) &&
      nothing_below(session) && !draft.said.sets) {
    draft.block.rounds = said.count;  // `..., 5 rounds` behind the work
    draft.said.for_time |= said.for_time;
    return true;
  }
  return false;
}

/// Rounds of the work that follows them: of a part of the piece, of all of it, or of a new piece.
void rounds_of_what_follows(Session& session, Draft& draft, const Cursor& behind, const RoundsSaid& said) {
  const bool first_below_blank = session.line->after_blank && session.statement == session.line->first;
  const bool parts_allowed = !draft.said.sets && !draft.said.superset && !draft.said.build &&
                             !first_below_blank && !draft.block.work && !draft.said.accumulate &&
                             !draft.said.max_effort && !draft.said.rest;
  if (draft.has_work() && parts_allowed && (!draft.block.rounds || session.then) &&
      !draft.said.rounds_label) {
    for (Section& section : draft.sections)
      if (section.role == Role::Plain) section.role = Role::Once;
    Section& section = open_section(session, draft, Role::Rounds, said.count);
    section.this_line_only = work_follows(behind);
    draft.said.for_time |= said.for_time;
    if (!session.then && !draft.said.buy_in)
      session.remarks.add({"round-scope", behind.span_from(said.from),
                           fmt::format("`{}` was read for {} only", session.kept(behind.span_from(said.from)),
                                       section.this_line_only ? "the work of its line" : "the work below"),
                           "put the rounds first, or say then, buy-in and cash-out"});
  } else if (!draft.has_work() && !draft.said.amrap && parts_allowed) {
    draft.block.rounds = said.count;
    draft.said.for_time |= said.for_time;
    if (draft.span.line == 0) draft.span = behind.span_from(said.from);
  } else if (draft.said.amrap && !draft.has_work()) {
    open_section(session, draft, Role::Rounds, said.count);
  } else {
    Draft& fresh = session.fresh(behind.span_from(said.from));
    fresh.block.rounds = said.count;
    fresh.said.for_time = said.for_time;
  }
}

/// `3x:` and `3x` alone on their line: a round is below.
bool at_head_of_round(const Session& session, const Cursor& behind) {
  return session.statement == session.line->first && (behind.done() || behind.at_symbol(':'));
}

/// `x 3` behind a list that nothing has counted yet.
bool at_foot_of_list(Session& session, const Cursor& behind) {
  const Draft& draft = session.draft();
  return behind.done() && draft.has_work() && nothing_below(session) && !draft.block.rounds &&
         !draft.said.amrap && !draft.said.every && !draft.said.sets && !draft.said.stations &&
         !draft.block.work;
}

/// `21/15/9` alone on its line, each count clearly below the last.
bool is_falling_list(Session& session, const Numbers& numbers, const Cursor& behind) {
  const std::vector<double> values = numbers.plain_values();
  const bool alone = session.statement == session.line->first && behind.done();
  if (!alone || numbers.unit || values.size() < 3 || session.draft().block.levels.size() == values.size())
    return false;
  return std::ranges::adjacent_find(values, [](double a, double b) { return b > a - 2; }) == values.end();
}

/// `10-9-8-...-1` of one, `1-2-3-...-10` of another: as many rounds, one falling while the other rises.
bool runs_against(const Draft& draft, const Numbers& numbers) {
  if (!draft.scheme || !draft.has_work() || draft.scheme->open || numbers.open) return false;
  const std::vector<double> first = draft.scheme->plain_values();
  const std::vector<double> second = numbers.plain_values();
  if (first.size() != second.size() || first.size() < 3) return false;
  return (first.front() - first.back()) * (second.front() - second.back()) < 0;
}

/// The work so far keeps the counts above it, that below takes the new ones.
void change_scheme(Draft& draft, Numbers numbers) {
  for (Section& section : draft.sections)
    for (Entry& entry : section.entries)
      if (!entry.amount) entry.amount = draft.scheme;
  draft.scheme = std::move(numbers);
}

}  // namespace

std::optional<Numbers> take_run_of_counts(Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const bool ladder_first = ahead.take("ladder");
  if (ladder_first) ahead.take_symbol(':');
  ahead.take("from");
  const auto first = ahead.take_count();
  const bool dash = first && ahead.take_symbol('-');
  if (!first || (!dash && !ahead.take_any({"to", "down to", "up to"}))) return std::nullopt;
  const auto last = ahead.take_count();
  if (!last || (dash && !ladder_first && !ahead.take("ladder"))) return std::nullopt;
  ahead.take("ladder");
  ahead.take_any({"reps", "of", "reps of"});
  constexpr int longest = 50;
  const int rungs = std::abs(*last - *first) + 1;
  if (rungs < 3 || rungs > longest) return std::nullopt;
  Numbers numbers{.joined = Joined::Dashes, .span = ahead.span_from(from)};
  for (int i = 0; i < rungs; ++i)
    numbers.values.emplace_back(static_cast<double>(*first + (*last > *first ? i : -i)));
  cursor = ahead;
  return numbers;
}

bool read_rounds(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const bool times_first = ahead.take_symbol(times_sign);
  const auto count = ahead.take_count();
  if (!count) return false;
  const bool times_behind = ahead.take_symbol(times_sign);
  const bool rft = ahead.take_any({"rft", "rounds 4 time", "rds 4 time", "rounds for time", "rds for time",
                                   "round for time", "rounds ft", "rds ft"}) ||
                   ((times_first || times_behind) && ahead.take_any({"ft", "for time"}));
  const bool times_only =
      (times_behind && at_head_of_round(session, ahead)) || (times_first && at_foot_of_list(session, ahead));
  if (!rft && !times_only && !take_rounds_word(ahead)) return false;
  const bool for_time = rft || ahead.take_any({"for time"});
  ahead.take("of");
  check_rounds(session, *count, ahead.span_from(from));
  const RoundsSaid said{.count = std::max(1, *count), .for_time = for_time, .from = from};
  Draft& draft = session.draft();
  if (!rounds_of_piece(session, draft, ahead, said)) rounds_of_what_follows(session, draft, ahead, said);
  cursor = ahead;
  return true;
}

bool read_scheme(Session& session, Cursor& cursor) {
  if (!cursor.at_number() && !cursor.at_any({"from", "ladder"})) return false;
  Cursor ahead = cursor;
  auto numbers = take_run_of_counts(ahead);
  if (!numbers) numbers = take_numbers(ahead, session.remarks);
  if (numbers && numbers->joined == Joined::Slashes && is_falling_list(session, *numbers, ahead))
    numbers->joined = Joined::Dashes;
  if (!numbers || numbers->joined != Joined::Dashes || (numbers->values.size() < 3 && !numbers->open))
    return false;
  ahead.take_any({"reps", "of", "reps of", "each"});
  if (session.names.find(ahead)) {
    // `21-15-9 thrusters, pull-ups`: the list holds for the names without amounts, too.
    Draft& now = session.draft();
    const bool waits = (now.said.for_time || now.said.amrap) && !now.has_work() && !now.scheme;
    Draft& draft = waits ? now : session.clocked(numbers->span);
    draft.scheme = std::move(numbers);
    draft.said.ladder |= draft.scheme->open;
    cursor = ahead;
    return true;
  }
  const bool lists = ahead.done() || ahead.at("for time") || ahead.at_symbol(':') || ahead.at("for") ||
                     ahead.at_symbol(',') || ahead.at_symbol('(');
  const bool waited_for = ahead.at_symbol('@') && give_counts_to_name_above(session, *numbers);
  if (waited_for) cursor = ahead;
  if (waited_for || !lists || ahead.at_symbol('@')) return waited_for;
  Entry* last = session.draft().last_entry();
  if (last != nullptr && !last->amount && last->line == session.line_index) return false;
  if (!numbers->unit && give_counts_to_name_above(session, *numbers)) {
    cursor = ahead;
    return true;
  }
  if (runs_against(session.draft(), *numbers) && !session.line->after_blank) {
    change_scheme(session.draft(), *std::move(numbers));
    cursor = ahead;
    return true;
  }
  Draft& draft = session.draft().said.ladder && !session.draft().has_work() ? session.draft()
                 : session.draft().has_work()                               ? session.fresh(numbers->span)
                                                                            : session.draft();
  if (draft.span.line == 0) draft.span = numbers->span;
  draft.said.ladder |= numbers->open;
  draft.scheme = std::move(numbers);
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
