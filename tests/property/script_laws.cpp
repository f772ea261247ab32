#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "any_block.hpp"
#include "support/chalk.hpp"
#include "support/floor.hpp"
#include "support/script_text.hpp"
#include "timetable/length.hpp"

namespace repwright {
namespace {

using domain::Block;
using domain::BlockKind;
using rehearsal::Op;
using rehearsal::OpKind;
using rehearsal::Script;
using test::any_block;
using test::Floor;
using test::seconds;
using test::some_items;
using test::some_minutes;

bool below(int index, std::size_t size) {
  return index >= -1 && index < static_cast<int>(size);
}

void check_indices(const Script& script, const rehearsal::ScriptedPiece& piece, std::size_t places) {
  for (const Op& op : script.ops) {
    RC_ASSERT(below(op.task, script.tasks.size()));
    RC_ASSERT(op.kind != OpKind::Work || (op.task >= 0 && op.amount > 0));
    RC_ASSERT(op.kind != OpKind::MaxSet || op.task >= 0);
    if (op.kind == OpKind::Jump || op.kind == OpKind::Deadline)
      RC_ASSERT(op.target >= 0 && op.target < static_cast<int>(script.ops.size()));
    if (op.kind == OpKind::Pool)
      RC_ASSERT(op.pool >= 0 &&
                op.pool <
                    static_cast<int>(piece.teams.at(static_cast<std::size_t>(script.team)).pools.size()));
  }
  for (const rehearsal::Task& task : script.tasks) {
    RC_ASSERT(below(task.place, places));
    RC_ASSERT(below(task.alternative, script.tasks.size()));
    RC_ASSERT(below(task.gate, script.tasks.size()));
    RC_ASSERT(task.score_factor > 0);
  }
  RC_ASSERT(script.ops.back().kind == OpKind::End);
}

/// Plays a script alone at one second per unit; false if it has not ended after very many ops.
bool ends(const Script& script) {
  constexpr double never = std::numeric_limits<double>::infinity();
  double clock = 0;
  double bell = never;
  int target = -1;
  int cut = 0;
  std::size_t at = 0;
  for (int played = 0; played < 200'000; ++played) {
    const Op& op = script.ops.at(at);
    double length = 0;
    switch (op.kind) {
      case OpKind::End:
        return true;
      case OpKind::Work:
        length = op.amount;
        break;
      case OpKind::MaxSet:
      case OpKind::Pool:
        length = 5;
        break;
      case OpKind::Rest:
        length = op.amount;
        break;
      case OpKind::WaitUntil:
        clock = std::max(clock, op.amount);
        break;
      case OpKind::Deadline:
        bell = op.amount;
        target = op.target;
        break;
      case OpKind::NoDeadline:
        bell = never;
        break;
      case OpKind::Resume:
        at = static_cast<std::size_t>(cut);
        continue;
      case OpKind::Jump:
        at = static_cast<std::size_t>(op.target);
        continue;
      default:
        break;
    }
    if (length > 0 && clock + length >= bell) {
      clock = bell;
      bell = never;
      cut = static_cast<int>(at);
      at = static_cast<std::size_t>(target);
      continue;
    }
    if (std::isinf(length)) return false;  // open work without an end
    clock += length;
    ++at;
  }
  return false;
}

RC_GTEST_PROP(ScriptLaws, EveryIndexIsInRangeAndEveryScriptEnds, ()) {
  Floor floor;
  floor.add_many(*rc::gen::inRange(1, 6));
  floor.hall.unlimited = false;
  floor.hall.places = {{domain::EquipmentId{"pull-up-bar"}, *rc::gen::inRange(0, 3)},
                       {domain::EquipmentId{"rower"}, *rc::gen::inRange(0, 3)}};
  const domain::Board read = test::board({any_block(), any_block()});
  const auto plan = floor.write(read).plan;
  RC_ASSERT(plan.pieces.size() == 2U);
  for (const rehearsal::ScriptedPiece& piece : plan.pieces) {
    RC_ASSERT(piece.scripts.size() == floor.people.size());
    for (const Script& script : piece.scripts) {
      check_indices(script, piece, plan.places.size());
      RC_ASSERT(script.heat >= 0 && script.heat < piece.heats);
      if (!ends(script)) RC_FAIL(test::script_text(script));
    }
  }
  for (const rehearsal::FloorPlace& place : plan.places) RC_ASSERT(place.count > 0);
}

RC_GTEST_PROP(LayOutLaws, TheBoxesOfAFixedBoardLastAsLongAsTheBoard, ()) {
  std::vector<Block> blocks{any_block(), any_block()};
  for (Block& one : blocks)
    if (*rc::gen::inRange(0, 3) == 0) one.heats = 2;
  Block rest = test::block(BlockKind::Rest);
  rest.duration = some_minutes();
  Block part = test::block(BlockKind::Part);
  part.children = {any_block(), any_block()};
  const auto inside = timetable::fixed_length(part);
  if (*rc::gen::arbitrary<bool>()) part.duration = inside.value_or(seconds(0)) + some_minutes();
  blocks.insert(blocks.end(), {rest, part, test::block(BlockKind::Optional, some_items())});
  const domain::Board read = test::board(blocks);
  const auto fixed = timetable::fixed_length(read);
  double sum = 0;
  for (const Block& one : blocks) sum -= timetable::heat_change.si() * (one.heats.value_or(1) - 1);
  for (const timetable::Box& box : timetable::lay_out(read, {}).boxes)
    sum += box.planned ? box.planned->si() : std::numeric_limits<double>::infinity();
  if (fixed && std::abs(sum - fixed->si()) > 1e-6) RC_FAIL(fmt::format("{} is not {}", sum, fixed->si()));
}

RC_GTEST_PROP(ScriptLaws, TheWorkInAScriptIsTheWorkOnTheBoard, ()) {
  const int rounds = *rc::gen::inRange(1, 8);
  const int first = *rc::gen::inRange(1, 60);
  const int second = *rc::gen::inRange(1, 60);
  const bool in_parts = *rc::gen::arbitrary<bool>();
  Block work = test::block(BlockKind::ForTime,
                           {test::item("push-up", double(first)), test::item("air-squat", double(second))});
  work.rounds = rounds;
  Block split = test::block(BlockKind::ForTime);
  split.children = {test::block(BlockKind::Partition, {test::item("push-up", double(first * rounds)),
                                                       test::item("air-squat", double(second * rounds))})};
  Floor floor;
  floor.add_many(1);
  const Script script = floor.write(test::board({in_parts ? split : work})).plan.pieces.at(0).scripts.at(0);
  std::vector<double> done(script.tasks.size());
  for (const Op& op : script.ops)
    if (op.kind == OpKind::Work) done.at(static_cast<std::size_t>(op.task)) += op.amount;
  RC_ASSERT(done.at(0) == first * rounds);
  RC_ASSERT(done.at(1) == second * rounds);
}

}  // namespace
}  // namespace repwright
