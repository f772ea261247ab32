#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "board/assembly.hpp"

namespace repwright::board {
namespace {

using base::Duration;
using domain::Block;
using domain::BlockKind;
using domain::Score;
using domain::Unit;

/// `Minute 1: 1 burpee, min 2: 2 burpees ...`: the one slot whose amount grows with the minutes; nothing
/// where the minutes do not grow so.
std::optional<Entry> climb_of_minutes(const Draft& draft) {
  if (draft.minutes.size() < 2 || draft.slots.size() != draft.minutes.size()) return std::nullopt;
  if (!draft.said.climbing && !draft.said.until_fail) return std::nullopt;
  const auto plain = [](const std::vector<Entry>& slot) -> std::optional<double> {
    if (slot.size() != 1 || !slot[0].amount) return std::nullopt;
    return slot[0].amount->plain();
  };
  const auto first = plain(draft.slots[0]);
  const auto second = plain(draft.slots[1]);
  if (!first || !second) return std::nullopt;
  for (std::size_t i = 1; i < draft.slots.size(); ++i) {
    const auto value = plain(draft.slots[i]);
    if (!value || draft.slots[i][0].item.movement != draft.slots[0][0].item.movement) return std::nullopt;
    if (*value != *first + static_cast<double>(i) * (*second - *first)) return std::nullopt;
  }
  Entry entry = draft.slots[0][0];
  Numbers climb = entry.amount.value_or(Numbers{});
  climb.values = {*first, *second};
  climb.joined = Joined::Dashes;
  climb.open = true;
  entry.amount = std::move(climb);
  return entry;
}

/// Whole intervals in that time, to the nearest.
int intervals_in(Duration time, Duration every) {
  return static_cast<int>(std::min(1e6, std::floor(time / every + 0.5)));
}

/// Lines without labels: slots in turn where the minutes divide by them, else all in one.
void settle_unlabelled(Session& session, Draft& draft) {
  const bool labelled = draft.slot >= 0 || !draft.minutes.empty() || draft.said.alternating;
  if (labelled || draft.slots.size() < 2) return;
  const bool divides =
      draft.block.intervals && *draft.block.intervals % static_cast<int>(draft.slots.size()) == 0;
  const bool short_turn = draft.block.every && draft.block.every->si() <= 60;
  const domain::Span span = draft.slots[1].empty() ? draft.span : draft.slots[1].front().span;
  const bool in_turn = divides && short_turn;
  session.remarks.add({"slots-or-together", span,
                       in_turn ? "lines without labels were read as one minute each, in turn"
                               : "lines without labels were read as one turn, all of them together",
                       "number the lines, or join them with +"});
  if (in_turn) return;
  for (std::size_t i = 1; i < draft.slots.size(); ++i)
    draft.slots[0].insert(draft.slots[0].end(), draft.slots[i].begin(), draft.slots[i].end());
  draft.slots.resize(1);
}

std::optional<Unit> unit_of_max(const Block& block) {
  for (const auto& slot : block.slots)
    for (const domain::Item& item : slot)
      if (std::holds_alternative<domain::Max>(item.amount)) return item.unit;
  return std::nullopt;
}

std::size_t steps_in(const Block& block) {
  std::size_t steps = 0;
  for (const auto& slot : block.slots) steps += slot.size();
  return steps;
}

/// A game's '10 hits = 1 pt' makes points the score.
bool counts_points(const Block& block) {
  for (const auto& slot : block.slots)
    for (const domain::Item& item : slot)
      for (const std::string_view word : {" pt", " point"})
        if (item.free_text.find(word) != std::string::npos || item.note.find(word) != std::string::npos)
          return true;
  return false;
}

}  // namespace

Block finish_every(Session& session, Places& places, Draft& draft, std::optional<Duration> window) {
  if (std::optional<Entry> climb = climb_of_minutes(draft)) draft.slots = {{*std::move(climb)}};
  const Duration every = draft.block.every.value_or(Duration{});
  const std::optional<Duration> time = draft.clock ? draft.clock : window;
  // What grows from minute to minute and has no end goes on until somebody fails.
  const bool endless = draft.said.climbing && !draft.block.intervals && !time;
  const bool climbs = draft.said.until_fail || endless;
  if (!draft.block.intervals && time && every.si() > 0) draft.block.intervals = intervals_in(*time, every);
  settle_unlabelled(session, draft);
  Block block = draft.block;
  block.kind = BlockKind::Every;
  block.id = places.block(draft.span);
  if (!block.intervals) {
    const std::size_t turns = std::max<std::size_t>(1, draft.slots.size());
    block.intervals = climbs ? 20 : static_cast<int>(turns);
    session.remarks.add({"no-length", draft.span,
                         fmt::format("`{}` does not say how often: {} intervals were taken",
                                     session.kept(draft.span), *block.intervals),
                         "write x 10, or the minutes"});
  }
  if (draft.slots.size() > 1 && *block.intervals % static_cast<int>(draft.slots.size()) != 0)
    session.remarks.add({"slots-do-not-divide", draft.span,
                         fmt::format("`{}`: {} intervals are no whole number of turns through {} slots",
                                     session.kept(draft.span), *block.intervals, draft.slots.size()),
                         "the first slots come up once more than the others"});
  for (const auto& slot : draft.slots)
    block.slots.push_back(
        finish_entries(session, places, slot, {.block = block, .draft = draft, .as_many = false}));
  const auto max = unit_of_max(block);
  block.score = max == Unit::Kilocalories ? Score::KcalSum
                : max == Unit::Metres     ? Score::DistanceSum
                : max                     ? Score::RepsSum
                                          : Score::None;
  if (draft.said.load_scored) block.score = Score::Load;
  if (climbs) block.score = Score::LastFullMinute;
  if (steps_in(block) == 0)
    session.remarks.add({"no-work", draft.span, fmt::format("`{}` has no work", session.kept(draft.span)),
                         "write what is done in each turn"});
  return block;
}

Block finish_circuit(Session& session, Places& places, Draft& draft, std::optional<Duration> window) {
  Block block = draft.block;
  block.kind = BlockKind::Circuit;
  block.id = places.block(draft.span);
  // `4 x 3 min` over four stations is one lap.
  const bool times_are_stations =
      draft.times_of_work && static_cast<std::size_t>(*draft.times_of_work) == draft.slots.size();
  if (!block.laps) block.laps = times_are_stations ? 1 : block.rounds.value_or(1);
  block.rounds.reset();
  if (!block.rest) block.rest = Duration{};
  if (block.rest_rule) {
    block.lap_rest = block.lap_rest ? block.lap_rest : std::optional(block.rest_rule->length);
    block.rest_rule.reset();
  }
  if (!block.work) {
    const auto stations = static_cast<double>(std::max<std::size_t>(1, draft.slots.size()));
    const auto whole = draft.clock ? draft.clock : window;
    block.work = whole ? *whole / (stations * std::max(1, *block.laps)) : base::minute;
    if (!whole)
      session.remarks.add({"no-length", draft.span,
                           fmt::format("`{}` does not say how long a station lasts: a minute was taken",
                                       session.kept(draft.span)),
                           "write 40/20, or the minutes"});
  }
  for (const auto& slot : draft.slots)
    block.slots.push_back(
        finish_entries(session, places, slot, {.block = block, .draft = draft, .slots = true}));
  block.score = counts_points(block) ? Score::Points : Score::None;
  if (steps_in(block) == 0)
    session.remarks.add({"no-work", draft.span, fmt::format("`{}` has no stations", session.kept(draft.span)),
                         "write what is done at each"});
  return block;
}

}  // namespace repwright::board
