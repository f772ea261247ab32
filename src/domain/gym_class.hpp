#pragma once

#include <chrono>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/quantity.hpp"
#include "domain/ids.hpp"

namespace repwright::domain {

struct Arrival {
  PersonId person;
  base::Duration late;
  bool operator==(const Arrival&) const = default;
};
struct PlaceFault {
  EquipmentId equipment;
  int out = 0;
  std::string text;
  bool operator==(const PlaceFault&) const = default;
};
struct Weather {
  std::string text;
  std::optional<double> temperature_c;
  std::optional<double> wbgt_c;
  bool rain = false;
  bool daylight = true;
  std::vector<RouteId> closed_routes;
  bool operator==(const Weather&) const = default;
};
/// Minutes of the hour that the board text does not name.
struct ClassBoxes {
  std::optional<base::Duration> briefing, change, scores, clean;
  bool operator==(const ClassBoxes&) const = default;
};

/// One date, one board, who comes.
struct GymClass {
  std::string id;
  std::optional<std::chrono::year_month_day> date;
  std::optional<int> start_minute;  // of the day
  std::optional<base::Duration> length;
  std::string board_id;
  std::vector<PersonId> booked;
  std::vector<Arrival> arrivals;  // who really stands there; empty: all who are booked
  std::vector<PersonId> walk_ins;
  std::vector<PlaceFault> faults;
  Weather weather;
  ClassBoxes boxes;
  bool indoors = false;
  bool operator==(const GymClass&) const = default;
};

}  // namespace repwright::domain
