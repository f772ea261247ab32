#include "store/class_json.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <set>
#include <utility>

#include "base/civil_date.hpp"
#include "domain/written_values.hpp"
#include "store/json_reader.hpp"

namespace repwright::store {
namespace {

using base::minute;
using base::second;
using domain::ClassBoxes;
using domain::GymClass;
using nlohmann::ordered_json;

constexpr double longest_class_min = 1440;

constexpr std::array<std::pair<std::string_view, std::optional<base::Duration> ClassBoxes::*>, 4> boxes{{
    {"briefing", &ClassBoxes::briefing},
    {"change", &ClassBoxes::change},
    {"scores", &ClassBoxes::scores},
    {"clean", &ClassBoxes::clean},
}};

void read_when(JsonReader& in, GymClass& to) {
  if (const std::string date = in.text_or("date", ""); !date.empty()) {
    if (const auto day = base::parse_date(date))
      to.date = *day;
    else
      in.wrong("date", fmt::format("is '{}', expected a day such as 2027-05-15", date));
  }
  if (const std::string start = in.text_or("start", ""); !start.empty()) {
    if (const auto minute_of_day = base::parse_time_of_day(start))
      to.start_minute = *minute_of_day;
    else
      in.wrong("start", fmt::format("is '{}', expected a time such as 09:00", start));
  }
  if (const auto length = in.optional_number("minutes", 1, longest_class_min))
    to.length = domain::to_millisecond(*length * minute);
}

std::vector<domain::PersonId> read_people_of(JsonReader& in, std::string_view key) {
  std::vector<domain::PersonId> out;
  std::set<std::string> seen;
  for (std::string& id : in.texts(key)) {
    if (!seen.insert(id).second) in.wrong(key, fmt::format("names '{}' twice", id));
    out.push_back({std::move(id)});
  }
  return out;
}

void read_who(JsonReader& in, GymClass& to) {
  to.booked = read_people_of(in, "booked");
  std::set<std::string> seen;
  for (JsonReader& arrival : in.objects("arrivals")) {
    const std::string id = arrival.text("id");
    if (!id.empty() && !seen.insert(id).second) arrival.wrong("id", fmt::format("'{}' arrives twice", id));
    to.arrivals.push_back({{id}, arrival.optional_number("late_s", 0, 14400).value_or(0) * second});
    arrival.finish();
  }
  to.walk_ins = read_people_of(in, "walk_ins");
}

void read_weather(JsonReader& in, domain::Weather& to) {
  auto weather = in.optional_object("weather");
  if (!weather) return;
  to.text = weather->text_or("text", "");
  to.temperature_c = weather->optional_number("temp_c", -60, 60);
  to.wbgt_c = weather->optional_number("wbgt_c", -60, 60);
  to.rain = weather->flag_or("rain", false);
  to.daylight = weather->flag_or("daylight", true);
  for (std::string& route : weather->texts("closed_routes")) to.closed_routes.push_back({std::move(route)});
  weather->finish();
}

void read_boxes(JsonReader& in, ClassBoxes& to) {
  auto minutes = in.optional_object("boxes_min");
  if (!minutes) return;
  for (const auto& [key, member] : boxes)
    if (const auto length = minutes->optional_number(key, 0, 120))
      to.*member = domain::to_millisecond(*length * minute);
  minutes->finish();
}

ordered_json ids(const std::vector<domain::PersonId>& people) {
  ordered_json out = ordered_json::array();
  for (const domain::PersonId& id : people) out.push_back(id.text);
  return out;
}

ordered_json weather_json(const domain::Weather& weather) {
  ordered_json out{{"text", weather.text}};
  if (weather.temperature_c) out["temp_c"] = *weather.temperature_c;
  if (weather.wbgt_c) out["wbgt_c"] = *weather.wbgt_c;
  out["rain"] = weather.rain;
  out["daylight"] = weather.daylight;
  out["closed_routes"] = ordered_json::array();
  for (const domain::RouteId& route : weather.closed_routes) out["closed_routes"].push_back(route.text);
  return out;
}

}  // namespace

base::Result<ClassFile> read_class(std::string_view bytes, const std::string& file, const std::string& id,
                                   const domain::Catalogue& catalogue) {
  JsonFile json{file, {}, {}};
  GymClass to;
  if (const auto parsed = parse_json(bytes, json)) {
    JsonReader in(*parsed, json);
    to.id = in.text_or("id", id);
    read_when(in, to);
    to.board_id = in.text_or("board_id", "");
    read_who(in, to);
    for (JsonReader& fault : in.objects("faults")) {
      to.faults.push_back({read_equipment(fault, "equipment", catalogue), fault.whole_number("out", 0, 10000),
                           fault.text_or("text", "")});
      fault.finish();
    }
    read_weather(in, to.weather);
    read_boxes(in, to.boxes);
    to.indoors = in.flag_or("indoors", false);
    in.finish();
  }
  if (!json.problems.empty()) return tl::unexpected(json.problems.error());
  return ClassFile{std::move(to), std::move(json.notes)};
}

std::string write_class(const GymClass& gym_class) {
  ordered_json out{{"id", gym_class.id}};
  if (gym_class.date) out["date"] = base::format_date(*gym_class.date);
  if (gym_class.start_minute) out["start"] = base::format_time_of_day(*gym_class.start_minute);
  if (gym_class.length) out["minutes"] = *gym_class.length / minute;
  out["board_id"] = gym_class.board_id;
  out["booked"] = ids(gym_class.booked);
  out["arrivals"] = ordered_json::array();
  for (const domain::Arrival& arrival : gym_class.arrivals)
    out["arrivals"].push_back(ordered_json{{"id", arrival.person.text}, {"late_s", arrival.late.si()}});
  out["walk_ins"] = ids(gym_class.walk_ins);
  out["faults"] = ordered_json::array();
  for (const domain::PlaceFault& fault : gym_class.faults)
    out["faults"].push_back(
        ordered_json{{"equipment", fault.equipment.text}, {"out", fault.out}, {"text", fault.text}});
  out["weather"] = weather_json(gym_class.weather);
  out["boxes_min"] = ordered_json::object();
  for (const auto& [key, member] : boxes)
    if (const auto& length = gym_class.boxes.*member) out["boxes_min"][std::string(key)] = *length / minute;
  out["indoors"] = gym_class.indoors;
  return write_json(out);
}

}  // namespace repwright::store
