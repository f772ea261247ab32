#include <gtest/gtest.h>

#include "support/chalk.hpp"
#include "support/floor.hpp"

namespace repwright::rehearsal {
namespace {

using domain::Block;
using domain::BlockKind;
using domain::Unit;
using test::block;
using test::board;
using test::Floor;
using test::item;

ScriptedPiece write_piece(const Floor& floor, const Block& one) {
  return floor.write(board({one})).plan.pieces.at(0);
}

domain::Hall eight_bars() {
  domain::Hall hall;
  hall.unlimited = false;
  hall.places = {{domain::EquipmentId{"pull-up-bar"}, 8}, {domain::EquipmentId{"rack"}, 4}};
  return hall;
}

TEST(ScriptPlaces, QueuesForThePlacesThatTheHallHasLeft) {
  Floor floor;
  floor.add_many(1);
  floor.hall = eight_bars();
  floor.gym_class.faults = {{domain::EquipmentId{"pull-up-bar"}, 1, "loose bolt"}};
  const auto plan =
      floor.write(board({block(BlockKind::ForTime, {item("pull-up", 4.0), item("burpee", 5.0)})})).plan;
  ASSERT_EQ(plan.places.size(), 1U);
  EXPECT_EQ(plan.places[0].count, 7);
  EXPECT_EQ(plan.pieces[0].scripts[0].tasks[0].place, 0);
  EXPECT_EQ(plan.pieces[0].scripts[0].tasks[1].place, -1);
}

TEST(ScriptPlaces, LetsThreeShareARackAndTakesBarsForIt) {
  Floor floor;
  floor.add_many(5);
  floor.hall = eight_bars();
  floor.hall.displacements = {{domain::EquipmentId{"rack"}, domain::EquipmentId{"pull-up-bar"}}};
  const auto plan =
      floor.write(board({block(BlockKind::ForTime, {item("bb-back-squat", 5.0), item("pull-up", 4.0)})}))
          .plan;
  ASSERT_EQ(plan.places.size(), 2U);
  EXPECT_EQ(plan.places[0].count, 12);
  EXPECT_EQ(plan.places[1].count, 6);  // five people on two racks
}

TEST(ScriptPlaces, OffersTheSecondStationToWhomItSuits) {
  domain::Item pulls = item("pull-up", 4.0);
  pulls.second_station = domain::MovementId{"ring-row"};
  Floor floor;
  floor.add_many(1);
  floor.hall = eight_bars();
  const Script script = write_piece(floor, block(BlockKind::ForTime, {pulls})).scripts.at(0);
  EXPECT_EQ(script.tasks.at(static_cast<std::size_t>(script.tasks.at(0).alternative)).movement.text,
            "ring-row");
}

TEST(ScriptPlaces, MakesASecondStationOfItsOwnKind) {
  domain::Item run = item("run", 200.0, Unit::Metres);
  run.second_station = domain::MovementId{"rower"};
  Block vested = block(BlockKind::ForTime, {run});
  vested.vest = base::Mass::from_si(6);
  Floor floor;
  floor.add_many(1);
  const Script script = write_piece(floor, vested).scripts.at(0);
  const Task& rower = script.tasks.at(static_cast<std::size_t>(script.tasks.at(0).alternative));
  EXPECT_EQ(rower.movement.text, "rower");
  EXPECT_FALSE(rower.outdoors);
  EXPECT_EQ(rower.door, 0);
  EXPECT_DOUBLE_EQ(rower.effort.extra_mass, 6);
}

TEST(ScriptPlaces, NeverTradesMetresForRepsAtASecondStation) {
  domain::Item run = item("run", 200.0, Unit::Metres);
  run.second_station = domain::MovementId{"burpee"};
  Floor floor;
  floor.add_many(1);
  EXPECT_EQ(write_piece(floor, block(BlockKind::ForTime, {run})).scripts.at(0).tasks.at(0).alternative, -1);
}

TEST(ScriptPlaces, CountsTheKitThatIsNeededAtOnce) {
  domain::Item swings = item("kb-swing", 10.0);
  swings.loads = domain::Loads{{base::Mass::from_si(16)}, false};
  Floor floor;
  floor.add_many(5);
  floor.hall.unlimited = false;
  floor.hall.kit = {{domain::EquipmentId{"kettlebell"}, base::Mass::from_si(16), std::nullopt, "", 3}};
  const auto written = floor.write(board({block(BlockKind::ForTime, {swings})}));
  ASSERT_EQ(written.findings.size(), 1U);
  EXPECT_EQ(written.findings[0].text, "Kettlebell 16 kg: 5 needed at once, 3 in the hall.");
  Block heats = block(BlockKind::ForTime, {swings});
  heats.heats = 2;
  EXPECT_TRUE(floor.write(board({heats})).findings.empty());
}

}  // namespace
}  // namespace repwright::rehearsal
