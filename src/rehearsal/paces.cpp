#include "rehearsal/paces.hpp"

#include <cctype>
#include <cmath>
#include <cstdlib>
#include <string>

namespace repwright::rehearsal {

namespace {

constexpr double explosive_s = 1;       // an X in a tempo
constexpr double easy_share = 0.8;      // of the critical speed: talk pace (common practice, no source)
constexpr double fade_exponent = 1.07;  // of longer races (Riegel 1981, Am Sci 69:285, and reference 1.3)

/// Seconds per metre in a race of that length: critical speed up to half an hour, then Riegel's power law.
double race_pace(double metres, const body::Body& body) {
  const double speed = std::max(0.5, body.critical_speed);
  const double seconds = std::max(1.0, metres - body.reserve_distance) / speed;
  constexpr double longest = 1800;
  if (seconds <= longest) return seconds / metres;
  const double known = longest * speed + body.reserve_distance;
  return longest * std::pow(metres / known, fade_exponent) / metres;
}

}  // namespace

double held_pace(const domain::Item& item, const body::Body& body) {
  if (item.tempo && item.unit == domain::Unit::Reps) {
    double seconds = 0;
    for (const std::optional<int>& phase : *item.tempo) seconds += phase ? *phase : explosive_s;
    return seconds;
  }
  if (item.unit != domain::Unit::Metres || item.pace.empty()) return 0;
  const double number = std::atof(item.pace.c_str());
  if (number > 0 && item.pace.find('k') != std::string::npos) return race_pace(number * 1000, body);
  if (number <= 0 && item.pace.find("mile") != std::string::npos) return race_pace(1609.344, body);
  if (item.pace == "easy" || item.pace == "talk" || item.pace.find("talk") != std::string::npos)
    return 1 / (easy_share * std::max(0.5, body.critical_speed));
  return 0;
}

}  // namespace repwright::rehearsal
