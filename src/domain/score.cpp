#include "domain/score.hpp"

#include <array>
#include <utility>

#include "base/text.hpp"
#include "domain/written_values.hpp"

namespace repwright::domain {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// Small letters without blanks, so that "3 rds + 40" and "3rds+40" are one; but "4 5" is never 45.
std::string tight(std::string_view text) {
  std::string out;
  bool blank = false;
  for (const char c : base::lower(base::trim(text))) {
    if (c == ' ' || c == '\t') {
      blank = true;
      continue;
    }
    if (blank && is_digit(c) && is_digit(out.back())) out += ' ';
    blank = false;
    out += c;
  }
  return out;
}

bool drop_end(std::string_view& text, std::string_view end) {
  if (!text.ends_with(end)) return false;
  text.remove_suffix(end.size());
  return true;
}

/// "3+40", "3rds+40", "4rounds".
std::optional<RoundsScore> rounds(std::string_view text) {
  const std::size_t plus = text.find('+');
  std::string_view whole = text.substr(0, plus);
  bool said = plus != std::string_view::npos;
  for (const std::string_view word : {"rounds", "round", "rds", "rd"})
    if (drop_end(whole, word)) {
      said = true;
      break;
    }
  const auto count = base::parse_digits(whole);
  if (!said || !count) return std::nullopt;
  if (plus == std::string_view::npos) return RoundsScore{*count, 0};
  std::string_view rest = text.substr(plus + 1);
  drop_end(rest, "reps");
  const auto reps = base::parse_digits(rest);
  if (!reps) return std::nullopt;
  return RoundsScore{*count, *reps};
}

/// What stands after the word "cap".
std::optional<CappedScore> capped(std::string_view text) {
  if (!text.starts_with("cap")) return std::nullopt;
  text.remove_prefix(3);
  if (text.starts_with("ped")) text.remove_prefix(3);
  CappedScore score;
  while (!text.empty()) {
    if (text.front() == ',' || text.front() == ':') {
      text.remove_prefix(1);
      continue;
    }
    const std::string_view part = text.substr(0, text.find(','));
    if (const auto cap = read_clock(part); cap && !score.cap)
      score.cap = cap;
    else if (const auto done = rounds(part); done && !score.done)
      score.done = done;
    else if (const auto reps = base::parse_digits(part); reps && !score.done)
      score.done = RoundsScore{0, *reps};
    else
      return std::nullopt;
    text.remove_prefix(part.size());
  }
  return score;
}

std::optional<ScoreValue> measured(std::string_view text) {
  using Make = ScoreValue (*)(double);
  constexpr std::array<std::pair<std::string_view, Make>, 9> units{{
      {"kcal", [](double v) { return ScoreValue(KcalScore{v}); }},
      {"cals", [](double v) { return ScoreValue(KcalScore{v}); }},
      {"cal", [](double v) { return ScoreValue(KcalScore{v}); }},
      {"kg", [](double v) { return ScoreValue(LoadScore{v * base::kilogram}); }},
      {"lbs", [](double v) { return ScoreValue(LoadScore{v * base::pound}); }},
      {"lb", [](double v) { return ScoreValue(LoadScore{v * base::pound}); }},
      {"km", [](double v) { return ScoreValue(DistanceScore{v * 1000.0 * base::metre}); }},
      {"m", [](double v) { return ScoreValue(DistanceScore{v * base::metre}); }},
      {"reps", [](double v) { return ScoreValue(RepsScore{v}); }},
  }};
  for (const auto& [unit, make] : units) {
    std::string_view number = text;
    if (!drop_end(number, unit)) continue;
    const auto value = read_number(number);
    if (!value || *value < 0) return std::nullopt;
    return make(*value);
  }
  return std::nullopt;
}

}  // namespace

ScoreValue read_score(std::string_view entered) {
  const std::string text = tight(entered);
  if (const auto score = capped(text)) return *score;
  if (const auto time = read_clock(text)) return TimeScore{*time};
  if (const auto score = rounds(text)) return *score;
  if (const auto score = measured(text)) return *score;
  if (const auto count = base::parse_digits(text)) return RepsScore{static_cast<double>(*count)};
  return std::monostate{};
}

}  // namespace repwright::domain
