#include "board/chalk_item.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/overloaded.hpp"
#include "board/chalk_numbers.hpp"
#include "domain/spoken.hpp"

namespace repwright::board {
namespace {

using base::Overloaded;
using domain::Item;
using domain::Unit;

std::string set_amount(const domain::SetAmount& amount) {
  return std::visit(Overloaded{
                        [](double count) { return chalk_number(count); },
                        [](const domain::AtLeast& open) { return chalk_number(open.count) + "+"; },
                        [](const domain::Max& max) {
                          return max.short_of > 0 ? fmt::format("max-{}", max.short_of) : std::string("max");
                        },
                    },
                    amount);
}

template <class Values, class Write>
std::string joined(const Values& values, char link, Write write) {
  std::string text;
  for (const auto& value : values) {
    if (!text.empty()) text += link;
    text += write(value);
  }
  return text;
}

/// The numbers, without the unit.
std::string amount_text(const domain::Amount& amount) {
  return std::visit(Overloaded{
                        [](double count) { return chalk_number(count); },
                        [](const domain::AtLeast& open) { return set_amount(open); },
                        [](const domain::Max& max) { return set_amount(max); },
                        [](const domain::Range& range) {
                          return fmt::format("{}-{}", chalk_number(range.min), chalk_number(range.max));
                        },
                        [](const domain::PerSet& sets) { return joined(sets.amounts, '-', set_amount); },
                        [](const domain::Climb& climb) {
                          return fmt::format("{}-{}-{}-...", chalk_number(climb.start),
                                             chalk_number(climb.start + climb.step),
                                             chalk_number(climb.start + 2 * climb.step));
                        },
                        [](const domain::Tiers& tiers) {
                          return fmt::format("{}/{}", chalk_number(tiers.first), chalk_number(tiers.second));
                        },
                        [](const domain::PerLevel& each) { return joined(each.amounts, '/', chalk_number); },
                        [](const domain::WhileWorking&) { return std::string(); },
                    },
                    amount);
}

/// A list with dashes before a name would be the counts of every line below.
bool name_comes_first(const Item& item) {
  return std::holds_alternative<domain::PerSet>(item.amount) ||
         std::holds_alternative<domain::Climb>(item.amount) ||
         std::holds_alternative<domain::Range>(item.amount);
}

std::string with_unit(const Item& item) {
  std::string numbers = amount_text(item.amount);
  switch (item.unit) {
    case Unit::Reps:
      return numbers;
    case Unit::Metres:
      return numbers + " m";
    case Unit::Kilocalories:
      return numbers + " cal";
    case Unit::Seconds:
      break;
  }
  const auto* seconds = std::get_if<double>(&item.amount);
  const bool clock = seconds != nullptr && *seconds >= 120 && *seconds == static_cast<int>(*seconds);
  if (!clock) return numbers + " s";
  const auto whole = static_cast<int>(*seconds);
  return fmt::format("{}:{:02}", whole / 60, whole % 60);
}

std::string tempo_text(const domain::Tempo& tempo, domain::TempoOrder order) {
  const domain::Tempo written = order == domain::TempoOrder::DownPauseUpTop
                                    ? tempo
                                    : domain::Tempo{tempo[2], tempo[3], tempo[0], tempo[1]};
  return joined(written, '-',
                [](const std::optional<int>& beat) { return beat ? fmt::format("{}", *beat) : "X"; });
}

std::string range_text(const domain::Range& range) {
  if (range.min == range.max) return chalk_number(range.min);
  return fmt::format("{}-{}", chalk_number(range.min), chalk_number(range.max));
}

}  // namespace

bool Chalk::is_read_as(const std::string& words, const domain::MovementId& id,
                       std::optional<Unit> unit) const {
  const Lexed lexed = lex(words);
  const auto named = names_.find(Cursor(lexed, 0, lexed.tokens.size()));
  if (!named || named->marks != lexed.tokens.size() || named->class_word || named->slip ||
      !named->trailing.empty())
    return false;
  // A plain pull-up may mean the swinging one in this house.
  if (house_.pull_up_may_swing && id.text == "pull-up" && words.find("strict") == std::string::npos)
    return false;
  if (named->kit != Kit::Unsaid) return false;
  std::vector<domain::MovementId> meant = named->meaning.movements;
  if (!named->meaning.ambiguous) return !meant.empty() && meant.front() == id;
  if (!unit) return false;
  std::erase_if(meant, [&](const domain::MovementId& one) {
    const domain::Movement* movement = catalogue_.find(one);
    return movement == nullptr || !movement->pace.contains(*unit);
  });
  return meant.size() == 1 && meant.front() == id;
}

std::string Chalk::name(const domain::MovementId& id, std::optional<Unit> unit) const {
  const domain::Movement* movement = catalogue_.find(id);
  if (movement == nullptr) return id.text;
  std::vector<std::string> candidates;
  const bool counted = unit ? *unit == Unit::Reps : movement->default_unit == Unit::Reps;
  if (counted) candidates.push_back(domain::spoken_many(*movement));
  candidates.push_back(domain::spoken_one(*movement));
  candidates.insert(candidates.end(), movement->aliases.begin(), movement->aliases.end());
  candidates.push_back(movement->name);
  if (unit == Unit::Reps) unit.reset();
  for (const std::string& candidate : candidates)
    if (is_read_as(candidate, id, unit)) return candidate;
  return id.text;
}

bool Chalk::is_distance(const Item& item) const {
  const domain::Movement* movement = item.movement ? catalogue_.find(*item.movement) : nullptr;
  const bool far = item.unit == Unit::Metres || item.unit == Unit::Kilocalories;
  return far && std::holds_alternative<double>(item.amount) && movement != nullptr &&
         (movement->category == "run" || movement->category == "ergometer");
}

std::string Chalk::work(const Item& item, const ItemPlace& place) const {
  const auto* seconds = std::get_if<double>(&item.amount);
  const bool station =
      place.station && item.unit == Unit::Seconds && seconds != nullptr && *seconds == place.station->si();
  const bool bare = station || place.amount_given;
  // Whether the name is decided by the unit matters only if the unit is written.
  std::string named = item.movement
                          ? name(*item.movement, bare ? std::optional<Unit>{} : std::optional(item.unit))
                          : fmt::format("\"{}\"", item.free_text);
  if (bare) return named;
  const std::string amount = with_unit(item);
  if (place.sets) {
    // `3x10-15` would be a work time and a rest, `3x500 m` a repeated distance.
    const bool repeats = item.unit == Unit::Metres || item.unit == Unit::Kilocalories;
    const bool name_first = item.movement && (repeats || std::holds_alternative<domain::Range>(item.amount));
    return name_first ? fmt::format("{} {}x{}", named, *place.sets, amount)
                      : fmt::format("{}x{} {}", *place.sets, amount, named);
  }
  if (name_comes_first(item) && item.movement) return fmt::format("{} {}", named, amount);
  return fmt::format("{} {}", amount, named);
}

std::string Chalk::weight(const Item& item) const {
  std::string text;
  if (item.loads) {
    text += item.implements == 2 ? " 2x" : " @ ";
    text += chalk_loads(item.loads->masses, house_);
  } else if (item.implements == 2) {
    text += " two bells";
  }
  if (item.load_share) {
    text += " @ " + joined(item.load_share->percent, '-', chalk_number) + "%";
    if (item.load_share->of == domain::ShareOf::TodayBest) text += " of today";
  }
  if (item.load_step)
    text += item.load_step->plus
                ? fmt::format(" +{} on last week", chalk_loads({*item.load_step->plus}, house_))
                : std::string(" >last week");
  return text;
}

std::string Chalk::manner(const Item& item) const {
  std::string text;
  if (!item.heights.empty()) text += " " + chalk_heights(item.heights);
  if (item.each_side) text += " each side";
  if (item.effort) text += " @ RPE " + range_text(*item.effort);
  if (item.tempo) text += " @ " + tempo_text(*item.tempo, house_.tempo);
  if (!item.pace.empty()) text += fmt::format(" at {} pace", item.pace);
  return text;
}

std::string Chalk::versions(const Item& item, const ItemPlace& place) const {
  std::string text;
  if (item.scale) {
    const auto& options = item.scale->options;
    std::string listed;
    for (const domain::ScaleOption& option : options) {
      if (!listed.empty()) listed += " / ";
      if (option.factor != 1) listed += chalk_number(option.factor) + "x ";
      listed += name(option.movement);
    }
    const bool by_level = item.scale->by_level && options.size() == place.levels;
    text += fmt::format(" ({}{})", by_level ? "" : "scale: ", listed);
  }
  if (item.personal_version) text += " (your version)";
  if (item.second_station) text += " second station: " + name(*item.second_station);
  return text;
}

std::string Chalk::team(const Item& item, const ItemPlace& place) const {
  std::string text;
  if (item.share == domain::Share::Sync) text += " together";
  if (item.share == domain::Share::Each) text += " each person";
  if (item.share == domain::Share::Total && !place.team_for_time) text += " shared";
  if (item.gate) {
    const std::string held = item.gate->movement ? name(*item.gate->movement) : item.gate->free_text;
    text += fmt::format(" (one works, other holds {})", held);
  } else if (item.mode == domain::PartnerMode::OneWorks) {
    text += " (one works)";
  }
  if (item.mode == domain::PartnerMode::Free) text += " split anyhow";
  return text;
}

std::string Chalk::item(const Item& item, const ItemPlace& place) const {
  std::string text =
      work(item, place) + weight(item) + manner(item) + versions(item, place) + team(item, place);
  if (!item.note.empty()) text += fmt::format(" [{}]", item.note);
  return text;
}

}  // namespace repwright::board
