#include "board/item_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/overloaded.hpp"
#include "board/phrases.hpp"
#include "domain/spoken.hpp"

namespace repwright::board {
namespace {

using base::Overloaded;
using domain::Item;
using domain::Unit;

std::string joined(const std::vector<std::string>& parts, std::string_view link) {
  return fmt::format("{}", fmt::join(parts, link));
}

std::string plain(const double& value) {
  return number_text(value);
}

std::string set_amount(const domain::SetAmount& amount) {
  return std::visit(Overloaded{
                        [](double count) { return number_text(count); },
                        [](const domain::AtLeast& open) { return number_text(open.count) + "+"; },
                        [](const domain::Max& max) {
                          return max.short_of > 0 ? fmt::format("max-{}", max.short_of) : std::string("max");
                        },
                    },
                    amount);
}

std::string climb_words(const domain::Climb& climb) {
  return fmt::format("{}-{}-{}-…", number_text(climb.start), number_text(climb.start + climb.step),
                     number_text(climb.start + 2 * climb.step));
}

std::string amount_words(const domain::Amount& amount) {
  return std::visit(
      Overloaded{
          [](double count) { return number_text(count); },
          [](const domain::AtLeast& open) { return number_text(open.count) + " or more"; },
          [](const domain::Max&) { return std::string("max"); },
          [](const domain::Range& range) {
            return fmt::format("{} to {}", number_text(range.min), number_text(range.max));
          },
          [](const domain::PerSet& sets) { return joined(texts_of(sets.amounts, set_amount), "-"); },
          [](const domain::Climb& climb) { return climb_words(climb); },
          [](const domain::Tiers& tiers) {
            return fmt::format("{} or {}", number_text(tiers.first), number_text(tiers.second));
          },
          [](const domain::PerLevel& each) { return joined(texts_of(each.amounts, plain), "/"); },
          [](const domain::WhileWorking&) { return std::string(); },
      },
      amount);
}

double count_of(const domain::Amount& amount) {
  const auto* count = std::get_if<double>(&amount);
  return count == nullptr ? 2 : *count;
}

std::string name_of(const Item& item, const Telling& telling, double count) {
  return item.movement ? spoken(*item.movement, telling, count) : item.free_text;
}

bool is_time(const Item& item) {
  return item.unit == Unit::Seconds && std::holds_alternative<double>(item.amount);
}

/// `14 push-ups`, `300 m run`, `40 kcal row`, `35 seconds of plank`, `max double unders`.
std::string work_words(const Item& item, const Telling& telling) {
  if (is_time(item)) {
    const auto time = base::Duration::from_si(std::get<double>(item.amount));
    return fmt::format("{} of {}", time_words(time), station_words(item, telling));
  }
  std::string amount = amount_words(item.amount);
  const auto* max = std::get_if<domain::Max>(&item.amount);
  const std::string less =
      max != nullptr && max->short_of > 0 ? fmt::format(" minus {}", count_word(max->short_of)) : "";
  if (max != nullptr && item.unit == Unit::Metres) return "max metres of " + name_of(item, telling, 1) + less;
  switch (item.unit) {
    case Unit::Reps:
      return fmt::format("{} {}{}", amount, name_of(item, telling, count_of(item.amount)), less);
    case Unit::Metres:
      if (const auto* metres = std::get_if<double>(&item.amount); metres != nullptr && *metres >= 100)
        amount = number_text(std::round(*metres));  // a mile is 1609 m, as nobody runs the millimetres
      return fmt::format("{} m {}{}", amount, name_of(item, telling, 1), less);
    case Unit::Kilocalories:
      return fmt::format("{} kcal {}{}", amount, name_of(item, telling, 1), less);
    case Unit::Seconds:
      return fmt::format("{} seconds of {}{}", amount, station_words(item, telling), less);
  }
  return amount;
}

std::string implements_word(const Item& item, const Telling& telling) {
  const domain::Movement* movement = item.movement ? telling.catalogue.find(*item.movement) : nullptr;
  const std::string category = movement == nullptr ? "" : movement->category;
  if (category == "dumbbell" || category == "kettlebell") return category + "s";
  return "weights";
}

std::string share_words(const domain::LoadShare& share) {
  const char* best = share.of == domain::ShareOf::TodayBest ? "today's best" : "the one-rep best";
  return fmt::format(" at {} % of {}", joined(texts_of(share.percent, plain), "-"), best);
}

std::string step_words(const domain::LoadStep& step, const domain::House& house) {
  if (!step.plus) return " above last week's load";
  return fmt::format(" at last week's load plus {}", load_words({{*step.plus}, false}, house));
}

std::string weight_words(const Item& item, const Telling& telling) {
  std::string words;
  if (item.loads) {
    words += " with ";
    if (item.implements > 1)
      words += fmt::format("{} {} of ", count_word(item.implements), implements_word(item, telling));
    words += load_words(*item.loads, telling.house);
  } else if (item.implements > 1) {
    words += fmt::format(" with {} {}", count_word(item.implements), implements_word(item, telling));
  }
  if (item.load_share) words += share_words(*item.load_share);
  if (item.load_step) words += step_words(*item.load_step, telling.house);
  return words;
}

std::string tempo_words(const domain::Tempo& tempo) {
  std::vector<std::string> beats;
  for (const std::optional<int>& beat : tempo) beats.push_back(beat ? fmt::format("{}", *beat) : "X");
  return joined(beats, "-");
}

std::string effort_words(const domain::Range& effort) {
  if (effort.min == effort.max) return fmt::format(" at RPE {}", number_text(effort.min));
  return fmt::format(" at RPE {} to {}", number_text(effort.min), number_text(effort.max));
}

std::string manner_words(const Item& item) {
  std::string words;
  if (item.each_side) words += " each side";
  if (!item.heights.empty()) {
    const auto heights =
        texts_of(item.heights, [](base::Length height) { return number_text(height / base::metre * 100); });
    words += fmt::format(" at {} cm", listed(heights, "or"));
  }
  if (item.effort) words += effort_words(*item.effort);
  if (item.tempo) words += " in tempo " + tempo_words(*item.tempo);
  if (!item.pace.empty()) words += fmt::format(" at {} pace", item.pace);
  return words;
}

std::string option_words(const domain::ScaleOption& option, const Telling& telling) {
  const domain::Movement* movement = telling.catalogue.find(option.movement);
  const bool counted = movement == nullptr || movement->default_unit == Unit::Reps;
  std::string name = spoken(option.movement, telling, counted || option.factor == 1 ? 2 : 1);
  if (option.factor == 1) return name;
  return fmt::format("{} times as {} {}", number_text(option.factor), counted ? "many" : "much", name);
}

std::string scale_words(const domain::Scale& scale, const Telling& telling) {
  std::vector<std::string> options;
  for (std::size_t i = 0; i < scale.options.size(); ++i) {
    const std::string option = option_words(scale.options[i], telling);
    const bool named = scale.by_level && i < telling.levels.size();
    options.push_back(named ? fmt::format("{}: {}", telling.levels[i], option) : option);
  }
  if (scale.by_level) return joined(options, ", ");
  return "or " + listed(options, "or");
}

std::string gate_words(const domain::Gate& gate, const Telling& telling) {
  const std::string name =
      gate.movement ? spoken(*gate.movement, telling, gate.unit == Unit::Reps ? 2 : 1) : gate.free_text;
  return gate.unit == Unit::Reps ? "does " + name : "holds a " + name;
}

std::string team_words(const Item& item, const Telling& telling) {
  std::string words;
  if (item.share == domain::Share::Total) words += " between them";
  if (item.share == domain::Share::Sync) words += " together";
  if (item.share == domain::Share::Each) words += " each";
  if (item.mode == domain::PartnerMode::OneWorks) words += ", one working at a time";
  if (item.mode == domain::PartnerMode::Free) words += ", split in any way";
  if (item.gate) words += fmt::format(" while the other {}", gate_words(*item.gate, telling));
  return words;
}

std::string side_words(const Item& item, const Telling& telling) {
  std::vector<std::string> remarks;
  if (item.scale) remarks.push_back(scale_words(*item.scale, telling));
  if (item.personal_version) remarks.emplace_back("your version");
  if (item.second_station) remarks.push_back("second station: " + spoken(*item.second_station, telling, 2));
  if (!item.note.empty()) remarks.push_back(item.note);
  return remarks.empty() ? "" : fmt::format(" ({})", joined(remarks, "; "));
}

std::string detail_words(const Item& item, const Telling& telling) {
  return weight_words(item, telling) + manner_words(item) + side_words(item, telling) +
         team_words(item, telling);
}

}  // namespace

std::string spoken(const domain::MovementId& id, const Telling& telling, double count) {
  const domain::Movement* movement = telling.catalogue.find(id);
  if (movement == nullptr) return id.text;
  return count == 1 ? spoken_one(*movement) : spoken_many(*movement);
}

std::string load_words(const domain::Loads& loads, const domain::House& house) {
  const bool pounds = house.mass_unit == domain::MassUnit::Pounds;
  const base::Mass unit = pounds ? base::pound : base::kilogram;
  const auto numbers = texts_of(loads.masses, [&](base::Mass mass) { return number_text(mass / unit); });
  return fmt::format("{} {}", loads.by_level ? joined(numbers, "/") : listed(numbers, "or"),
                     pounds ? "lb" : "kg");
}

std::string station_words(const Item& item, const Telling& telling) {
  if (!item.movement) return item.free_text;
  const domain::Movement* movement = telling.catalogue.find(*item.movement);
  const bool counted = movement != nullptr && movement->default_unit == Unit::Reps;
  return spoken(*item.movement, telling, counted ? 2 : 1);
}

std::string item_words(const Item& item, const Telling& telling) {
  return work_words(item, telling) + detail_words(item, telling);
}

std::string bare_words(const Item& item, const Telling& telling) {
  return station_words(item, telling) + detail_words(item, telling);
}

std::vector<std::string> items_words(const std::vector<Item>& items, const Telling& telling) {
  std::vector<std::string> all;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Item& item = items[i];
    const bool counts = std::holds_alternative<domain::PerSet>(item.amount) && item.unit == Unit::Reps;
    const bool shared =
        counts && i > 0 && items[i - 1].amount == item.amount && items[i - 1].unit == item.unit;
    if (shared) {
      all.back() += " and " + name_of(item, telling, 2) + detail_words(item, telling);
    } else {
      all.push_back(item_words(item, telling));
    }
  }
  return all;
}

}  // namespace repwright::board
