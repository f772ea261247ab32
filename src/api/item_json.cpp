#include "api/item_json.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "api/json_words.hpp"
#include "base/overloaded.hpp"
#include "base/require.hpp"

namespace repwright::api {
namespace {

using Json = nlohmann::ordered_json;
using base::Overloaded;

/// Beyond this a double no longer holds every whole number.
constexpr double whole_limit = 9007199254740992.0;

std::string number_text(double value) {
  return number_json(value).dump();
}

Json set_amount_json(const domain::SetAmount& amount) {
  return std::visit(
      Overloaded{
          [](double count) { return number_json(count); },
          [](const domain::AtLeast& open) { return Json(number_text(open.count) + "+"); },
          [](const domain::Max& max) {
            return Json(max.short_of > 0 ? fmt::format("max-{}", max.short_of) : std::string("max"));
          },
      },
      amount);
}

template <class Value>
Json by_level(const std::vector<Value>& values, LevelNames levels, Json (*write)(const Value&)) {
  base::require(values.size() == levels.size(), "one value per level of the block");
  Json object = Json::object();
  for (std::size_t i = 0; i < values.size(); ++i) object[levels[i]] = write(values[i]);
  return object;
}

template <class Value>
Json list(const std::vector<Value>& values, Json (*write)(const Value&)) {
  Json array = Json::array();
  for (const Value& value : values) array.push_back(write(value));
  return array;
}

template <class Value>
Json one_or_list(const std::vector<Value>& values, Json (*write)(const Value&)) {
  return values.size() == 1 ? write(values.front()) : list(values, write);
}

Json plain_number(const double& value) {
  return number_json(value);
}
Json kilograms(const base::Mass& mass) {
  return number_json(mass / base::kilogram);
}
/// To the thousandth of a millimetre: an inch has no more digits.
Json centimetres(const base::Length& length) {
  return number_json(std::round(length / base::metre * 1e8) / 1e6);
}

Json amount_json(const domain::Amount& amount, LevelNames levels) {
  return std::visit(
      Overloaded{
          [](double count) { return number_json(count); },
          [](const domain::AtLeast& open) { return set_amount_json(open); },
          [](const domain::Max& max) { return set_amount_json(max); },
          [](const domain::Range& range) {
            return Json{{"min", number_json(range.min)}, {"max", number_json(range.max)}};
          },
          [](const domain::PerSet& sets) { return list(sets.amounts, set_amount_json); },
          [](const domain::Climb& climb) {
            return Json{{"start", number_json(climb.start)}, {"step", number_json(climb.step)}};
          },
          [](const domain::Tiers& tiers) {
            return Json{{"pair", {number_json(tiers.first), number_json(tiers.second)}}};
          },
          [&](const domain::PerLevel& each) { return by_level(each.amounts, levels, plain_number); },
          [](const domain::WhileWorking&) { return Json(nullptr); },
      },
      amount);
}

Json scale_option_json(const domain::ScaleOption& option) {
  if (option.factor == 1) return option.movement.text;
  return {{"move", option.movement.text}, {"factor", number_json(option.factor)}};
}

void put_movement(Json& to, const std::optional<domain::MovementId>& movement, const std::string& words) {
  if (movement) {
    to["move"] = movement->text;
  } else {
    to["move"] = nullptr;
    if (!words.empty()) to["free_text"] = words;
  }
}

Json gate_json(const domain::Gate& gate) {
  Json to;
  put_movement(to, gate.movement, gate.free_text);
  to["qty"] = nullptr;
  to["unit"] = json_word(gate.unit);
  return to;
}

Json load_step_json(const domain::LoadStep& step) {
  if (!step.plus) return "above-last-week";
  return {{"of", "last-week"}, {"plus_kg", kilograms(*step.plus)}};
}

Json tempo_json(const domain::Tempo& tempo) {
  Json beats = Json::array();
  for (const std::optional<int>& seconds : tempo) {
    if (seconds) {
      beats.push_back(*seconds);
    } else {
      beats.push_back("X");
    }
  }
  return beats;
}

void put_loads(Json& to, const domain::Item& item, LevelNames levels) {
  if (item.loads) {
    const auto& masses = item.loads->masses;
    to["load_kg"] = item.loads->by_level ? by_level(masses, levels, kilograms) : list(masses, kilograms);
  }
  if (item.implements != 1) to["implements"] = item.implements;
  if (item.load_share) {
    to["load_pct"] = one_or_list(item.load_share->percent, plain_number);
    to["load_of"] = item.load_share->of == domain::ShareOf::TodayBest ? "today-best" : "one-rep-best";
  }
  if (item.load_step) to["load_rel"] = load_step_json(*item.load_step);
}

void put_manner(Json& to, const domain::Item& item, LevelNames levels) {
  if (item.effort) to["effort"] = range_json(*item.effort);
  if (item.tempo) to["tempo"] = tempo_json(*item.tempo);
  if (!item.pace.empty()) to["pace"] = item.pace;
  if (item.each_side) to["each_side"] = true;
  if (item.scale) {
    const auto& options = item.scale->options;
    to["scale"] = item.scale->by_level ? by_level(options, levels, scale_option_json)
                                       : list(options, scale_option_json);
  }
  if (item.personal_version) to["version"] = "personal";
}

}  // namespace

Json number_json(double value) {
  if (std::abs(value) < whole_limit && std::trunc(value) == value) return static_cast<std::int64_t>(value);
  return value;
}

Json seconds_json(base::Duration time) {
  return number_json(time / base::second);
}

Json range_json(const domain::Range& range) {
  if (range.min == range.max) return number_json(range.min);
  return {{"min", number_json(range.min)}, {"max", number_json(range.max)}};
}

Json item_json(const domain::Item& item, LevelNames levels) {
  Json to;
  put_movement(to, item.movement, item.free_text);
  to["qty"] = amount_json(item.amount, levels);
  to["unit"] = json_word(item.unit);
  put_loads(to, item, levels);
  put_manner(to, item, levels);
  if (item.share) to["share"] = json_word(*item.share);
  if (item.mode) to["mode"] = json_word(*item.mode);
  if (item.gate) to["gate"] = gate_json(*item.gate);
  if (item.second_station) to["second_station"] = item.second_station->text;
  if (!item.heights.empty()) to["height_cm"] = one_or_list(item.heights, centimetres);
  if (!item.note.empty()) to["note"] = item.note;
  return to;
}

Json items_json(const std::vector<domain::Item>& items, LevelNames levels) {
  Json array = Json::array();
  for (const domain::Item& item : items) array.push_back(item_json(item, levels));
  return array;
}

}  // namespace repwright::api
