#include "store/house_json.hpp"

#include <fmt/format.h>

#include <array>
#include <utility>

#include "domain/movement_names.hpp"
#include "store/json_reader.hpp"

namespace repwright::store {
namespace {

using domain::House;

constexpr std::array<std::pair<std::string_view, bool House::*>, 6> rules{{
    {"legs_counted_together", &House::legs_counted_together},
    {"pull_up_may_swing", &House::pull_up_may_swing},
    {"burpee_has_push_up", &House::burpee_has_push_up},
    {"minute_one_is_odd", &House::minute_one_is_odd},
    {"last_rest_counts", &House::last_rest_counts},
    {"keep_place_while_resting", &House::keep_place_while_resting},
}};

void read_words(JsonReader& in, const domain::Catalogue& catalogue, House& house) {
  auto words = in.optional_object("words");
  if (!words) return;
  const domain::MovementNames names(catalogue);
  for (const std::string& word : words->keys()) {
    const std::string written = words->text(word);
    if (const domain::MovementId* id = names.find(written))
      house.words[word] = id->text;
    else if (!written.empty())
      words->wrong(word, fmt::format("the catalogue knows no movement '{}'", written));
  }
}

}  // namespace

base::Result<HouseFile> read_house(std::string_view bytes, const std::string& file,
                                   const domain::Catalogue& catalogue) {
  JsonFile json{file, {}, {}};
  House house;
  if (const auto parsed = parse_json(bytes, json)) {
    JsonReader in(*parsed, json);
    house.mass_unit = std::array{domain::MassUnit::Kilograms,
                                 domain::MassUnit::Pounds}[in.choice("mass_unit", {"kg", "lb"})];
    house.tiers = std::array{domain::TierRule::BySex,
                             domain::TierRule::ByChoice}[in.choice("tiers", {"by-sex", "by-choice"})];
    house.tempo = std::array{
        domain::TempoOrder::DownPauseUpTop,
        domain::TempoOrder::UpTopDownPause}[in.choice("tempo", {"down-pause-up-top", "up-top-down-pause"})];
    for (const auto& [key, member] : rules) house.*member = in.flag_or(key, house.*member);
    read_words(in, catalogue, house);
    in.finish();
  }
  if (!json.problems.empty()) return tl::unexpected(json.problems.error());
  return HouseFile{std::move(house), std::move(json.notes)};
}

std::string write_house(const House& house) {
  nlohmann::ordered_json out;
  out["mass_unit"] = house.mass_unit == domain::MassUnit::Kilograms ? "kg" : "lb";
  out["tiers"] = house.tiers == domain::TierRule::BySex ? "by-sex" : "by-choice";
  out["tempo"] =
      house.tempo == domain::TempoOrder::DownPauseUpTop ? "down-pause-up-top" : "up-top-down-pause";
  for (const auto& [key, member] : rules) out[std::string(key)] = house.*member;
  out["words"] = house.words;
  return write_json(out);
}

}  // namespace repwright::store
