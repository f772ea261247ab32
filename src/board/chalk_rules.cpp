#include "board/chalk_rules.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "board/chalk_numbers.hpp"
#include "board/usual_score.hpp"

namespace repwright::board {
namespace {

using domain::Block;
using domain::BlockKind;
using domain::Item;
using domain::Score;

std::string_view score_text(Score score) {
  switch (score) {
    case Score::None:
      return "none";
    case Score::Time:
      return "time";
    case Score::Times:
      return "times";
    case Score::RoundsReps:
      return "rounds + reps";
    case Score::RungReps:
      return "rung + reps";
    case Score::Reps:
      return "reps";
    case Score::RepsSum:
      return "total reps";
    case Score::Kcal:
      return "cals";
    case Score::KcalSum:
      return "total cals";
    case Score::Distance:
      return "distance";
    case Score::DistanceSum:
      return "total m";
    case Score::MaxTime:
      return "slowest time";
    case Score::MinTime:
      return "fastest time";
    case Score::MinInterval:
      return "lowest interval";
    case Score::MaxInterval:
      return "best interval";
    case Score::Load:
      return "load";
    case Score::Place:
      return "first home";
    case Score::Points:
      return "points";
    case Score::LastFullMinute:
      return "last full minute";
  }
  return {};
}

std::string listed(const std::vector<Item>& items, const Chalk& chalk, const ItemPlace& place) {
  std::string text;
  for (const Item& item : items) text += (text.empty() ? "" : " + ") + chalk.item(item, place);
  return text;
}

std::string bounds(double min, const std::optional<double>& max) {
  if (!max) return chalk_number(min) + "+";
  if (*max == min) return chalk_number(min);
  return fmt::format("{}-{}", chalk_number(min), chalk_number(*max));
}

std::string time_bounds(const domain::Intent::Window& time) {
  const auto whole = [](double seconds) { return std::fmod(seconds, 60) == 0; };
  if (whole(time.min) && (!time.max || whole(*time.max)))
    return bounds(time.min / 60, time.max ? std::optional(*time.max / 60) : std::nullopt) + " min";
  return bounds(time.min, time.max) + " s";
}

std::string intent_text(const domain::Intent& intent) {
  std::string text;
  const auto add = [&](const std::string& part) { text += (text.empty() ? "intent " : ", ") + part; };
  if (intent.time) add(time_bounds(*intent.time));
  if (intent.rounds) add(bounds(intent.rounds->min, intent.rounds->max) + " rounds");
  if (intent.effort) add("RPE " + bounds(intent.effort->min, intent.effort->max));
  return text;
}

std::string odd_team_text(const domain::OddTeam& odd) {
  std::string factor = chalk_number(odd.factor) + " times";
  if (odd.factor == 1) factor = "same work";
  if (odd.factor == 1.5) factor = "half as much again";
  return fmt::format("odd number: one team of {}, {}", odd.size, factor);
}

std::string rest_text(const domain::RestRule& rest) {
  const char* between = rest.between_only ? " between" : "";
  switch (rest.kind) {
    case domain::RestKind::Fixed:
      return fmt::format("rest {}{}", chalk_time(rest.length), between);
    case domain::RestKind::Ratio:
      return fmt::format("rest {}:{}{}", chalk_number(rest.work), chalk_number(rest.rest), between);
    case domain::RestKind::Free:
      return fmt::format("rest as needed{}", between);
  }
  return {};
}

std::string start_text(const domain::Stagger& start) {
  if (start.people == 1) return "start every " + chalk_time(start.every);
  return fmt::format("start {} every {}", start.people, chalk_time(start.every));
}

}  // namespace

std::string conditions(const Block& block, const Chalk& chalk) {
  std::string text;
  const auto add = [&](const std::string& part) { text += ", " + part; };
  if (block.cap) add("cap " + chalk_time(*block.cap));
  if (block.rest_rule) add(rest_text(*block.rest_rule));
  if (block.heats) add(fmt::format("heats {}", *block.heats));
  if (block.start) add(start_text(*block.start));
  if (block.vest) add("vest " + chalk_loads({*block.vest}, chalk.house()));
  if (block.keep_place) add("keep the bar");
  if (block.quiet) add("quiet");
  if (block.carry_over) add("carry over");
  if (block.odd_start) add("odd start with " + chalk.name(*block.odd_start));
  if (!block.levels.empty()) add(fmt::format("levels {}", fmt::join(block.levels, " / ")));
  return text;
}

std::vector<std::string> chalk_rules(const Block& block, const Chalk& chalk, const ItemPlace& outer) {
  ItemPlace place;
  place.levels = outer.levels;
  std::vector<std::string> lines;
  if (block.interrupt) {
    const bool later = block.interrupt->first > base::Duration{};
    lines.push_back(fmt::format(
        "every {}: {}{}", chalk_time(block.interrupt->every), listed(block.interrupt->items, chalk, place),
        later ? fmt::format(" (start at {})", chalk_time(block.interrupt->first)) : ""));
  }
  if (!block.penalty.empty()) lines.push_back("each break: " + listed(block.penalty, chalk, place));
  if (!block.after_fail.empty()) lines.push_back("once out: " + listed(block.after_fail, chalk, place));
  for (const domain::LevelRule& rule : block.level_rules)
    lines.push_back(
        fmt::format("{} may stop at {} {}", rule.level, rule.rounds, rule.rounds == 1 ? "round" : "rounds"));
  if (block.odd_team) lines.push_back(odd_team_text(*block.odd_team));
  if (block.intent) {
    if (const std::string text = intent_text(*block.intent); !text.empty()) lines.push_back(text);
    if (block.intent->spare) lines.push_back(fmt::format("leave {} spare", chalk_time(*block.intent->spare)));
  }
  if (block.score && *block.score != usual_score(block))
    lines.push_back(fmt::format("score: {}", score_text(*block.score)));
  if (!block.text.empty() && block.kind != BlockKind::Window)
    lines.push_back(fmt::format("[{}]", block.text));
  return lines;
}

}  // namespace repwright::board
