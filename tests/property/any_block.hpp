#pragma once

#include <rapidcheck/gtest.h>

#include <vector>

#include "support/chalk.hpp"
#include "support/shipped.hpp"

/// Boards that nobody would chalk, and that must be played all the same.
namespace repwright::test {

inline domain::Item any_item() {
  const auto& movement = *rc::gen::elementOf(shipped_catalogue().movements);
  domain::Item line = item(movement.id.text, double(*rc::gen::inRange(1, 40)), movement.default_unit);
  switch (*rc::gen::inRange(0, 8)) {
    case 0:
      line.amount = domain::PerSet{{9.0, 6.0, domain::Max{1}}};
      break;
    case 1:
      line.amount = domain::Max{*rc::gen::inRange(0, 3)};
      break;
    case 2:
      line.amount = domain::Climb{2, 2};
      break;
    case 3:
      line.amount = domain::Range{6, 8};
      break;
    case 4:
      line.each_side = true;
      break;
    default:
      break;
  }
  if (*rc::gen::inRange(0, 4) == 0) line.mode = domain::PartnerMode::OneWorks;
  if (*rc::gen::inRange(0, 4) == 0) line.share = domain::Share::Sync;
  if (*rc::gen::inRange(0, 4) == 0) line.second_station = domain::MovementId{"ring-row"};
  return line;
}

inline std::vector<domain::Item> some_items() {
  std::vector<domain::Item> items;
  for (int left = *rc::gen::inRange(1, 4); left > 0; --left) items.push_back(any_item());
  return items;
}

inline base::Duration some_minutes() {
  return seconds(60.0 * *rc::gen::inRange(1, 20));
}

/// A block as the reader could give it: the fields that its kind needs, some others.
inline domain::Block any_block() {
  using domain::BlockKind;
  domain::Block made = block(*rc::gen::element(
      BlockKind::ForTime, BlockKind::Amrap, BlockKind::Every, BlockKind::Intervals, BlockKind::Sets,
      BlockKind::Superset, BlockKind::Circuit, BlockKind::Ladder, BlockKind::Partner, BlockKind::Relay,
      BlockKind::Build, BlockKind::Accumulate, BlockKind::ForDistance, BlockKind::MaxEffort));
  made.duration = some_minutes();
  made.score =
      *rc::gen::element(domain::Score::Time, domain::Score::RoundsReps, domain::Score::LastFullMinute);
  made.rounds = *rc::gen::inRange(1, 6);
  made.sets = *rc::gen::inRange(1, 6);
  if (made.kind == BlockKind::Every || made.kind == BlockKind::Circuit) {
    made.duration.reset();
    made.every = seconds(60);
    made.work = seconds(40);
    made.rest = seconds(*rc::gen::inRange(0, 20));
    made.intervals = *rc::gen::inRange(1, 20);
    made.laps = *rc::gen::inRange(1, 4);
    made.slots = {some_items(), {}, some_items()};
    return made;
  }
  if (made.kind == BlockKind::Intervals && *rc::gen::arbitrary<bool>()) {
    made.duration.reset();
    made.work = seconds(40);
    made.rest = seconds(20);
    made.carry_over = *rc::gen::arbitrary<bool>();
  }
  made.items = some_items();
  if (made.kind == BlockKind::ForTime && *rc::gen::arbitrary<bool>()) {
    made.children = {block(BlockKind::Once, some_items()), block(BlockKind::Rounds, some_items()),
                     block(BlockKind::Partition, some_items())};
    made.items.clear();
  }
  if (*rc::gen::arbitrary<bool>()) made.team_sizes = {2};
  if (*rc::gen::arbitrary<bool>())
    made.work_mode = *rc::gen::element(domain::WorkMode::AlternateByPiece, domain::WorkMode::AlternateByRound,
                                       domain::WorkMode::SwapParts);
  if (*rc::gen::arbitrary<bool>()) made.interrupt = domain::Interrupt{seconds(60), seconds(60), some_items()};
  return made;
}

}  // namespace repwright::test
