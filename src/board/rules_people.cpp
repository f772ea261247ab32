#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "board/movement_choice.hpp"
#include "board/session.hpp"

/// Who does it: pairs, teams, relays, starts, heats, and the words that a piece carries.
namespace repwright::board {
namespace {

/// `2`, `two`.
std::optional<int> take_small_count(Cursor& cursor) {
  constexpr std::array<std::string_view, 5> words{"two", "three", "four", "five", "six"};
  const auto* const word =
      std::ranges::find_if(words, [&](std::string_view size) { return cursor.at(size); });
  if (word == words.end()) return cursor.take_count();
  cursor.next();
  return static_cast<int>(word - words.begin()) + 2;
}

/// `heats of two`: so many heats if it can be; the people of one heat if it is more, which says nothing of
/// how many heats there are.
bool read_heats_of(Session& session, Cursor& cursor, Cursor behind) {
  constexpr int most_heats = 3;
  behind.take("of");
  const auto count = take_small_count(behind);
  if (!count || *count < 1) return false;
  const domain::Span span = behind.span_from(cursor.position());
  const bool heats = *count <= most_heats;
  if (heats) session.draft().block.heats = count;
  session.remarks.add(
      {"heats-of",
       span,
       heats ? fmt::format("`{}` was read as {} heats", session.kept(span), *count)
             : fmt::format("`{}` does not say how many heats: all start together", session.kept(span)),
       "write how many heats: 2 heats",
       {"2 heats", "3 heats"}});
  cursor = behind;
  return true;
}

std::vector<int> take_sizes(Cursor& cursor) {
  std::vector<int> sizes;
  const auto first = take_small_count(cursor);
  if (!first) return sizes;
  sizes.push_back(*first);
  while ((cursor.at_symbol('/') || cursor.at("or") || cursor.at_symbol('-')) && cursor.at_number(1)) {
    cursor.next();
    if (const auto size = cursor.take_count())
      sizes.push_back(*size);
    else
      break;
  }
  return sizes;
}

/// The piece that a word for teams opens.
Draft& team_piece(Session& session, const domain::Span& span) {
  Draft& now = session.draft();
  Draft& draft = now.has_work() && now.block.team_sizes.empty() ? session.fresh(span)
                 : now.has_work()                               ? session.fresh(span)
                                                                : now;
  if (draft.span.line == 0) draft.span = span;
  return draft;
}

bool take_alternation(Cursor& cursor, domain::WorkMode& mode) {
  mode = domain::WorkMode::AlternateByPiece;
  if (cursor.take_any({"alternate full rounds", "alternate rounds", "alternating rounds", "ygig by rounds",
                       "igyg by rounds", "igyg rounds", "igyg full rounds", "i go you go by rounds",
                       "ygig rounds", "you go i go by rounds", "alternate by round", "ygig full rounds",
                       "round for round", "swap every round", "change every round"})) {
    mode = domain::WorkMode::AlternateByRound;
    return true;
  }
  return cursor.take_any({"ygig by sets", "ygig by set", "ygig", "you go i go", "i go you go", "igug", "igyg",
                          "alternate by piece", "alternating sets", "alternate sets"});
}

}  // namespace

bool read_people(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  std::vector<int> sizes;
  ahead.take_any({"in", "with a", "with", "w"});
  ahead.take_symbol('/');
  ahead.take("a");
  Cursor counted = ahead;
  const auto people = take_small_count(counted);
  if (people &&
      counted.take_any({"person teams", "person team", "people per team", "man teams", "up teams"})) {
    sizes = {*people};
    ahead = counted;
  } else if (ahead.take_any({"teams of", "team of", "groups of"})) {
    sizes = take_sizes(ahead);
    if (sizes.empty()) return false;
  } else if (ahead.take_any({"pairs", "partners", "partner", "pair", "2s", "twos"})) {
    sizes = {2};
  } else if (ahead.take_any({"trios", "threes"})) {
    sizes = {3};
  }
  if (!sizes.empty()) {
    ahead.take_any({"amrap of"});
    Draft& draft = team_piece(session, ahead.span_from(from));
    draft.block.team_sizes = sizes;
    if (std::ranges::any_of(sizes, [](int size) { return size < 1 || size > 100; }))
      session.remarks.add(
          {"too-many", ahead.span_from(from), "a team has 1 to 100 people", "write the size of a team"});
    cursor = ahead;
    return true;
  }
  ahead = cursor;
  if (const auto lanes = ahead.take_count(); lanes && ahead.take_any({"lanes", "lane"})) {
    session.draft().block.lanes = lanes;
    cursor = ahead;
    return true;
  }
  ahead = cursor;
  if (const auto turns = ahead.take_count();
      turns && ahead.take_any({"turns each", "turns per person", "legs each", "goes each"})) {
    session.draft().block.turns_each = turns;
    cursor = ahead;
    return true;
  }
  if (cursor.take_any({"relay"})) {
    session.draft().said.relay = true;
    if (session.draft().span.line == 0) session.draft().span = cursor.span_from(from);
    return true;
  }
  domain::WorkMode mode{};
  if (take_alternation(cursor, mode)) {
    Draft& draft = session.draft();
    draft.block.work_mode = mode;
    if (draft.block.team_sizes.empty()) draft.block.team_sizes = {2};
    if (draft.span.line == 0) draft.span = cursor.span_from(from);
    return true;
  }
  return false;
}

/// `odd number: one team of 3, half as much again`.
bool read_odd_team(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  if (!ahead.take_any({"odd number", "odd numbers", "if odd", "odd one out", "uneven number"})) return false;
  ahead.take_symbol(':');
  ahead.take_symbol(',');
  ahead.take_any({"one", "make one", "a", "1"});
  domain::OddTeam odd;
  if (ahead.take_any({"team of", "group of"})) {
    const auto size = ahead.take_count();
    if (!size) return false;
    odd.size = *size;
  } else if (ahead.take_any({"trio", "three"})) {
    odd.size = 3;
  } else {
    return false;
  }
  ahead.take_symbol(',');
  ahead.take_symbol(':');
  ahead.take("does");
  if (ahead.take_any({"half as much again", "half again", "one and a half times"}))
    odd.factor = 1.5;
  else if (ahead.take_any({"same work", "same", "same amount"}))
    odd.factor = 1;
  else if (ahead.take("twice as much"))
    odd.factor = 2;
  else if (ahead.take_symbol(times_sign) && ahead.at_number())
    odd.factor = ahead.number();
  else if (ahead.at_number() && (ahead.at_symbol(times_sign, 1) || ahead.at("times"))) {
    odd.factor = ahead.number();
    ahead.next();
  }
  session.draft().block.odd_team = odd;
  cursor = ahead;
  return true;
}

bool read_heats(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  std::optional<int> heats;
  ahead.take("in");
  if (ahead.take_any({"heats"})) {
    ahead.take_symbol(':');
    if (ahead.at("of")) return read_heats_of(session, cursor, ahead);
    heats = take_small_count(ahead);
  } else if (const auto count = take_small_count(ahead); count && ahead.take_any({"heats", "heat"})) {
    heats = count;
  }
  if (!heats) return false;
  if (*heats < 1 || *heats > 50)
    session.remarks.add({"too-many", ahead.span_from(cursor.position()), "a piece runs in 1 to 50 heats",
                         "write how many heats"});
  session.draft().block.heats = std::max(1, *heats);
  cursor = ahead;
  return true;
}

bool read_carried_words(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  Draft& draft = session.draft();
  const bool pounds = session.house.mass_unit == domain::MassUnit::Pounds;
  const auto load = [&](Cursor& c) -> std::optional<base::Mass> {
    const auto number = c.take_number();
    if (!number) return std::nullopt;
    return mass_of(*number, take_load_unit(c), pounds);
  };
  if (ahead.take_any({"vest", "with vest", "weight vest", "wear a vest"})) {
    ahead.take_symbol(':');
    if (const auto mass = load(ahead)) {
      if (ahead.at_symbol('/') && ahead.at_number(1)) {
        ahead.next();
        load(ahead);
        session.remarks.add({"first-of-two", ahead.span_from(from),
                             "a vest has one weight for all: the first was taken", "write one weight"});
      }
      draft.block.vest = mass;
      cursor = ahead;
      return true;
    }
  }
  ahead = cursor;
  if (const auto mass = load(ahead); mass && ahead.take_any({"vest", "weight vest"})) {
    draft.block.vest = mass;
    cursor = ahead;
    return true;
  }
  if (cursor.take_any({"keep the bar", "keep your bar", "keep your place", "keep the place",
                       "keep your station", "keep your rower", "keep the place while resting"})) {
    draft.block.keep_place = true;
    return true;
  }
  if (cursor.take_any({"quiet", "quiet please", "no dropping", "no drops"})) {
    draft.block.quiet = true;
    return true;
  }
  if (cursor.take_any({"pick up where you left off", "pick up where u left off",
                       "carry on where you left off", "carry over", "continue where you left off",
                       "pick up where you stopped", "start where you left off", "start where you stopped"})) {
    draft.block.carry_over = true;
    return true;
  }
  ahead = cursor;
  if (ahead.take_any({"odd start with", "odd start", "odds start with", "odd ones start with",
                      "odd numbers start with"})) {
    ahead.take_any({"with", "the", "on"});
    const std::size_t name = ahead.position();
    const auto named = session.names.find(ahead);
    if (!named) return false;
    ahead.next(named->marks);
    draft.block.odd_start = choose_movement(session, *named, Entry{}, ahead.span_from(name));
    cursor = ahead;
    return true;
  }
  return false;
}

bool read_start(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  const auto starts = [&](int people, base::Duration every) {
    Draft& draft =
        session.draft().has_work() && session.statement == session.line->first && session.line->after_blank
            ? session.fresh(ahead.span_from(from))
            : session.draft();
    if (draft.span.line == 0) draft.span = ahead.span_from(from);
    draft.block.start = domain::Stagger{every, people};
    cursor = ahead;
    return true;
  };
  if (ahead.take_any({"waterfall start", "waterfall", "staggered start", "rolling start"})) {
    if (session.draft().span.line == 0) session.draft().span = ahead.span_from(from);
    if (!session.draft().block.start) session.draft().block.start = domain::Stagger{base::minute, 1};
    cursor = ahead;
    return true;
  }
  if (ahead.take_any({"start every", "starts every", "go every", "start one every"})) {
    if (const auto every = take_time(ahead, session.remarks, Naked::Seconds)) return starts(1, *every);
    return false;
  }
  const bool start_word = ahead.take("start");
  if (const auto people = ahead.take_count()) {
    const bool who =
        ahead.take_any({"athlete", "athletes", "person", "people", "at a time", "starts", "start", "by one"});
    if ((who || start_word) && ahead.take("every"))
      if (const auto every = take_time(ahead, session.remarks, Naked::Seconds))
        return starts(*people, *every);
  }
  return false;
}

}  // namespace repwright::board
