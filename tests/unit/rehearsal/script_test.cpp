#include <gtest/gtest.h>

#include "support/chalk.hpp"
#include "support/floor.hpp"
#include "support/script_text.hpp"

namespace repwright::rehearsal {
namespace {

using domain::Block;
using domain::BlockKind;
using domain::Unit;
using test::block;
using test::board;
using test::Floor;
using test::item;
using test::minutes;
using test::script_text;
using test::seconds;

ScriptedPiece write_piece(const Floor& floor, const Block& one) {
  return floor.write(board({one})).plan.pieces.at(0);
}

/// The first person's script of a one-block board, alone on the floor.
std::string written(const Block& one) {
  Floor floor;
  floor.add_many(1);
  return script_text(write_piece(floor, one).scripts.at(0));
}

TEST(Script, UnrollsRoundsForTimeUnderTheCap) {
  Block rounds = block(BlockKind::ForTime, {item("run", 300.0, Unit::Metres), item("burpee", 5.0)});
  rounds.rounds = 2;
  rounds.cap = minutes(18);
  EXPECT_EQ(written(rounds),
            "0 until 1080 then 7; 1 work run 300; 2 work burpee 5; 3 round; 4 work run 300; 5 work burpee 5; "
            "6 round; 7 end");
}

TEST(Script, TakesEachRoundsCountFromTheList) {
  Block rounds =
      block(BlockKind::ForTime, {item("air-squat", domain::PerSet{{9.0, 6.0}}), item("burpee", 3.0)});
  rounds.rounds = 2;
  EXPECT_EQ(
      written(rounds),
      "0 work air-squat 9; 1 work burpee 3; 2 round; 3 work air-squat 6; 4 work burpee 3; 5 round; 6 end");
}

TEST(Script, GoesRoundUntilTheClockIsDownAfterABuyIn) {
  Block amrap = block(BlockKind::Amrap);
  amrap.duration = minutes(11);
  amrap.children = {block(BlockKind::Once, {item("run", 200.0, Unit::Metres)}),
                    block(BlockKind::Rounds, {item("burpee", 8.0), item("air-squat", 14.0)})};
  EXPECT_EQ(
      written(amrap),
      "0 until 660 then 6; 1 work run 200; 2 work burpee 8; 3 work air-squat 14; 4 round; 5 jump 2; 6 end");
}

TEST(Script, WaitsForTheBeepAndNotesAMissInEveryMinuteWork) {
  Block every = block(BlockKind::Every);
  every.every = minutes(1);
  every.intervals = 3;
  every.slots = {{item("burpee", 8.0)}, {}};
  EXPECT_EQ(
      written(every),
      "0 wait 0; 1 mark; 2 until 60 then 6; 3 work burpee 8; 4 round; 5 no deadline; 6 lap; 7 wait 120; "
      "8 mark; 9 until 180 then 13; 10 work burpee 8; 11 round; 12 no deadline; 13 lap; 14 end");
}

TEST(Script, PaysThePriceInEveryMinuteAfterTheFirstMiss) {
  Block every = block(BlockKind::Every);
  every.every = minutes(1);
  every.intervals = 2;
  every.score = domain::Score::LastFullMinute;
  every.slots = {{item("burpee", domain::Climb{1, 1})}};
  every.after_fail = {item("walk-brisk", 60.0, Unit::Metres)};
  EXPECT_EQ(written(every),
            "0 wait 0; 1 mark; 2 until 60 then 15; 3 work burpee 1; 4 round; 5 no deadline; 6 lap; "
            "7 wait 60; 8 mark; 9 until 120 then 18; 10 work burpee 2; 11 round; 12 no deadline; 13 lap; "
            "14 end; 15 wait 60; 16 until 120 then 18; 17 work walk-brisk 60; 18 end; 19 end");
}

TEST(Script, FillsTheRestOfTheSlotWithTheOpenLine) {
  Block every = block(BlockKind::Every);
  every.every = minutes(3);
  every.intervals = 1;
  every.score = domain::Score::KcalSum;
  every.slots = {{item("burpee", 8.0), item("fan-bike", domain::Max{}, Unit::Kilocalories)}};
  Floor floor;
  floor.add_many(1);
  const Script script = write_piece(floor, every).scripts.at(0);
  EXPECT_EQ(
      script_text(script),
      "0 wait 0; 1 mark; 2 until 180 then 7; 3 work burpee 8; 4 round; 5 work fan-bike inf; 6 no deadline; "
      "7 lap; 8 end");
  EXPECT_FALSE(script.tasks[0].counted);
  EXPECT_TRUE(script.tasks[1].counted);
}

TEST(Script, PicksUpWhereTheBellCutInCarriedOverIntervals) {
  Block intervals = block(BlockKind::Intervals, {item("burpee", 6.0)});
  intervals.rounds = 2;
  intervals.work = minutes(4);
  intervals.rest = minutes(2);
  intervals.carry_over = true;
  EXPECT_EQ(
      written(intervals),
      "0 wait 0; 1 mark; 2 until 240 then 6; 3 work burpee 6; 4 round; 5 jump 3; 6 lap; 7 wait 360; 8 mark; "
      "9 until 600 then 11; 10 resume; 11 lap; 12 end");
}

TEST(Script, RestsAsLongAsTheWorkOfAPrivateInterval) {
  Block intervals = block(BlockKind::Intervals, {item("run", 400.0, Unit::Metres)});
  intervals.rounds = 2;
  intervals.rest_rule = domain::RestRule{domain::RestKind::Ratio, {}, 1, 2, false};
  EXPECT_EQ(
      written(intervals),
      "0 mark; 1 work run 400; 2 round; 3 lap; 4 rest x2; 5 mark; 6 work run 400; 7 round; 8 lap; 9 end");
}

TEST(Script, StartsEverybodyAtAnotherStation) {
  Block circuit = block(BlockKind::Circuit);
  circuit.work = seconds(40);
  circuit.rest = seconds(20);
  circuit.slots = {{item("burpee", 40.0, Unit::Seconds)}, {item("plank", 40.0, Unit::Seconds)}};
  Floor floor;
  floor.add_many(2);
  const ScriptedPiece piece = write_piece(floor, circuit);
  EXPECT_EQ(script_text(piece.scripts[1]),
            "0 wait 0; 1 mark; 2 until 40 then 4; 3 work plank inf; 4 lap; 5 round; 6 wait 60; 7 mark; "
            "8 until 100 then 10; 9 work burpee inf; 10 lap; 11 round; 12 end");
  EXPECT_EQ(piece.scripts[0].tasks[0].movement.text, "burpee");
  EXPECT_EQ(piece.scripts[0].tasks[0].unit, Unit::Reps);
}

TEST(Script, RestsTwoMinutesBetweenSetsWhereTheBoardIsSilent) {
  Block sets = block(BlockKind::Sets, {item("air-squat", domain::PerSet{{3.0, domain::AtLeast{3}}}),
                                       item("pull-up", domain::Max{2})});
  sets.sets = 2;
  EXPECT_EQ(written(sets),
            "0 work air-squat 3; 1 max set pull-up less 2; 2 round; 3 rest 120; 4 max set air-squat less 1; "
            "5 max set pull-up less 2; 6 round; 7 end");
}

TEST(Script, DoublesWhatIsCountedForEachSide) {
  Block sets = block(BlockKind::Sets, {item("side-plank", 30.0, Unit::Seconds)});
  sets.sets = 1;
  sets.items[0].each_side = true;
  EXPECT_EQ(written(sets), "0 work side-plank 60; 1 round; 2 end");
}

TEST(Script, BuildsUpToTheHeavySetInsideTheWindow) {
  Block build = block(BlockKind::Build, {item("bb-front-squat", 3.0)});
  build.duration = minutes(15);
  Floor floor;
  floor.add_many(1);
  const Script script = write_piece(floor, build).scripts.at(0);
  EXPECT_EQ(script.step_rounds, 6);
  EXPECT_EQ(script.tasks.size(), 6U);
  EXPECT_LT(script.tasks.front().effort.load, script.tasks.back().effort.load);
  EXPECT_DOUBLE_EQ(script.load_best, script.tasks.back().effort.load);
}

TEST(Script, ClimbsALadderRungByRung) {
  Block ladder = block(BlockKind::Ladder, {item("air-squat", domain::Climb{2, 2})});
  ladder.duration = minutes(1);
  const std::string text = written(ladder);
  EXPECT_TRUE(text.find("1 work air-squat 2; 2 round; 3 work air-squat 4; 4 round; 5 work air-squat 6") !=
              std::string::npos)
      << text;
}

TEST(Script, WorksOnTheOneOpenLineUntilTheClockIsDown) {
  Block finisher = block(BlockKind::MaxEffort, {item("burpee", domain::Max{})});
  finisher.duration = minutes(4);
  EXPECT_EQ(written(finisher), "0 until 240 then 2; 1 work burpee inf; 2 end");
}

TEST(Script, PaysForBreaksAndInterruptsBesideTheWork) {
  Block hang = block(BlockKind::Accumulate, {item("dead-hang", 180.0, Unit::Seconds)});
  hang.penalty = {item("step-back-burpee", 5.0)};
  Block lunges = block(BlockKind::ForDistance, {item("walking-lunge", domain::Max{}, Unit::Metres)});
  lunges.duration = minutes(10);
  lunges.score = domain::Score::Distance;
  lunges.interrupt = domain::Interrupt{minutes(1), minutes(1), {item("air-squat", 3.0)}};
  Floor floor;
  floor.add_many(1);
  const auto pieces = floor.write(board({hang, lunges})).plan.pieces;
  const Script& hanging = pieces[0].scripts[0];
  EXPECT_EQ(test::op_text(hanging, hanging.penalty.at(0)), "work step-back-burpee 5");
  const Script& lunging = pieces[1].scripts[0];
  ASSERT_TRUE(lunging.duty);
  EXPECT_DOUBLE_EQ(lunging.duty->first, 60);
  EXPECT_EQ(test::op_text(lunging, lunging.duty->ops.at(0)), "work air-squat 3");
  EXPECT_FALSE(lunging.tasks[static_cast<std::size_t>(lunging.duty->ops[0].task)].counted);
}

TEST(Script, StartsTheWaterfallOneByOneAndHeatsInTurn) {
  Block flow = block(BlockKind::ForTime, {item("burpee", 20.0)});
  flow.start = domain::Stagger{seconds(45), 2};
  Block heats = block(BlockKind::ForTime, {item("burpee", 20.0)});
  heats.heats = 2;
  Floor floor;
  floor.add_many(4);
  const auto pieces = floor.write(board({flow, heats})).plan.pieces;
  EXPECT_DOUBLE_EQ(pieces[0].scripts[1].start, 0);
  EXPECT_DOUBLE_EQ(pieces[0].scripts[2].start, 45);
  EXPECT_EQ(pieces[1].heats, 2);
  EXPECT_EQ(pieces[1].scripts[2].heat, 0);
  EXPECT_EQ(pieces[1].scripts[3].heat, 1);
  EXPECT_DOUBLE_EQ(pieces[1].heat_change, 75);
}

TEST(Script, AssignsHeatsInTheOrderOfArrival) {
  Block heats = block(BlockKind::ForTime, {item("burpee", 20.0)});
  heats.heats = 2;
  Floor floor;
  floor.add_many(3);
  floor.gym_class.arrivals = {
      {floor.people[0].id, seconds(300)}, {floor.people[1].id, {}}, {floor.people[2].id, {}}};
  const auto plan = floor.write(board({heats})).plan;
  EXPECT_EQ(plan.late, (std::vector<double>{300, 0, 0}));
  EXPECT_EQ(plan.pieces[0].scripts[0].heat, 0);
  EXPECT_EQ(plan.pieces[0].scripts[1].heat, 0);
  EXPECT_EQ(plan.pieces[0].scripts[2].heat, 1);
}

TEST(Script, SendsEverySecondPersonToTheOddStartFirst) {
  Block rounds = block(BlockKind::ForTime, {item("burpee", 5.0), item("air-squat", 9.0)});
  rounds.odd_start = domain::MovementId{"air-squat"};
  Floor floor;
  floor.add_many(2);
  const ScriptedPiece piece = write_piece(floor, rounds);
  EXPECT_EQ(script_text(piece.scripts[0]), "0 work burpee 5; 1 work air-squat 9; 2 round; 3 end");
  EXPECT_EQ(script_text(piece.scripts[1]), "0 work air-squat 9; 1 work burpee 5; 2 round; 3 end");
}

Block pairs(std::vector<domain::Item> items) {
  Block made = block(BlockKind::Partner, std::move(items));
  made.team_sizes = {2};
  made.score = domain::Score::Time;
  return made;
}

TEST(Script, SharesCountsInPoolsAndDoesTheRestTogether) {
  domain::Item swings = item("air-squat", 60.0);
  swings.mode = domain::PartnerMode::OneWorks;
  swings.gate = domain::Gate{domain::MovementId{"plank"}, "", Unit::Seconds};
  domain::Item together = item("burpee", 10.0);
  together.share = domain::Share::Sync;
  Floor floor;
  floor.add_many(3);
  Block team = pairs({swings, together});
  team.odd_team = domain::OddTeam{3, 1.5};
  const ScriptedPiece piece = write_piece(floor, team);
  ASSERT_EQ(piece.teams.size(), 1U);
  EXPECT_EQ(piece.teams[0].people, (std::vector<int>{0, 1, 2}));
  EXPECT_EQ(piece.teams[0].pools, (std::vector<double>{90}));
  EXPECT_EQ(piece.teams[0].one_works, (std::vector<bool>{true}));
  EXPECT_EQ(script_text(piece.scripts[0]),
            "0 pool 0 air-squat; 1 meet; 2 work burpee 10; 3 meet; 4 meet; 5 round; 6 end");
  EXPECT_EQ(script_text(piece.scripts[2]),
            "0 pool 0 air-squat; 1 meet; 2 work burpee 10; 3 meet; 4 meet; 5 end");
  const auto& task = piece.scripts[2].tasks.at(0);
  EXPECT_EQ(piece.scripts[2].tasks.at(static_cast<std::size_t>(task.gate)).movement.text, "plank");
  EXPECT_TRUE(piece.scripts[0].tasks.back().counted);
  EXPECT_FALSE(piece.scripts[1].tasks.back().counted);
}

TEST(Script, TakesTurnsPieceByPieceOrRoundByRound) {
  Block turns = pairs({item("rower", 250.0, Unit::Metres)});
  turns.duration = minutes(18);
  turns.work_mode = domain::WorkMode::AlternateByPiece;
  Floor floor;
  floor.add_many(2);
  EXPECT_EQ(script_text(write_piece(floor, turns).scripts[1]),
            "0 until 1080 then 6; 1 take; 2 work rower 250; 3 round; 4 pass; 5 jump 1; 6 end");
  Block by_round = pairs({item("burpee", 5.0), item("air-squat", 9.0)});
  by_round.rounds = 3;
  by_round.work_mode = domain::WorkMode::AlternateByRound;
  EXPECT_EQ(script_text(write_piece(floor, by_round).scripts[1]),
            "0 take; 1 work burpee 5; 2 work air-squat 9; 3 round; 4 pass; 5 end");
}

TEST(Script, SwapsPartsWhenAllOfTheTeamAreDone) {
  Block swap = pairs({item("rower", 10.0, Unit::Kilocalories), item("burpee", 12.0)});
  swap.duration = minutes(12);
  swap.work_mode = domain::WorkMode::SwapParts;
  Floor floor;
  floor.add_many(2);
  const ScriptedPiece piece = write_piece(floor, swap);
  EXPECT_EQ(
      script_text(piece.scripts[0]),
      "0 until 720 then 7; 1 work rower 10; 2 meet; 3 work burpee 12; 4 meet; 5 round; 6 jump 1; 7 end");
  EXPECT_EQ(script_text(piece.scripts[1]),
            "0 until 720 then 6; 1 work burpee 12; 2 meet; 3 work rower 10; 4 meet; 5 jump 1; 6 end");
  swap.duration.reset();
  swap.rounds = 2;
  swap.children = {block(BlockKind::Once, std::move(swap.items)),
                   block(BlockKind::Once, {item("sit-up", 20.0)})};
  swap.items.clear();
  EXPECT_EQ(script_text(write_piece(floor, swap).scripts[1]),
            "0 work sit-up 20; 1 meet; 2 work rower 10; 3 work burpee 12; 4 meet; 5 work sit-up 20; 6 meet; "
            "7 work rower 10; 8 work burpee 12; 9 meet; 10 end");
}

TEST(Script, RunsARelayInAsManyHeatsAsTheLanesAsk) {
  Block relay = block(BlockKind::Relay, {item("burpee", 6.0)});
  relay.team_sizes = {3, 4};
  relay.turns_each = 2;
  relay.lanes = 2;
  Floor floor;
  floor.add_many(10);
  const ScriptedPiece piece = write_piece(floor, relay);
  EXPECT_EQ(piece.teams.size(), 3U);
  EXPECT_EQ(piece.teams[2].people.size(), 4U);
  EXPECT_EQ(piece.heats, 2);
  EXPECT_EQ(script_text(piece.scripts[0]),
            "0 take; 1 work burpee 6; 2 round; 3 pass; 4 take; 5 work burpee 6; 6 round; 7 pass; 8 end");
}

TEST(Script, DividesAFreePartIntoEvenPartsOfAThirdOfTheBestSet) {
  Block race = block(BlockKind::ForTime);
  race.children = {block(BlockKind::Partition, {item("pull-up", 24.0), item("push-up", 40.0)})};
  Floor floor;
  floor.add_many(1);  // best sets 7 and 28
  const Script script = write_piece(floor, race).scripts.at(0);
  EXPECT_EQ(test::op_text(script, script.ops.at(0)), "work pull-up 2");
  double pulls = 0;
  double pushes = 0;
  for (const Op& op : script.ops)
    if (op.kind == OpKind::Work) (op.task == 0 ? pulls : pushes) += op.amount;
  EXPECT_DOUBLE_EQ(pulls, 24);
  EXPECT_DOUBLE_EQ(pushes, 40);
}

TEST(Script, NamesLinesThatNobodyKnows) {
  domain::Item unknown = item("", 50.0);
  unknown.movement.reset();
  unknown.free_text = "banded pull aparts";
  Floor floor;
  floor.add_many(1);
  const auto written = floor.write(board({block(BlockKind::ForTime, {unknown})}));
  ASSERT_EQ(written.findings.size(), 1U);
  EXPECT_EQ(written.findings[0].kind, domain::FindingKind::FreeText);
  EXPECT_EQ(script_text(written.plan.pieces[0].scripts[0]), "0 work  50; 1 round; 2 end");
}

}  // namespace
}  // namespace repwright::rehearsal
