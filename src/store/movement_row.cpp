#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "store/catalogue_rows.hpp"

namespace repwright::store {
namespace {

using base::kilogram;
using base::metre;
using base::second;

struct UnitName {
  std::string_view name;
  domain::Unit unit;
};
constexpr std::array<UnitName, 4> unit_names{{{"reps", domain::Unit::Reps},
                                              {"m", domain::Unit::Metres},
                                              {"kcal", domain::Unit::Kilocalories},
                                              {"s", domain::Unit::Seconds}}};

/// Small letters, digits and hyphens, as every id in files and on the command line.
bool is_id(std::string_view text) {
  return !text.empty() && std::ranges::all_of(text, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
  });
}

void read_names(TableReader& in, domain::Movement& to) {
  to.id = {in.text("id")};
  if (!to.id.empty() && !is_id(to.id.text))
    in.note("id", fmt::format("is '{}', expected small letters, digits and hyphens", to.id.text));
  to.name = in.text("name");
  to.spoken = in.optional_text("spoken");
  to.spoken_many = in.optional_text("spoken_many");
  to.aliases = in.texts("aliases");
  to.category = in.text("category");
  to.patterns = in.texts("patterns");
  if (auto muscles = in.table("muscles")) {
    to.primary_muscles = muscles->texts("primary");
    to.secondary_muscles = muscles->texts("secondary");
    muscles->finish();
  }
}

void read_place(TableReader& in, domain::Movement& to) {
  to.equipment = in.ids<domain::EquipmentId>("equipment");
  to.space = in.number("space_m2", {0.1, 100}) * (metre * metre);
  if (const auto ceiling = in.optional_number("ceiling_m", {1.5, 20})) to.ceiling = *ceiling * metre;
  const std::string station = in.choice("station", {"own", "shared", "lane"});
  to.station = station == "shared" ? domain::Station::Shared
               : station == "lane" ? domain::Station::Lane
                                   : domain::Station::Own;
}

void read_paces(TableReader& in, domain::Movement& to) {
  if (auto paces = in.table("seconds_per_unit")) {
    for (const auto& [name, unit] : unit_names) {
      auto one = paces->optional_table(name);
      if (!one) continue;
      const domain::Pace pace{one->number("brisk", {0.01, 3600}), one->number("sustained", {0.01, 3600})};
      if (pace.brisk > pace.sustained) one->note("brisk", "is slower than 'sustained'");
      one->finish();
      to.pace[unit] = pace;
    }
    paces->finish();
  }
  const std::string written = in.choice("default_unit", {"reps", "m", "kcal", "s"});
  const auto named = std::ranges::find(unit_names, written, &UnitName::name);
  if (named == unit_names.end()) return;
  to.default_unit = named->unit;
  if (!to.pace.contains(to.default_unit))
    in.note("default_unit", fmt::format("is '{}', which has no entry under seconds_per_unit", written));
}

void read_sets(TableReader& in, domain::Movement& to) {
  if (auto sets = in.optional_table("unbroken")) {
    to.unbroken = {sets->number("novice"), sets->number("competent"), sets->number("strong")};
    if (to.unbroken->novice > to.unbroken->competent || to.unbroken->competent > to.unbroken->strong)
      in.note("unbroken", "should rise from novice to strong");
    sets->finish();
  }
  to.break_rest = in.number("break_s", {0, 600}) * second;
  to.on_off = in.number("on_off_s", {0, 600}) * second;
  to.body_fraction = in.optional_number("body_fraction", {0, 1});
  if (const auto rise = in.optional_number("rise_m", {0, 10})) to.rise = *rise * metre;
  const std::string impact = in.choice("impact", {"none", "low", "high"});
  to.impact = impact == "high"  ? domain::Impact::High
              : impact == "low" ? domain::Impact::Low
                                : domain::Impact::None;
  to.flags = in.texts("flags");
  if (auto load = in.optional_table("typical_load_kg")) {
    const auto mass = [&](std::string_view key) { return load->number(key, {0.1, 500}) * kilogram; };
    to.typical_load = {mass("light"), mass("medium"), mass("heavy")};
    if (to.typical_load->light > to.typical_load->medium || to.typical_load->medium > to.typical_load->heavy)
      in.note("typical_load_kg", "should rise from light to heavy");
    load->finish();
  }
  to.eccentric_stress = in.choice("eccentric_stress", {"low", "medium", "high"});
  to.count_rule = in.optional_text("count_rule");
  to.pace_spread = in.number("pace_spread_cv", {0, 2});
}

void read_relations(TableReader& in, domain::Movement& to) {
  to.easier = in.ids<domain::MovementId>("easier");
  to.harder = in.ids<domain::MovementId>("harder");
  for (TableReader& home : in.tables("home")) {
    to.home.push_back({{home.text("movement")},
                       home.number("factor", {0.01, 100}),
                       home.choice("basis", {"reps", "time", "reps-per-kcal"})});
    home.finish();
  }
  to.avoid_with = in.ids<domain::LimitId>("avoid_with");
  if (auto swaps = in.table("swap_for"))
    for (const std::string& limit : swaps->keys()) to.swap_for[{limit}] = {swaps->text(limit)};
  to.kit_free = in.flag("kit_free");
}

void read_coaching(TableReader& in, domain::Movement& to) {
  if (auto standard = in.table("standard")) {
    to.standard_start = standard->text("start");
    to.standard_finish = standard->text("finish");
    standard->finish();
  }
  for (TableReader& fault : in.tables("faults")) {
    to.faults.push_back({fault.text("fault"), fault.text("cue")});
    fault.finish();
  }
  if (to.faults.empty()) in.note("faults", "has no pair of fault and cue, expected at least one");
  to.cautions = in.texts("cautions");
  if (to.cautions.empty()) in.note("cautions", "has no caution, expected at least one");
}

}  // namespace

domain::Movement movement_row(TableReader& reader, const std::string& source) {
  domain::Movement movement;
  read_names(reader, movement);
  read_place(reader, movement);
  read_paces(reader, movement);
  read_sets(reader, movement);
  read_relations(reader, movement);
  read_coaching(reader, movement);
  movement.source = reader.optional_text("source");
  if (movement.source.empty()) movement.source = source;
  reader.finish();
  return movement;
}

}  // namespace repwright::store
