#include <gtest/gtest.h>

#include "support/chalk.hpp"
#include "timetable/timetable.hpp"

namespace repwright::timetable {
namespace {

using domain::Block;
using domain::BlockKind;
using test::block;
using test::board;
using test::item;
using test::minutes;
using test::seconds;

Block note(std::string text, std::optional<base::Duration> length) {
  Block made = block(BlockKind::Note);
  made.text = std::move(text);
  made.duration = length;
  return made;
}

Block amrap(double length) {
  Block made = block(BlockKind::Amrap, {item("burpee", 6.0)});
  made.duration = minutes(length);
  return made;
}

Block window(double from, double to, std::string text, std::vector<Block> children = {}) {
  Block made = block(BlockKind::Window);
  made.from = minutes(from);
  made.to = minutes(to);
  made.text = std::move(text);
  made.children = std::move(children);
  return made;
}

std::vector<BoxKind> kinds(const Timetable& timetable) {
  std::vector<BoxKind> all;
  for (const Box& box : timetable.boxes) all.push_back(box.kind);
  return all;
}

double planned_seconds(const Timetable& timetable) {
  double sum = 0;
  for (const Box& box : timetable.boxes) sum += box.planned.value_or(seconds(-1e9)).si();
  return sum;
}

TEST(LayOut, PutsTheBoxesOfTheClassWhereTheBoardIsSilent) {
  Block rest = block(BlockKind::Rest);
  rest.duration = minutes(4);
  domain::GymClass saturday;
  saturday.boxes = {minutes(4), std::nullopt, minutes(3), minutes(4)};
  saturday.length = minutes(75);
  const Timetable t = lay_out(board({note("Warm-up (coach)", minutes(10)), amrap(11), rest, amrap(11),
                                     note("Cool-down", minutes(8))}),
                              saturday);
  EXPECT_EQ(kinds(t), (std::vector{BoxKind::Briefing, BoxKind::WarmUp, BoxKind::Work, BoxKind::Rest,
                                   BoxKind::Work, BoxKind::Scores, BoxKind::CoolDown, BoxKind::Clean}));
  EXPECT_DOUBLE_EQ(planned_seconds(t), 60.0 * (4 + 10 + 11 + 4 + 11 + 3 + 8 + 4));
  EXPECT_EQ(t.class_length, minutes(75));
  EXPECT_EQ(t.pieces[0].name, "AMRAP 11:00 (1)");
  EXPECT_EQ(t.boxes[4].piece, 1);
}

TEST(LayOut, TakesNoBoxFromTheClassThatTheBoardNames) {
  domain::GymClass gym_class;
  gym_class.boxes = {minutes(3), minutes(4), minutes(2), minutes(3)};
  const Timetable t = lay_out(board({note("Talk", minutes(2)), note("change-over", std::nullopt), amrap(10),
                                     note("scores and wipe down", minutes(5))}),
                              gym_class);
  EXPECT_EQ(kinds(t), (std::vector{BoxKind::Briefing, BoxKind::Change, BoxKind::Work, BoxKind::Scores,
                                   BoxKind::Clean}));
  EXPECT_EQ(t.boxes[0].planned, minutes(2));
  EXPECT_EQ(t.boxes[1].planned, minutes(4));  // named without minutes: the class knows them
}

TEST(LayOut, KeepsWindowsAtTheirClockTimesAfterABriefing) {
  domain::GymClass gym_class;
  gym_class.boxes.briefing = minutes(3);
  Block row = block(BlockKind::ForTime, {item("rower", 2000.0, domain::Unit::Metres)});
  row.cap = minutes(10);
  const Timetable t =
      lay_out(board({window(0, 10, "", {amrap(8)}), window(12, 22, "", {row}), window(22, 25, "cool-down")}),
              gym_class);
  ASSERT_EQ(kinds(t), (std::vector{BoxKind::Briefing, BoxKind::Work, BoxKind::Change, BoxKind::Work,
                                   BoxKind::CoolDown}));
  EXPECT_EQ(t.boxes[1].starts_at, minutes(3));
  EXPECT_EQ(t.boxes[1].planned, minutes(10));  // the window, not the eight minutes in it
  EXPECT_EQ(t.pieces[0].length, minutes(8));
  EXPECT_EQ(t.boxes[2].planned, minutes(2));
  EXPECT_EQ(t.boxes[3].starts_at, minutes(15));
  EXPECT_EQ(t.pieces[1].cap, minutes(10));
}

TEST(LayOut, SharesAWindowAmongChildrenWithoutMinutes) {
  Block sets = block(BlockKind::Sets, {item("box-step-up", 8.0)});
  sets.sets = 3;
  const Timetable t = lay_out(board({window(12, 22, "skill", {sets, sets})}), {});
  ASSERT_EQ(t.boxes.size(), 3U);  // the gap before the first window is a box too
  EXPECT_EQ(t.boxes[1].planned, minutes(5));
  EXPECT_EQ(t.pieces[1].cap, minutes(5));
  EXPECT_EQ(t.pieces[1].clock, ClockKind::Own);
}

TEST(LayOut, RepeatsASlotListByTheMinute) {
  Block every = block(BlockKind::Every);
  every.every = minutes(1);
  every.intervals = 5;
  every.slots = {{item("pull-up", 8.0)}, {}};
  const Piece piece = lay_out(board({every}), {}).pieces.at(0);
  ASSERT_EQ(piece.phases.size(), 5U);
  EXPECT_EQ(piece.phases[3], (Phase{PhaseKind::Rest, {180'000}, {240'000}, 1, 1}));
  EXPECT_EQ(piece.phases[4], (Phase{PhaseKind::Work, {240'000}, {300'000}, 2, 0}));
  EXPECT_EQ(piece.length, minutes(5));
}

Block twenty_ten() {
  Block made = block(BlockKind::Intervals, {item("box-jump", domain::Max{})});
  made.rounds = 8;
  made.work = seconds(20);
  made.rest = seconds(10);
  return made;
}

TEST(LayOut, CountsTheLastRestOnlyIfTheHouseSaysSo) {
  EXPECT_EQ(lay_out(board({twenty_ten()}), {}).pieces.at(0).length, seconds(240));
  EXPECT_EQ(lay_out(board({twenty_ten()}), {}, {.last_rest_counts = false}).pieces.at(0).length,
            seconds(230));
}

TEST(LayOut, NeverFollowsTheLastIntervalWithARestBetween) {
  Block intervals = block(BlockKind::Intervals, {item("burpee", domain::Max{})});
  intervals.rounds = 3;
  intervals.work = minutes(4);
  intervals.rest_rule = domain::RestRule{
      .kind = domain::RestKind::Fixed, .length = minutes(2), .work = 1, .rest = 1, .between_only = true};
  const Piece piece = lay_out(board({intervals}), {}).pieces.at(0);
  EXPECT_EQ(piece.length, minutes(16));
  EXPECT_EQ(piece.phases.back().kind, PhaseKind::Work);
}

Block circuit() {
  Block made = block(BlockKind::Circuit);
  made.work = seconds(40);
  made.rest = seconds(20);
  made.laps = 3;
  made.lap_rest = seconds(30);
  for (int i = 0; i < 6; ++i) made.slots.push_back({item("ring-row", 40.0, domain::Unit::Seconds)});
  return made;
}

TEST(LayOut, RestsBetweenTheLapsOfACircuit) {
  const Piece piece = lay_out(board({circuit()}), {}).pieces.at(0);
  EXPECT_EQ(piece.length, seconds(3 * 6 * 60 + 2 * 30));
  EXPECT_EQ(piece.phases[12], (Phase{PhaseKind::Rest, {360'000}, {390'000}, 0, 6}));
  EXPECT_EQ(piece.phases.back().end, (base::SimTime{1'140'000}));
}

TEST(LayOut, RepeatsAFixedPieceForEveryHeat) {
  Block block = amrap(10);
  block.heats = 2;
  const Timetable t = lay_out(board({block}), {});
  EXPECT_EQ(t.pieces[0].length, minutes(10));
  EXPECT_EQ(t.pieces[0].heats, 2);
  EXPECT_EQ(t.boxes[0].planned, minutes(20) + seconds(75));  // the change between them
}

TEST(LayOut, LeavesAPieceForTimeAsLongAsItsPeople) {
  Block block = test::block(BlockKind::ForTime, {item("burpee", 50.0)});
  block.cap = minutes(18);
  block.start = domain::Stagger{seconds(45), 1};
  const Timetable t = lay_out(board({block}), {});
  EXPECT_FALSE(t.boxes.at(0).planned);
  EXPECT_EQ(t.pieces[0].cap, minutes(18));
  EXPECT_FALSE(t.pieces[0].length);
  EXPECT_EQ(t.pieces[0].stagger, block.start);
}

TEST(LayOut, LeavesOptionalWorkAndSideRemarksOut) {
  const Timetable t =
      lay_out(board({note("gloves optional", std::nullopt), amrap(4), block(BlockKind::Optional)}), {});
  EXPECT_EQ(kinds(t), (std::vector{BoxKind::Work}));
}

}  // namespace
}  // namespace repwright::timetable
