#include "api/reading_json.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <utility>
#include <vector>

#include "api/item_json.hpp"
#include "api/json_words.hpp"
#include "board/characters.hpp"
#include "timetable/length.hpp"

namespace repwright::api {
namespace {

using Json = nlohmann::ordered_json;

void put(Json& to, const char* name, const std::optional<int>& count) {
  if (count) to[name] = *count;
}
void put(Json& to, const char* name, const std::optional<base::Duration>& time) {
  if (time) to[name] = seconds_json(*time);
}
void put(Json& to, const char* name, const std::string& words) {
  if (!words.empty()) to[name] = words;
}

Json rest_json(const domain::RestRule& rest) {
  Json to;
  switch (rest.kind) {
    case domain::RestKind::Fixed:
      to = {{"kind", "fixed"}, {"seconds", seconds_json(rest.length)}};
      break;
    case domain::RestKind::Ratio:
      to = {{"kind", "ratio"}, {"work", number_json(rest.work)}, {"rest", number_json(rest.rest)}};
      break;
    case domain::RestKind::Free:
      to = {{"kind", "free"}};
      break;
  }
  if (rest.between_only) to["between_only"] = true;
  return to;
}

Json window_json(const domain::Intent::Window& window) {
  Json to{{"min", number_json(window.min)}};
  if (window.max) to["max"] = number_json(*window.max);
  return to;
}

Json intent_json(const domain::Intent& intent) {
  Json to = Json::object();
  if (intent.time) to["time_s"] = window_json(*intent.time);
  if (intent.rounds) to["rounds"] = window_json(*intent.rounds);
  if (intent.effort) to["effort"] = range_json(*intent.effort);
  put(to, "spare_s", intent.spare);
  return to;
}

void put_counts(Json& to, const domain::Block& block) {
  if (block.team_sizes.size() == 1) to["team_size"] = block.team_sizes.front();
  if (block.team_sizes.size() > 1) to["team_size"] = block.team_sizes;
  put(to, "rounds", block.rounds);
  put(to, "sets", block.sets);
  put(to, "laps", block.laps);
  put(to, "intervals", block.intervals);
  put(to, "turns_each", block.turns_each);
  put(to, "lanes", block.lanes);
  put(to, "heats", block.heats);
}

void put_clock(Json& to, const domain::Block& block) {
  put(to, "from_s", block.from);
  put(to, "to_s", block.to);
  put(to, "duration_s", block.duration);
  put(to, "cap_s", block.cap);
  put(to, "every_s", block.every);
  put(to, "work_s", block.work);
  put(to, "rest_s", block.rest);
  if (block.rest_rule) to["rest"] = rest_json(*block.rest_rule);
  put(to, "lap_rest_s", block.lap_rest);
}

void put_rules(Json& to, const domain::Block& block, LevelNames levels) {
  if (block.carry_over) to["carry_over"] = true;
  if (block.keep_place) to["keep_place"] = true;
  if (block.quiet) to["quiet"] = true;
  if (block.start)
    to["start"] = {
        {"kind", "stagger"}, {"every_s", seconds_json(block.start->every)}, {"people", block.start->people}};
  if (block.interrupt)
    to["interrupt"] = {{"every_s", seconds_json(block.interrupt->every)},
                       {"first_s", seconds_json(block.interrupt->first)},
                       {"items", items_json(block.interrupt->items, levels)}};
  if (!block.penalty.empty()) to["penalty"] = {{"on", "break"}, {"items", items_json(block.penalty, levels)}};
  if (!block.after_fail.empty()) to["after_fail"] = items_json(block.after_fail, levels);
  if (!block.levels.empty()) to["levels"] = block.levels;
  for (const domain::LevelRule& rule : block.level_rules)
    to["level_rules"].push_back({{"level", rule.level}, {"rounds", rule.rounds}});
  if (block.work_mode) to["work_mode"] = json_word(*block.work_mode);
  if (block.intent) to["intent"] = intent_json(*block.intent);
  if (block.vest) to["vest_kg"] = number_json(*block.vest / base::kilogram);
  if (block.odd_start) to["odd_start"] = block.odd_start->text;
  if (block.odd_team)
    to["odd_team"] = {{"size", block.odd_team->size}, {"factor", number_json(block.odd_team->factor)}};
}

Json block_json(const domain::Block& block, LevelNames inherited);

void put_work(Json& to, const domain::Block& block, LevelNames levels) {
  if (!block.items.empty()) to["items"] = items_json(block.items, levels);
  if (!block.slots.empty()) {
    Json& slots = to[block.kind == domain::BlockKind::Circuit ? "stations" : "slots"] = Json::array();
    for (const auto& slot : block.slots) slots.push_back(items_json(slot, levels));
  }
  for (const domain::Block& child : block.children) to["children"].push_back(block_json(child, levels));
}

Json block_json(const domain::Block& block, LevelNames inherited) {
  const LevelNames levels = block.levels.empty() ? inherited : LevelNames(block.levels);
  Json to{{"kind", json_word(block.kind)}};
  put(to, "title", block.title);
  const bool spoken = block.kind == domain::BlockKind::Note || block.kind == domain::BlockKind::Window;
  put(to, spoken ? "text" : "words", block.text);
  put_counts(to, block);
  put_clock(to, block);
  if (block.score) to["score"] = json_word(*block.score);
  put_rules(to, block, levels);
  put_work(to, block, levels);
  return to;
}

/// Characters from byte `begin` to byte `end`; a byte that begins none counts as one.
int characters_between(std::string_view text, std::size_t begin, std::size_t end) {
  int count = 0;
  end = std::min(end, text.size());
  for (std::size_t at = begin; at < end; at += board::character_at(text, at).bytes) ++count;
  return count;
}

Json place_json(std::string_view text, const domain::Span& span) {
  return {{"line", span.line},
          {"column", span.column},
          {"length", characters_between(text, span.begin, span.end)}};
}

Json diagnostic_json(std::string_view text, const domain::Diagnostic& diagnostic) {
  Json to = place_json(text, diagnostic.span);
  to["severity"] = json_word(diagnostic.severity);
  to["text"] = diagnostic.text;
  to["name"] = diagnostic.name;
  put(to, "hint", diagnostic.hint);
  if (!diagnostic.repairs.empty()) to["repairs"] = diagnostic.repairs;
  return to;
}

/// Steps and rules with where they stand, in the order of the text.
Json understood_json(std::string_view text, const board::Reading& reading) {
  std::vector<std::pair<domain::Span, const char*>> places;
  places.reserve(reading.steps.size() + reading.rules.size());
  for (const domain::Span& step : reading.steps) places.emplace_back(step, "step");
  // Lines of work are among the stretches that were read; they are named once, as steps.
  for (const domain::Span& rule : reading.rules)
    if (std::ranges::find(reading.steps, rule) == reading.steps.end()) places.emplace_back(rule, "rule");
  std::ranges::stable_sort(places, {}, [](const auto& each) { return each.first.begin; });
  Json list = Json::array();
  for (const auto& [span, as] : places) {
    if (span.end <= span.begin) continue;
    Json place = place_json(text, span);
    place["as"] = as;
    if (list.empty() || list.back() != place) list.push_back(std::move(place));
  }
  return list;
}

}  // namespace

Json blocks_json(const domain::Board& board) {
  Json blocks = Json::array();
  for (const domain::Block& block : board.blocks) blocks.push_back(block_json(block, {}));
  return blocks;
}

std::string reading_json(const board::Reading& reading, std::string_view text,
                         std::span<const std::string> sentences) {
  const domain::Board& board = reading.board;
  Json to{{"title", board.title}, {"blocks", blocks_json(board)}, {"fixed_seconds", nullptr}};
  if (const auto length = timetable::fixed_length(board)) to["fixed_seconds"] = seconds_json(*length);
  to["reading"] = Json::array();
  for (const std::string& sentence : sentences) to["reading"].push_back(sentence);
  to["understood"] = understood_json(text, reading);
  to["diagnostics"] = Json::array();
  for (const domain::Diagnostic& diagnostic : reading.diagnostics)
    to["diagnostics"].push_back(diagnostic_json(text, diagnostic));
  return to.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::api
