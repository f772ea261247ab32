#include <fmt/format.h>

#include <algorithm>

#include "board/assembly.hpp"
#include "board/movement_choice.hpp"

namespace repwright::board {
namespace {

using domain::Amount;
using domain::Item;
using domain::SetAmount;
using domain::Unit;

const domain::Movement* movement_of(const Session& session, const Item& item) {
  return item.movement ? session.names.movement(*item.movement) : nullptr;
}

bool counted(const domain::Movement* movement) {
  return movement == nullptr || movement->pace.contains(Unit::Reps) || movement->default_unit == Unit::Reps;
}

/// `24/16` as `16/24`; nothing if the words are not two numbers and a slash.
std::vector<std::string> the_other_way_round(const Session& session, const domain::Span& span) {
  const std::string pair = session.seen(span);
  const std::size_t slash = pair.find('/');
  const bool plain = pair.find_first_not_of("0123456789.,/") == std::string::npos;
  if (!plain || slash == std::string::npos || pair.find('/', slash + 1) != std::string::npos) return {};
  return {pair.substr(slash + 1) + "/" + pair.substr(0, slash)};
}

/// The loads with their unit written out, the house's first.
std::vector<std::string> with_each_unit(const Session& session, const Entry& entry, bool pounds) {
  const std::string loads = session.seen(entry.loads_span);
  std::vector<std::string> written{loads + " kg", loads + " lb"};
  if (pounds) std::swap(written[0], written[1]);
  return written;
}

Amount amount_of_slashes(Session& session, Entry& entry, const Numbers& numbers, const EntryRules& rules) {
  const std::vector<double> values = numbers.plain_values();
  if (values.empty()) return domain::Max{};
  if (rules.block.levels.size() == values.size()) return domain::PerLevel{values};
  if (values.size() == 2 && values[0] == values[1]) {
    entry.both_sides = true;
    if (entry.side_words.empty()) entry.side_words = "each side";
    return values[0];
  }
  if (values.size() == 2) {
    session.remarks.add_once(
        {"tier-order", numbers.span,
         fmt::format("`{}`: {}", session.kept(numbers.span),
                     session.house.tiers == domain::TierRule::BySex
                         ? "the first is for m, the second for f; x or nothing takes the lighter"
                         : "the first is the harder, the second the easier choice"),
         "the order is a rule of the house", the_other_way_round(session, numbers.span)});
    return domain::Tiers{values[0], values[1]};
  }
  session.remarks.add({"slash-without-levels", numbers.span,
                       fmt::format("`{}`: no line above names {} levels, the first number counts",
                                   session.kept(numbers.span), values.size()),
                       "name the levels in a line above: A / B / C"});
  return values[0];
}

Amount amount_of_dashes(const Numbers& numbers) {
  const std::vector<double> plain = numbers.plain_values();
  if (numbers.open) {
    if (plain.empty()) return domain::Max{};
    const double step = plain.size() > 1 ? plain[1] - plain[0] : plain[0];
    return domain::Climb{plain[0], step};
  }
  if (plain.size() == 2 && plain[1] > plain[0]) return domain::Range{plain[0], plain[1]};
  return domain::PerSet{numbers.values};
}

Amount amount_of(Session& session, Entry& entry, const Numbers& numbers, const EntryRules& rules) {
  if (numbers.joined == Joined::Slashes) return amount_of_slashes(session, entry, numbers, rules);
  if (numbers.joined == Joined::Dashes) return amount_of_dashes(numbers);
  return std::visit([](const auto& value) -> Amount { return value; }, numbers.values.front());
}

void double_amount(Amount& amount) {
  if (auto* number = std::get_if<double>(&amount)) *number *= 2;
  if (auto* least = std::get_if<domain::AtLeast>(&amount)) least->count *= 2;
  if (auto* range = std::get_if<domain::Range>(&amount)) *range = {2 * range->min, 2 * range->max};
  if (auto* climb = std::get_if<domain::Climb>(&amount)) *climb = {2 * climb->start, 2 * climb->step};
  if (auto* tiers = std::get_if<domain::Tiers>(&amount)) *tiers = {2 * tiers->first, 2 * tiers->second};
  if (auto* levels = std::get_if<domain::PerLevel>(&amount))
    for (double& value : levels->amounts) value *= 2;
  if (auto* sets = std::get_if<domain::PerSet>(&amount))
    for (SetAmount& value : sets->amounts) {
      if (auto* number = std::get_if<double>(&value)) *number *= 2;
      if (auto* least = std::get_if<domain::AtLeast>(&value)) least->count *= 2;
    }
}

/// The line without its words for sides, for who meant the amount of both together.
std::vector<std::string> counted_together(const Session& session, const Entry& entry) {
  std::string line = session.seen(entry.span);
  const std::size_t at = entry.side_words.empty() ? std::string::npos : line.rfind(entry.side_words);
  if (at == std::string::npos || at == 0) return {};
  std::size_t from = at;
  std::size_t to = at + entry.side_words.size();
  if (line[from - 1] == '(' && to < line.size() && line[to] == ')') {
    --from;
    ++to;
  }
  while (from > 0 && line[from - 1] == ' ') --from;
  return {line.erase(from, to - from)};
}

void settle_sides(Session& session, Entry& entry, Item& item) {
  if (!entry.both_sides) return;
  const domain::Movement* movement = movement_of(session, item);
  const bool per_side = movement == nullptr || movement->counts_per_side();
  if (per_side || std::holds_alternative<domain::Max>(item.amount) || !session.house.legs_counted_together) {
    item.each_side = true;
    return;
  }
  const std::string written = entry.amount ? session.kept(entry.amount->span) : std::string();
  double_amount(item.amount);
  const std::string note =
      written.empty() ? entry.side_words : fmt::format("{} {}", written, entry.side_words);
  item.note = item.note.empty() ? note : note + "; " + item.note;
  session.remarks.add_once(
      {"both-sides", entry.span, fmt::format("`{}` was counted for both sides", session.kept(entry.span)),
       "counting both legs together is a rule of the house", counted_together(session, entry)});
}

Unit settled_unit(Session& session, const Entry& entry, const Item& item, const EntryRules& rules) {
  if (entry.amount && entry.amount->unit) return *entry.amount->unit;
  if (entry.unit) return *entry.unit;
  const domain::Movement* movement = movement_of(session, item);
  if (rules.draft.said.for_distance && std::holds_alternative<domain::Max>(item.amount)) return Unit::Metres;
  return counted(movement) ? Unit::Reps : movement->default_unit;
}

/// `2 m plank`: where metres make no sense and seconds do, m is minutes.
void minutes_for_metres(Session& session, const Entry& entry, Item& item) {
  const domain::Movement* movement = movement_of(session, item);
  if (movement == nullptr || item.unit != Unit::Metres || movement->pace.contains(Unit::Metres)) return;
  const bool hold = movement->pace.contains(Unit::Seconds);
  if (!hold) {
    session.remarks.add(
        {"unit-of-movement", entry.span,
         fmt::format("`{}`: {} is not counted in metres", session.kept(entry.span), movement->name),
         "mend the unit"});
    return;
  }
  item.unit = Unit::Seconds;
  if (auto* number = std::get_if<double>(&item.amount)) *number *= 60;
  const domain::Span span = entry.amount ? entry.amount->span : entry.span;
  const std::string seen = session.seen(span);
  std::vector<std::string> repairs;
  if (const std::size_t m = seen.rfind('m'); m != std::string::npos && m + 1 == seen.size())
    repairs.push_back(seen + "in");
  session.remarks.add({"minutes-or-metres", span,
                       fmt::format("`{}` beside a hold was read as minutes", session.kept(span)),
                       "write min or m for metres", std::move(repairs)});
}

void check_amount(Session& session, const Entry& entry, const Item& item) {
  const domain::Span span = entry.amount ? entry.amount->span : entry.span;
  const auto each = [&](auto check) {
    if (const auto* number = std::get_if<double>(&item.amount)) check(*number);
    if (const auto* sets = std::get_if<domain::PerSet>(&item.amount))
      for (const SetAmount& value : sets->amounts)
        if (const auto* number = std::get_if<double>(&value)) check(*number);
    if (const auto* levels = std::get_if<domain::PerLevel>(&item.amount))
      for (const double number : levels->amounts) check(number);
    if (const auto* tiers = std::get_if<domain::Tiers>(&item.amount)) {
      check(tiers->first);
      check(tiers->second);
    }
    if (const auto* range = std::get_if<domain::Range>(&item.amount)) check(range->min);
  };
  bool nothing = false;
  bool many = false;
  const double most = item.unit == Unit::Metres ? 200000 : item.unit == Unit::Seconds ? 36000 : 10000;
  each([&](double number) {
    nothing |= number <= 0;
    many |= number > most;
  });
  if (nothing)
    session.remarks.add({"no-amount", span,
                         fmt::format("`{}`: an amount is more than nothing", session.kept(span)),
                         "write how much"});
  if (many)
    session.remarks.add({"too-many", span, fmt::format("`{}`: no session holds so much", session.kept(span)),
                         "mend the amount"});
  const domain::Movement* movement = movement_of(session, item);
  if (movement != nullptr && item.unit == Unit::Kilocalories && !movement->pace.contains(Unit::Kilocalories))
    session.remarks.add({"no-kilocalories", entry.span,
                         fmt::format("`{}`: only a machine shows kilocalories, {} does not",
                                     session.kept(entry.span), movement->name),
                         "write repetitions, or name the machine"});
}

void settle_loads(Session& session, const Entry& entry, Item& item, const EntryRules& rules) {
  if (entry.loads.empty()) return;
  const bool pounds = session.house.mass_unit == domain::MassUnit::Pounds;
  domain::Loads loads;
  for (const double number : entry.loads) loads.masses.push_back(mass_of(number, entry.load_unit, pounds));
  if (std::ranges::any_of(loads.masses, [](base::Mass m) { return m.si() <= 0 || m.si() > 600; }))
    session.remarks.add(
        {"too-heavy", entry.span,
         fmt::format("`{}`: a load is more than nothing and at most 600 kg", session.kept(entry.span)),
         "mend the load"});
  if (entry.load_unit == LoadUnit::Unsaid)
    session.remarks.add_once({"mass-unit", entry.loads_span,
                              fmt::format("loads without a unit are {}", pounds ? "pounds" : "kilograms"),
                              "the unit is a rule of the house", with_each_unit(session, entry, pounds)});
  loads.by_level = rules.block.levels.size() == loads.masses.size() && loads.masses.size() > 1;
  if (!loads.by_level && loads.masses.size() > 2) {
    session.remarks.add({"slash-without-levels", entry.span,
                         fmt::format("`{}`: no line above names {} levels, the first two loads count",
                                     session.kept(entry.span), loads.masses.size()),
                         "name the levels in a line above: A / B / C"});
    loads.masses.resize(2);
  }
  if (!loads.by_level && loads.masses.size() == 2)
    session.remarks.add_once(
        {"tier-order", entry.loads_span,
         fmt::format("`{}`: {}", session.kept(entry.loads_span),
                     session.house.tiers == domain::TierRule::BySex
                         ? "the first load is for m, the second for f; x or nothing takes the lighter"
                         : "the first is the heavier, the second the lighter choice"),
         "the order is a rule of the house", the_other_way_round(session, entry.loads_span)});
  item.loads = std::move(loads);
}

void check_share_of_best(Session& session, const Entry& entry, const Item& item) {
  if (!item.load_share) return;
  const domain::Movement* movement = movement_of(session, item);
  const bool lift = movement != nullptr ? movement->typical_load.has_value() : !item.free_text.empty();
  const bool bodyweight_best = movement != nullptr && movement->category != "run" &&
                               movement->category != "ergometer" && movement->default_unit == Unit::Reps;
  if (lift || (bodyweight_best && item.load_share->of == domain::ShareOf::TodayBest)) return;
  session.remarks.add(
      {"share-of-nothing", entry.span,
       movement == nullptr
           ? fmt::format("`{}`: a percentage needs a lift that it is of", session.kept(entry.span))
           : fmt::format("`{}`: {} has no one-rep best to take a percentage of", session.kept(entry.span),
                         movement->name),
       "name the lift, or write an effort or a pace"});
}

}  // namespace

domain::StepId Places::item(const domain::Span& span) {
  items.push_back(span);
  return {static_cast<int>(items.size()) - 1};
}

domain::BlockId Places::block(const domain::Span& span) {
  blocks.push_back(span);
  return {static_cast<int>(blocks.size()) - 1};
}

Item finish_entry(Session& session, Places& places, Entry entry, const EntryRules& rules) {
  if (!entry.amount && rules.draft.scheme) entry.amount = rules.draft.scheme;
  settle_lift(session, entry,
              {.sets_alone = rules.sets && !rules.draft.said.quiet && (rules.one || entry.letter != 0),
               .build = rules.draft.said.build});
  Item item = entry.item;
  item.step = places.item(entry.span);
  const domain::Movement* movement = movement_of(session, item);
  if (entry.max_in_time && entry.unit && rules.block.work) {
    item.amount = domain::Max{};
    item.unit = *entry.unit;
  } else if (entry.amount) {
    item.amount = amount_of(session, entry, *entry.amount, rules);
    item.unit = settled_unit(session, entry, item, rules);
  } else if (rules.slots && rules.block.work) {
    item.amount = rules.block.work->si();
    item.unit = Unit::Seconds;
    // The station takes its time; what its machine is to show stays beside it.
    if (!entry.shown_in.empty()) item.note += (item.note.empty() ? "" : "; ") + entry.shown_in;
  } else if (rules.as_many || rules.block.work) {
    item.amount = domain::Max{};
    const bool hold = movement != nullptr && !counted(movement) && movement->default_unit == Unit::Seconds;
    if (hold && rules.block.work) item.amount = rules.block.work->si();
    item.unit = settled_unit(session, entry, item, rules);
  } else {
    item.amount = 1.0;
    item.unit = settled_unit(session, entry, item, rules);
    session.remarks.add({"one-each", entry.span,
                         fmt::format("`{}` has no amount and was counted as one", session.kept(entry.span)),
                         "write how many"});
  }
  minutes_for_metres(session, entry, item);
  settle_sides(session, entry, item);
  settle_loads(session, entry, item, rules);
  check_amount(session, entry, item);
  check_share_of_best(session, entry, item);
  if (item.scale && item.scale->by_level && rules.block.levels.size() != item.scale->options.size())
    item.scale->by_level = false;
  const bool partner_for_time = !rules.block.team_sizes.empty() && !rules.block.duration &&
                                !rules.block.work_mode && !rules.draft.said.relay;
  if (partner_for_time && !item.share) item.share = domain::Share::Total;
  if (item.share == domain::Share::Sync) item.mode.reset();
  return item;
}

std::vector<Item> finish_entries(Session& session, Places& places, const std::vector<Entry>& entries,
                                 const EntryRules& rules) {
  std::vector<Item> items;
  items.reserve(entries.size());
  for (const Entry& entry : entries)
    if (!entry.tail) items.push_back(finish_entry(session, places, entry, rules));
  for (const Entry& entry : entries)
    if (entry.tail) items.push_back(finish_entry(session, places, entry, rules));
  return items;
}

}  // namespace repwright::board
