#include "board/chalk_numbers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

#include "board/quantities.hpp"

namespace repwright::board {
namespace {

struct MassScale {
  const char* word;
  LoadUnit unit;
};

std::optional<std::string> loads_in(const std::vector<base::Mass>& masses, MassScale scale) {
  const double one = mass_of(1, scale.unit, false) / base::kilogram;
  std::string text;
  for (const base::Mass mass : masses) {
    const double number = std::round(mass / base::kilogram / one * 1000) / 1000;
    if (mass_of(number, scale.unit, false) != mass) return std::nullopt;
    text += (text.empty() ? "" : "/") + chalk_number(number);
  }
  return text + " " + scale.word;
}

std::optional<std::string> heights_in(const std::vector<base::Length>& heights, double metres,
                                      const char* word) {
  std::string text;
  for (const base::Length height : heights) {
    const double number = std::round(height / base::metre / metres * 1000) / 1000;
    if (number * metres != height / base::metre) return std::nullopt;
    text += (text.empty() ? "" : "/") + chalk_number(number);
  }
  return fmt::format("{} {}", text, word);
}

}  // namespace

std::string chalk_number(double value) {
  std::array<char, 400> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed).ptr;
  return {text.data(), end};
}

std::string chalk_time(base::Duration time) {
  const double seconds = time / base::second;
  const double minutes = std::floor(seconds / 60);
  const double rest = seconds - 60 * minutes;
  const bool spoken_in_seconds = seconds < 120 && seconds != 60;
  if (spoken_in_seconds || rest != std::floor(rest)) return chalk_number(seconds) + " s";
  if (rest == 0) return chalk_number(minutes) + " min";
  return fmt::format("{}:{:02.0f}", chalk_number(minutes), rest);
}

std::string chalk_loads(const std::vector<base::Mass>& masses, const domain::House& house) {
  std::array scales{MassScale{"kg", LoadUnit::Kilograms}, MassScale{"lb", LoadUnit::Pounds},
                    MassScale{"pood", LoadUnit::Poods}};
  if (house.mass_unit == domain::MassUnit::Pounds) std::swap(scales[0], scales[1]);
  for (const MassScale& scale : scales)
    if (auto text = loads_in(masses, scale)) return *std::move(text);
  std::string text;
  for (const base::Mass mass : masses)
    text += (text.empty() ? "" : "/") + chalk_number(mass / base::kilogram);
  return text + " kg";
}

std::string chalk_heights(const std::vector<base::Length>& heights) {
  if (auto text = heights_in(heights, 0.01, "cm")) return *std::move(text);
  if (auto text = heights_in(heights, 0.0254, "in")) return *std::move(text);
  std::string text;
  for (const base::Length height : heights)
    text += (text.empty() ? "" : "/") + chalk_number(height / base::metre / 0.01);
  return text + " cm";
}

}  // namespace repwright::board
