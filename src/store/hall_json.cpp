#include "store/hall_json.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <set>

#include "base/civil_date.hpp"
#include "domain/written_values.hpp"
#include "store/json_reader.hpp"

namespace repwright::store {
namespace {

using base::kilogram;
using base::metre;
using base::second;
using domain::Hall;
using nlohmann::ordered_json;

constexpr int most_of_a_kind = 10000;

void read_places(JsonReader& in, const domain::Catalogue& catalogue, Hall& hall) {
  std::set<domain::EquipmentId> seen;
  for (JsonReader& place : in.objects("places")) {
    const domain::EquipmentId equipment = read_equipment(place, "equipment", catalogue);
    if (!seen.insert(equipment).second)
      place.wrong("equipment", fmt::format("'{}' stands twice", equipment.text));
    hall.places.push_back({equipment, place.whole_number("count", 0, most_of_a_kind)});
    place.finish();
  }
  for (JsonReader& pair : in.objects("displacements")) {
    hall.displacements.push_back(
        {read_equipment(pair, "used", catalogue), read_equipment(pair, "taken", catalogue)});
    pair.finish();
  }
}

void read_kit(JsonReader& in, const domain::Catalogue& catalogue, Hall& hall) {
  for (JsonReader& lot : in.objects("kit")) {
    domain::KitLot to;
    to.equipment = read_equipment(lot, "equipment", catalogue);
    if (const auto kg = lot.optional_number("kg", 0.1, 500)) to.mass = *kg * kilogram;
    if (const auto cm = lot.optional_number("height_cm", 1, 300))
      to.height = domain::to_millimetre(*cm / 100.0 * metre);
    to.size = lot.text_or("size", "");
    to.count = lot.whole_number("count", 0, most_of_a_kind);
    lot.finish();
    hall.kit.push_back(std::move(to));
  }
}

void read_routes(JsonReader& in, Hall& hall) {
  std::set<std::string> seen;
  for (JsonReader& route : in.objects("routes")) {
    domain::Route to;
    to.id = {route.text("id")};
    if (!to.id.empty() && !seen.insert(to.id.text).second)
      route.wrong("id", fmt::format("'{}' stands twice", to.id.text));
    to.name = route.text_or("name", "");
    to.lap = route.number("lap_m", 1, 100000) * metre;
    to.shape = std::array{"out-and-back", "loop",
                          "shuttle"}[route.choice("shape", {"out-and-back", "loop", "shuttle"})];
    to.dark_ok = route.flag_or("dark_ok", true);
    to.wet_ok = route.flag_or("wet_ok", true);
    to.indoor = route.flag_or("indoor", false);
    to.max_people = route.optional_whole_number("max_people", 0, most_of_a_kind);
    to.climb = route.optional_number("climb_m", 0, 5000).value_or(0) * metre;
    to.door = route.optional_number("door_s", 0, 3600).value_or(0) * second;
    to.use = route.text_or("use", "");
    to.hazards = route.texts("hazards");
    route.finish();
    hall.routes.push_back(std::move(to));
  }
}

void read_quiet_hours(JsonReader& in, Hall& hall) {
  for (JsonReader& quiet : in.objects("quiet_hours")) {
    domain::QuietHours to;
    to.days = quiet.texts("days");
    const std::string until = quiet.text("until");
    if (const auto minute = base::parse_time_of_day(until))
      to.until_minute = *minute;
    else if (!until.empty())
      quiet.wrong("until", fmt::format("is '{}', expected a time such as 07:00", until));
    to.rule = quiet.text_or("rule", "");
    quiet.finish();
    hall.quiet_hours.push_back(std::move(to));
  }
}

ordered_json kit_json(const domain::KitLot& lot) {
  ordered_json out{{"equipment", lot.equipment.text}};
  if (lot.mass) out["kg"] = lot.mass->si();
  if (lot.height) out["height_cm"] = std::round(lot.height->si() * 1000.0) / 10.0;
  if (!lot.size.empty()) out["size"] = lot.size;
  out["count"] = lot.count;
  return out;
}

ordered_json route_json(const domain::Route& route) {
  ordered_json out{{"id", route.id.text},   {"name", route.name},       {"lap_m", route.lap.si()},
                   {"shape", route.shape},  {"dark_ok", route.dark_ok}, {"wet_ok", route.wet_ok},
                   {"indoor", route.indoor}};
  if (route.max_people) out["max_people"] = *route.max_people;
  if (route.climb.si() != 0) out["climb_m"] = route.climb.si();
  if (route.door.si() != 0) out["door_s"] = route.door.si();
  if (!route.use.empty()) out["use"] = route.use;
  if (!route.hazards.empty()) out["hazards"] = route.hazards;
  return out;
}

}  // namespace

base::Result<HallFile> read_hall(std::string_view bytes, const std::string& file,
                                 const domain::Catalogue& catalogue) {
  JsonFile json{file, {}, {}};
  Hall hall;
  if (const auto parsed = parse_json(bytes, json)) {
    JsonReader in(*parsed, json);
    hall.name = in.text_or("name", "");
    if (const auto floor = in.optional_number("floor_m2", 1, 100000)) hall.floor = *floor * (metre * metre);
    read_places(in, catalogue, hall);
    read_kit(in, catalogue, hall);
    read_routes(in, hall);
    read_quiet_hours(in, hall);
    in.finish();
    hall.unlimited = hall.places.empty() && hall.kit.empty();
  }
  if (!json.problems.empty()) return tl::unexpected(json.problems.error());
  return HallFile{std::move(hall), std::move(json.notes)};
}

std::string write_hall(const Hall& hall) {
  ordered_json out{{"name", hall.name}};
  if (hall.floor) out["floor_m2"] = hall.floor->si();
  out["places"] = ordered_json::array();
  for (const domain::PlaceKind& place : hall.places)
    out["places"].push_back(ordered_json{{"equipment", place.equipment.text}, {"count", place.count}});
  out["displacements"] = ordered_json::array();
  for (const domain::Displacement& pair : hall.displacements)
    out["displacements"].push_back(ordered_json{{"used", pair.used.text}, {"taken", pair.taken.text}});
  out["kit"] = ordered_json::array();
  for (const domain::KitLot& lot : hall.kit) out["kit"].push_back(kit_json(lot));
  out["routes"] = ordered_json::array();
  for (const domain::Route& route : hall.routes) out["routes"].push_back(route_json(route));
  out["quiet_hours"] = ordered_json::array();
  for (const domain::QuietHours& quiet : hall.quiet_hours)
    out["quiet_hours"].push_back(ordered_json{
        {"days", quiet.days}, {"until", base::format_time_of_day(quiet.until_minute)}, {"rule", quiet.rule}});
  return write_json(out);
}

}  // namespace repwright::store
