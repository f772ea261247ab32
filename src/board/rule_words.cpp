#include "board/rule_words.hpp"

#include <fmt/format.h>

#include "board/phrases.hpp"

namespace repwright::board {
namespace {

using domain::Block;
using domain::BlockKind;
using domain::Score;

std::string score_words(Score score) {
  switch (score) {
    case Score::None:
      return "no score";
    case Score::Time:
      return "the time counts";
    case Score::Times:
      return "every time counts";
    case Score::RoundsReps:
      return "rounds and reps count";
    case Score::RungReps:
      return "the last full rung and the reps above it count";
    case Score::Reps:
      return "the reps count";
    case Score::RepsSum:
      return "all reps together count";
    case Score::Kcal:
      return "the kilocalories count";
    case Score::KcalSum:
      return "all kilocalories together count";
    case Score::Distance:
      return "the distance counts";
    case Score::DistanceSum:
      return "all metres together count";
    case Score::MaxTime:
      return "the slowest time counts";
    case Score::MinTime:
      return "the fastest time counts";
    case Score::MinInterval:
      return "the lowest interval counts";
    case Score::MaxInterval:
      return "the best interval counts";
    case Score::Load:
      return "the load counts";
    case Score::Place:
      return "first home wins";
    case Score::Points:
      return "points count";
    case Score::LastFullMinute:
      return "the last full minute counts";
  }
  return {};
}

/// What nobody would say because the kind says it.
bool goes_without_saying(const Block& block, Score score) {
  switch (block.kind) {
    case BlockKind::ForTime:
    case BlockKind::Accumulate:
      return score == Score::Time;
    case BlockKind::Amrap:
      return score == Score::RoundsReps;
    case BlockKind::Every:
    case BlockKind::Circuit:
      return score == Score::None;
    case BlockKind::Intervals:
      return score == Score::RoundsReps || score == Score::Times || score == Score::None;
    case BlockKind::Sets:
    case BlockKind::Superset:
      return score == Score::Load || score == Score::None;
    case BlockKind::Ladder:
      return score == Score::RungReps;
    case BlockKind::Partner:
      return score == Score::Time || score == Score::RoundsReps;
    case BlockKind::Build:
      return score == Score::Load;
    case BlockKind::ForDistance:
      return score == Score::Distance;
    case BlockKind::MaxEffort:
      return score == Score::Reps || score == Score::Kcal || score == Score::Distance;
    default:
      return score == Score::None;
  }
}

/// Kinds whose sentence holds the block's minutes anyway.
bool tells_its_length(BlockKind kind) {
  switch (kind) {
    case BlockKind::Amrap:
    case BlockKind::Ladder:
    case BlockKind::Partner:
    case BlockKind::Build:
    case BlockKind::ForDistance:
    case BlockKind::MaxEffort:
    case BlockKind::Rest:
    case BlockKind::Note:
    case BlockKind::Part:
      return true;
    default:
      return false;
  }
}

std::string span_words(double min, const std::optional<double>& max, std::string (*write)(double)) {
  if (!max) return write(min) + " or more";
  if (*max == min) return write(min);
  return fmt::format("{} to {}", write(min), write(*max));
}

std::string window_words(const domain::Intent::Window& time) {
  const auto in_minutes = [](double seconds) { return number_text(seconds / 60); };
  return span_words(time.min, time.max, in_minutes) + " minutes";
}

std::string intent_words(const domain::Intent& intent) {
  std::vector<std::string> parts;
  if (intent.time) parts.push_back(window_words(*intent.time));
  if (intent.rounds)
    parts.push_back(span_words(intent.rounds->min, intent.rounds->max, number_text) + " rounds");
  if (intent.effort)
    parts.push_back("RPE " + span_words(intent.effort->min, intent.effort->max, number_text));
  if (intent.spare) parts.push_back(time_words(*intent.spare) + " to spare");
  return "meant for " + listed(parts, "at");
}

std::string interrupt_words(const domain::Interrupt& interrupt, const Telling& telling) {
  const std::string from =
      interrupt.first > base::Duration{} ? " from " + time_words(interrupt.first) + " on," : "";
  return fmt::format("every {}{} {}", period_words(interrupt.every), from,
                     in_order(items_words(interrupt.items, telling)));
}

std::string odd_team_words(const domain::OddTeam& odd) {
  const std::string counts = odd.factor == 1
                                 ? "the same counts"
                                 : fmt::format("{} times the shared counts", number_text(odd.factor));
  return fmt::format("with an odd number one team of {} does {}", count_word(odd.size), counts);
}

}  // namespace

std::string condition_words(const Block& block) {
  std::string words;
  if (block.duration && !tells_its_length(block.kind))
    words += fmt::format(", {} in all", time_words(*block.duration));
  if (block.cap) words += fmt::format(", cap {}", time_words(*block.cap));
  if (block.heats) words += fmt::format(", in {} heats", count_word(*block.heats));
  if (block.start)
    words +=
        fmt::format(", {} starting every {}",
                    block.start->people == 1 ? "one person" : count_word(block.start->people) + " people",
                    period_words(block.start->every));
  if (block.vest) words += fmt::format(", in a {} kg vest", number_text(*block.vest / base::kilogram));
  if (!block.levels.empty()) words += fmt::format(", levels {}", listed(block.levels));
  return words;
}

std::string rest_words(const Block& block) {
  if (block.rest && *block.rest > base::Duration{}) return time_words(*block.rest) + " of rest";
  if (!block.rest_rule) return "";
  const domain::RestRule& rule = *block.rest_rule;
  const char* between = rule.between_only ? " between" : "";
  switch (rule.kind) {
    case domain::RestKind::Fixed:
      return fmt::format("{} of rest{}", time_words(rule.length), between);
    case domain::RestKind::Free:
      return fmt::format("rest as needed{}", between);
    case domain::RestKind::Ratio:
      if (rule.work == rule.rest) return fmt::format("rest as long as the work{}", between);
      return fmt::format("rest at {}:{} of the work{}", number_text(rule.work), number_text(rule.rest),
                         between);
  }
  return {};
}

std::string rule_words(const Block& block, const Telling& telling) {
  std::string words;
  const auto add = [&](const std::string& rule) { words += "; " + rule; };
  if (block.interrupt) add(interrupt_words(*block.interrupt, telling));
  if (!block.penalty.empty()) add("each break costs " + listed(items_words(block.penalty, telling)));
  if (!block.after_fail.empty())
    add(fmt::format("whoever is out does {} in every further interval",
                    listed(items_words(block.after_fail, telling))));
  if (block.carry_over) add("the count goes on over the rests");
  for (const domain::LevelRule& rule : block.level_rules)
    add(fmt::format("{} may stop after {} {}", rule.level, count_word(rule.rounds),
                    rule.rounds == 1 ? "round" : "rounds"));
  if (block.odd_start)
    add(fmt::format("every second person starts with the {}", spoken(*block.odd_start, telling, 2)));
  if (block.odd_team) add(odd_team_words(*block.odd_team));
  if (block.keep_place) add("keep the bar while resting");
  if (block.quiet) add("quiet, please");
  if (block.intent) add(intent_words(*block.intent));
  const bool words_are_all =
      block.kind == BlockKind::Note || block.kind == BlockKind::Window || block.kind == BlockKind::Rest;
  if (!block.text.empty() && !words_are_all) add(block.text);
  if (block.score && !goes_without_saying(block, *block.score)) add(score_words(*block.score));
  return words;
}

}  // namespace repwright::board
