#include <fmt/format.h>

#include <algorithm>

#include "board/movement_choice.hpp"
#include "board/session.hpp"

namespace repwright::board {
namespace {

using domain::Range;
using domain::Span;

const domain::Movement* movement_of(const Session& session, const Entry& entry) {
  return entry.item.movement ? session.names.movement(*entry.item.movement) : nullptr;
}

void add_note(Entry& entry, const std::string& words) {
  if (words.empty()) return;
  if (!entry.item.note.empty()) entry.item.note += "; ";
  entry.item.note += words;
}

bool heavy_kit(const Session& session, const Entry& entry) {
  const domain::Movement* movement = movement_of(session, entry);
  if (movement == nullptr) return entry.item.movement == std::nullopt;
  return movement->typical_load.has_value() || !movement->equipment.empty();
}

/// `24/16`, `16`, `60/40 kg`, `1.5/1 pood`, `10 or 6 kg`.
std::vector<double> take_load_numbers(Cursor& cursor, LoadUnit& unit) {
  std::vector<double> loads;
  const auto first = cursor.take_number();
  if (!first) return loads;
  loads.push_back(*first);
  unit = take_load_unit(cursor);
  while ((cursor.at_symbol('/') || cursor.at("or")) && cursor.at_number(1) && loads.size() < 6) {
    cursor.next();
    loads.push_back(cursor.number());
    if (const LoadUnit again = take_load_unit(cursor); again != LoadUnit::Unsaid) unit = again;
  }
  return loads;
}

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

bool read_share_of_best(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
  std::vector<double> percent;
  while (ahead.at_number()) {
    percent.push_back(ahead.number());
    const bool more =
        (ahead.at_symbol('-') || ahead.at_symbol('/') || ahead.at_symbol(',')) && ahead.at_number(1);
    if (!more) break;
    ahead.next();
  }
  if (percent.empty() || !(ahead.take_symbol('%') || ahead.take("percent"))) return false;
  domain::ShareOf of = domain::ShareOf::OneRepBest;
  ahead.take("of");
  ahead.take_any({"your", "the", "my"});
  if (ahead.take_any({"today", "todays best", "todays", "today best", "that", "it"}))
    of = domain::ShareOf::TodayBest;
  ahead.take_any({"1rm", "1 rm", "one rep best", "best", "max", "one rep max", "weight", "single"});
  if (percent.front() <= 0 || percent.front() > 150)
    session.remarks.add({"too-heavy",
                         ahead.span_from(from),
                         fmt::format("`{}` of a best: a share runs from 1 to 150 percent",
                                     session.kept(ahead.span_from(from))),
                         "write the percentage of the one-rep best",
                         {}});
  entry.item.load_share = domain::LoadShare{percent, of};
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
bool read_pace(Session& session, Cursor& cursor, Entry& entry, bool behind_at) {
  Cursor ahead = cursor;
  const std::size_t from = ahead.position();
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
  (void)from;
  cursor = ahead;
  return true;
}

void set_loads(Entry& entry, std::vector<double> loads, LoadUnit unit, const Span& span) {
  entry.loads = std::move(loads);
  entry.load_unit = unit;
  entry.loads_span = span;
}

/// `2x15/10`: two implements. Nothing if the work has no amount yet.
bool read_pair_of_bells(Session& session, Cursor& cursor, Entry& entry) {
  if (!cursor.at_number() || cursor.peek().value != 2 || !cursor.at_symbol(times_sign, 1) ||
      !cursor.at_number(2))
    return false;
  Cursor ahead = cursor;
  ahead.next(2);
  LoadUnit unit = LoadUnit::Unsaid;
  const std::size_t from = ahead.position();
  std::vector<double> loads = take_load_numbers(ahead, unit);
  if (loads.empty()) return false;
  entry.item.implements = 2;
  set_loads(entry, std::move(loads), unit, ahead.span_from(from));
  (void)session;
  cursor = ahead;
  return true;
}

bool read_at(Session& session, Cursor& cursor, Entry& entry) {
  if (!cursor.at_symbol('@')) return false;
  Cursor ahead = cursor;
  ahead.next();
  const std::size_t from = ahead.position();
  if (read_share_of_best(session, ahead, entry) || read_effort(session, ahead, entry) ||
      read_pair_of_bells(session, ahead, entry) || read_pace(session, ahead, entry, true)) {
    cursor = ahead;
    return true;
  }
  Cursor tempo = cursor;
  if (read_tempo(session, tempo, entry)) {
    cursor = tempo;
    return true;
  }
  LoadUnit unit = LoadUnit::Unsaid;
  std::vector<double> loads = take_load_numbers(ahead, unit);
  if (loads.empty()) {
    const std::size_t words = ahead.position();
    while (ahead.at_word()) ahead.next();
    if (ahead.position() == words) {
      ahead.next();
    } else {
      if (ahead.span_of(words, ahead.position()).end > 0 &&
          session.kept(ahead.span_of(words, ahead.position())) == "your box")
        entry.item.personal_version = false;
      add_note(entry, session.kept(ahead.span_of(from - 1, ahead.position())));
    }
    cursor = ahead;
    return true;
  }
  const bool effort = loads.size() == 1 && loads.front() <= 10 && unit == LoadUnit::Unsaid &&
                      (entry.sets || session.draft().said.sets || session.draft().said.superset);
  if (effort) {
    entry.item.effort = Range{loads.front(), loads.front()};
    const std::string number = session.kept(ahead.span_from(from));
    session.remarks.add({"load-or-effort",
                         ahead.span_from(from),
                         fmt::format("`@{}` after sets was read as an effort of {}", number, number),
                         "write the unit if it is a load",
                         {number + " kg"}});
  } else {
    set_loads(entry, std::move(loads), unit, ahead.span_from(from));
  }
  cursor = ahead;
  return true;
}

bool read_load_step(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  std::optional<base::Mass> plus;
  if (ahead.take_symbol('+') || ahead.take("plus")) {
    const auto number = ahead.take_number();
    if (!number) return false;
    const LoadUnit unit = take_load_unit(ahead);
    plus = mass_of(*number, unit, session.house.mass_unit == domain::MassUnit::Pounds);
    if (!ahead.take_any({"on", "over", "from", "than"}) && unit == LoadUnit::Unsaid) return false;
  } else if (!ahead.take_symbol('>') &&
             !ahead.take_any({"above", "more than", "heavier than", "beat", "over", "up on"})) {
    return false;
  }
  const std::size_t words = ahead.position();
  if (!ahead.take_any({"last wk", "last week", "last weeks", "last time", "lw", "last wks"})) return false;
  ahead.take_any({"load", "weight"});
  (void)words;
  if (!plus && ahead.at_symbol('+') && ahead.at_number(1)) {
    ahead.next();
    const double number = ahead.number();
    plus = mass_of(number, take_load_unit(ahead), session.house.mass_unit == domain::MassUnit::Pounds);
  }
  entry.item.load_step = domain::LoadStep{plus};
  cursor = ahead;
  return true;
}

/// `24"/20"`, `60/50 cm`, `20 in`: the height of a box, never a load.
bool read_height(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  ahead.take_symbol('@');
  std::vector<double> heights;
  double metres = 0;
  while (ahead.at_number()) {
    heights.push_back(ahead.number());
    if (ahead.take_symbol('"') || ahead.take_any({"in", "inch", "inches"})) metres = 0.0254;
    if (ahead.take("cm")) metres = 0.01;
    if (!ahead.at_symbol('/') || !ahead.at_number(1) || heights.size() > 2) break;
    ahead.next();
  }
  const domain::Movement* movement = movement_of(session, entry);
  const bool box = movement != nullptr && (movement->category == "box" ||
                                           std::ranges::any_of(movement->equipment, [](const auto& id) {
                                             return id.text == "box" || id.text == "wall-target";
                                           }));
  if (heights.empty() || metres == 0 || !box) return false;
  ahead.take("box");
  entry.item.heights.clear();
  for (const double height : heights) entry.item.heights.push_back(base::Length::from_si(height * metres));
  cursor = ahead;
  return true;
}

/// A naked `24/16`, `60/40 kg` or a single number that nothing else can be.
bool read_load(Session& session, Cursor& cursor, Entry& entry) {
  if (!entry.loads.empty() || !cursor.at_number()) return false;
  Cursor ahead = cursor;
  LoadUnit unit = LoadUnit::Unsaid;
  std::vector<double> loads = take_load_numbers(ahead, unit);
  if (unit == LoadUnit::Unsaid) {
    if (!heavy_kit(session, entry)) return false;
    Cursor work = cursor;
    Remarks silent;
    const auto numbers = take_numbers(work, silent);
    const bool next_item = numbers && (numbers->unit || session.names.find(work) || work.at_word());
    const bool known_word =
        ahead.at_any({"each", "then", "rest", "for", "x", "sync", "and", "together", "e", "in", "or"});
    if (next_item && !known_word) return false;
    if (ahead.at_symbol(')') ||
        (ahead.at_symbol('.') && !(ahead.done()) && (ahead.at_number(1) || ahead.at_word(1))))
      return false;
    if (ahead.at_symbol(times_sign) || ahead.at_symbol('%') || ahead.at_symbol('\'') || ahead.at_symbol(':'))
      return false;
    const domain::Movement* movement = movement_of(session, entry);
    const bool loaded = movement == nullptr || movement->typical_load.has_value();
    if (loads.size() == 1 && (!loaded || !(entry.amount || session.draft().gives_amounts()))) return false;
    if (!loaded && loads.size() != 2) return false;
  }
  if (loads.size() == 2 && loads[0] == loads[1] && unit == LoadUnit::Unsaid && !entry.amount) return false;
  set_loads(entry, std::move(loads), unit, ahead.span_from(cursor.position()));
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
  return false;
}

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
  if (cursor.take_any({"in remaining time", "in the remaining time", "in the time left", "in time left",
                       "rest of the minute", "to the end of the minute", "reps", "in remainder",
                       "in the remainder", "rest of the time"}))
    return true;
  const bool after =
      cursor.take_any({"after each set", "after each round", "after every set", "after every round",
                       "each set", "each round", "between sets", "every round", "every set"});
  if (after || cursor.take_any({"unbroken", "ub", "alt", "alternating", "touch and go", "tng", "to failure",
                                "total reps", "slow", "strict"})) {
    add_note(entry, session.kept(cursor.span_from(from)));
    return true;
  }
  if (cursor.take_any({"pair of", "two bells", "two kbs", "two dbs", "double bells"})) {
    entry.item.implements = 2;
    return true;
  }
  return false;
}

/// `or 3x singles`, `or 90 singles`, `or ring rows`, `scale: pull-up / ring row`.
bool read_options(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  const bool scale = ahead.take_any({"scale", "scaled", "scale to", "scaling", "scales", "easier"});
  if (!scale && !ahead.take("or")) return false;
  ahead.take_symbol(':');
  domain::Scale found = entry.item.scale.value_or(domain::Scale{});
  const std::size_t before = found.options.size();
  while (!ahead.done()) {
    Cursor option = ahead;
    double factor = 1;
    if (option.at_number() && option.at_symbol(times_sign, 1)) {
      factor = option.number();
      option.next();
    } else if (const auto amount = entry.amount ? entry.amount->plain() : std::nullopt;
               amount && *amount > 0 && option.at_number()) {
      factor = option.number() / *amount;
    }
    const std::size_t from = option.position();
    while (!option.done() && (option.at_word() || option.at_symbol('-')) && !option.at("or") &&
           !option.at("then"))
      option.next();
    if (option.position() == from) break;
    const auto id = option_of(session, option.part(from, option.position()), entry.item.movement);
    if (!id) {
      if (!scale) break;
      const Span span = option.span_of(from, option.position());
      remark_unknown(session, span, session.kept(span));
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
  if (!entry.amount && !session.draft().gives_amounts() && cursor.at_number() &&
      cursor.at_symbol(times_sign, 1))
    return false;
  return read_height(session, cursor, entry) || read_at(session, cursor, entry) ||
         read_load_step(session, cursor, entry) || read_sides(session, cursor, entry) ||
         read_share_of_best(session, cursor, entry) || read_effort(session, cursor, entry) ||
         read_tempo(session, cursor, entry) || read_pair_of_bells(session, cursor, entry) ||
         read_load(session, cursor, entry) || read_pace(session, cursor, entry, false) ||
         read_share(session, cursor, entry) || read_version(session, cursor, entry) ||
         read_second_station(session, cursor, entry) || read_small_words(session, cursor, entry) ||
         read_options(session, cursor, entry);
}

/// `easy talk pace:`, `easy:`: how to go at the work below.
bool read_pace_words(Session& session, Cursor& cursor) {
  Cursor ahead = cursor;
  Entry loose;
  if (!read_pace(session, ahead, loose, true)) return false;
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

/// `bag carry 200 m, 10 or 6 kg`: loads behind a comma.
bool read_loads_behind(Session& session, Cursor& cursor) {
  if (!cursor.at_number()) return false;
  Entry* last = session.draft().last_entry();
  if (last == nullptr || last->line != session.line_index || !last->loads.empty()) return false;
  Cursor ahead = cursor;
  LoadUnit unit = LoadUnit::Unsaid;
  std::vector<double> loads = take_load_numbers(ahead, unit);
  if (unit == LoadUnit::Unsaid || session.names.find(ahead)) return false;
  set_loads(*last, std::move(loads), unit, ahead.span_from(cursor.position()));
  cursor = ahead;
  return true;
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
  session.draft().texts.push_back(session.kept(numbers->span));
  ahead.take_any({"any order", "in any order", "your partition", "own partition", "partition as you like"});
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
  } else if (read_pace(session, ahead, loose, false) ||
             (ahead.at_symbol('@') && (ahead.next(), read_pace(session, ahead, loose, true)))) {
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
