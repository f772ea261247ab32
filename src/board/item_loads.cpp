#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "board/item_details.hpp"
#include "board/movement_choice.hpp"

/// How heavy: loads, shares of a best, steps above last week, heights of a box.
namespace repwright::board {
namespace {

using domain::Range;

bool heavy_kit(const Session& session, const Entry& entry) {
  const domain::Movement* movement = movement_of(session, entry);
  if (movement == nullptr) return entry.item.movement == std::nullopt;
  return movement->typical_load.has_value() || !movement->equipment.empty();
}

/// `15/10 plate`, `@60 kg barbell`: the word for what weighs so much, in the singular, where nothing follows
/// that it could belong to. Empty if there is none.
std::string take_load_word(Cursor& cursor) {
  using Word = std::pair<std::string_view, std::string_view>;
  constexpr std::array words{Word{"plate", "plate"},
                             Word{"plates", "plate"},
                             Word{"bumper", "plate"},
                             Word{"bumper plate", "plate"},
                             Word{"bar", "barbell"},
                             Word{"barbell", "barbell"},
                             Word{"db", "dumbbell"},
                             Word{"dbs", "dumbbell"},
                             Word{"dumbbell", "dumbbell"},
                             Word{"dumbbells", "dumbbell"},
                             Word{"kb", "kettlebell"},
                             Word{"kbs", "kettlebell"},
                             Word{"kettlebell", "kettlebell"},
                             Word{"kettlebells", "kettlebell"},
                             Word{"ball", "ball"},
                             Word{"med ball", "ball"},
                             Word{"sandbag", "sandbag"},
                             Word{"bag", "sandbag"}};
  std::size_t reach = 0;
  std::string_view found;
  for (const auto& [written, word] : words)
    if (const std::size_t marks = cursor.reach(written); marks > reach) {
      reach = marks;
      found = word;
    }
  if (reach == 0) return {};
  Cursor behind = cursor;
  behind.next(reach);
  const bool ends = !behind.at_word() || parts_names(behind.peek().text);
  if (!ends) return {};
  cursor = behind;
  return std::string(found);
}

void set_loads(Entry& entry, std::vector<double> loads, LoadUnit unit, const domain::Span& span) {
  entry.loads = std::move(loads);
  entry.load_unit = unit;
  entry.loads_span = span;
}

}  // namespace

std::vector<double> take_load_numbers(Cursor& cursor, LoadUnit& unit) {
  std::vector<double> loads;
  const auto first = cursor.take_number();
  if (!first) return loads;
  loads.push_back(*first);
  unit = take_load_unit(cursor);
  std::size_t of_unit = unit == LoadUnit::Unsaid ? 0 : 1;  // how many loads the unit is known of
  bool again_in_other = false;
  while ((cursor.at_symbol('/') || cursor.at("or")) && cursor.at_number(1) && loads.size() < 6) {
    cursor.next();
    loads.push_back(cursor.number());
    const LoadUnit next = take_load_unit(cursor);
    again_in_other |= of_unit > 0 && next != LoadUnit::Unsaid && next != unit;
    if (next == LoadUnit::Unsaid || again_in_other) continue;
    unit = next;
    of_unit = loads.size();
  }
  if (again_in_other) loads.resize(of_unit);  // `24 kg/53 lb`: one load in both units
  return loads;
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

/// `2x15/10`: two implements. Nothing if the work has no amount yet.
bool read_pair_of_bells(Session&, Cursor& cursor, Entry& entry) {
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
  cursor = ahead;
  return true;
}

/// `@ last wk + 2.5 kg`, `@ last week's weight`.
bool read_step_from_last(Session& session, Cursor& cursor, Entry& entry) {
  Cursor ahead = cursor;
  if (!ahead.take_any({"last wk", "last week", "last weeks", "last time", "lw", "last wks"})) return false;
  ahead.take_any({"load", "weight"});
  if (!(ahead.at_symbol('+') || ahead.at("plus")) || !ahead.at_number(1)) return false;
  ahead.next();
  const double number = ahead.number();
  const bool pounds = session.house.mass_unit == domain::MassUnit::Pounds;
  entry.item.load_step = domain::LoadStep{mass_of(number, take_load_unit(ahead), pounds)};
  cursor = ahead;
  return true;
}

bool read_at(Session& session, Cursor& cursor, Entry& entry) {
  if (!cursor.at_symbol('@')) return false;
  Cursor ahead = cursor;
  ahead.next();
  if (read_step_from_last(session, ahead, entry)) {
    cursor = ahead;
    return true;
  }
  const std::size_t from = ahead.position();
  if (read_share_of_best(session, ahead, entry) || read_effort(session, ahead, entry) ||
      read_pair_of_bells(session, ahead, entry) || read_pace(session, ahead, entry, Announced::Yes)) {
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
    entry.load_word = take_load_word(ahead);
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
  if (!ahead.take_any({"last wk", "last week", "last weeks", "last time", "lw", "last wks"})) return false;
  ahead.take_any({"load", "weight"});
  if (!plus && ahead.at_symbol('+') && ahead.at_number(1)) {
    ahead.next();
    const double number = ahead.number();
    plus = mass_of(number, take_load_unit(ahead), session.house.mass_unit == domain::MassUnit::Pounds);
  }
  entry.item.load_step = domain::LoadStep{plus};
  cursor = ahead;
  return true;
}

/// `box jumps 24/20`, `60/50`: what nobody loads is so high, in inches or centimetres; 0 where it may be a
/// load.
double unit_of_naked_heights(const domain::Movement* movement, const std::vector<double>& heights) {
  if (movement == nullptr || movement->category != "box" || movement->typical_load || heights.size() != 2)
    return 0;
  const auto within = [&](double least, double most) {
    return std::ranges::all_of(heights, [&](double height) { return height >= least && height <= most; });
  };
  if (within(12, 36)) return 0.0254;
  return within(40, 120) ? 0.01 : 0;
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
  if (metres == 0) metres = unit_of_naked_heights(movement, heights);
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

/// `pull-ups +10 kg`: what is carried on top, but not `+2.5 kg each set`.
bool at_added_load(const Cursor& cursor) {
  if (!cursor.at_symbol('+') || !cursor.at_number(1)) return false;
  Cursor ahead = cursor;
  ahead.next(2);
  return take_load_unit(ahead) != LoadUnit::Unsaid &&
         !ahead.at_any({"each", "per", "every", "on", "over", "from", "than", "a"});
}

/// A naked `24/16`, `60/40 kg` or a single number that nothing else can be.
bool read_load(Session& session, Cursor& cursor, Entry& entry) {
  if (!entry.loads.empty()) return false;
  Cursor ahead = cursor;
  if (at_added_load(cursor)) ahead.next();
  if (!ahead.at_number()) return false;
  LoadUnit unit = LoadUnit::Unsaid;
  std::vector<double> loads = take_load_numbers(ahead, unit);
  const domain::Span loads_span = ahead.span_from(cursor.position());
  std::string load_word = entry.amount || session.draft().gives_amounts() ? take_load_word(ahead) : "";
  if (unit == LoadUnit::Unsaid && load_word.empty()) {
    if (!heavy_kit(session, entry)) return false;
    Cursor work = cursor;
    Remarks silent;
    const auto numbers = take_numbers(work, silent);
    const bool next_item = numbers && (numbers->unit || session.names.find(work) || work.at_word());
    const bool known_word = ahead.at_any({"each", "then", "rest", "for", "x", "sync", "and", "together", "e",
                                          "in", "or", "total", "shared", "split"});
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
  set_loads(entry, std::move(loads), unit, loads_span);
  entry.load_word = std::move(load_word);
  cursor = ahead;
  return true;
}

/// `bag carry 200 m, 10 or 6 kg`: loads behind a comma.
bool read_loads_behind(Session& session, Cursor& cursor) {
  if (!cursor.at_number()) return false;
  Entry* last = session.draft().last_entry();
  if (last == nullptr || last->line != session.line_index || !last->loads.empty()) return false;
  Cursor ahead = cursor;
  Entry pair;
  if (last->amount && read_pair_of_bells(session, ahead, pair) && pair.load_unit != LoadUnit::Unsaid &&
      !session.names.find(ahead)) {
    last->item.implements = pair.item.implements;
    set_loads(*last, std::move(pair.loads), pair.load_unit, pair.loads_span);
    cursor = ahead;
    return true;
  }
  ahead = cursor;
  LoadUnit unit = LoadUnit::Unsaid;
  std::vector<double> loads = take_load_numbers(ahead, unit);
  if (unit == LoadUnit::Unsaid || session.names.find(ahead)) return false;
  set_loads(*last, std::move(loads), unit, ahead.span_from(cursor.position()));
  cursor = ahead;
  return true;
}

}  // namespace repwright::board
