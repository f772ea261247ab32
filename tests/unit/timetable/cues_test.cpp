#include "timetable/cues.hpp"

#include <gmock/gmock.h>

#include <set>

#include "support/chalk.hpp"

namespace repwright::timetable {
namespace {

using domain::Block;
using domain::BlockKind;
using test::block;
using test::board;
using test::item;
using test::minutes;
using test::seconds;
using testing::Each;
using testing::ElementsAre;

constexpr int people = 12;

Block amrap(double length) {
  Block made = block(BlockKind::Amrap, {item("burpee", 6.0)});
  made.duration = minutes(length);
  return made;
}
Block for_time(std::optional<base::Duration> cap) {
  Block made = block(BlockKind::ForTime, {item("burpee", 60.0)});
  made.cap = cap;
  return made;
}
Block rest(double length) {
  Block made = block(BlockKind::Rest);
  made.duration = minutes(length);
  return made;
}

std::vector<Cue> cues(std::vector<Block> blocks, const domain::GymClass& gym_class = {}) {
  return cues_of(lay_out(board(std::move(blocks)), gym_class), people);
}

std::vector<CueKind> kinds(const std::vector<Cue>& cues) {
  std::vector<CueKind> all;
  for (const Cue& cue : cues) all.push_back(cue.kind);
  return all;
}
std::vector<double> lengths(const std::vector<Cue>& cues) {
  std::vector<double> all;
  for (const Cue& cue : cues) all.push_back(cue.length.value_or(seconds(-1)).si());
  return all;
}

TEST(Cues, CountInBeforeAPieceAndTakeItFromTheRestBefore) {
  const auto line = cues({amrap(11), rest(4), amrap(11)});
  EXPECT_THAT(kinds(line),
              ElementsAre(CueKind::CountIn, CueKind::Work, CueKind::Rest, CueKind::CountIn, CueKind::Work));
  EXPECT_THAT(lengths(line), ElementsAre(10, 660, 230, 10, 660));
  EXPECT_EQ(line[1].counting, Counting::Down);
  EXPECT_FALSE(line[2].called) << "the count-in calls";
}

TEST(Cues, LetAPartOfTheClassWaitForTheWordOfTheCoach) {
  domain::GymClass gym_class;
  gym_class.boxes.briefing = minutes(4);
  const auto line = cues({amrap(11)}, gym_class);
  EXPECT_EQ(line[0].kind, CueKind::Part);
  EXPECT_EQ(line[0].end, CueEnd::OnWord);
  EXPECT_EQ(line[0].length, minutes(4));
  EXPECT_THAT(lengths(line), ElementsAre(240, 10, 660)) << "and take no time from it";
}

TEST(Cues, CountUpToTheCapAndWithoutOneUntilTheCoachGoesOn) {
  const auto capped = cues({for_time(minutes(18))});
  EXPECT_EQ(capped[1].counting, Counting::Up);
  EXPECT_EQ(capped[1].end, CueEnd::ByItself);
  EXPECT_EQ(capped[1].length, minutes(18));
  const auto open = cues({for_time(std::nullopt)});
  EXPECT_EQ(open[1].end, CueEnd::OnWord);
  EXPECT_EQ(open[1].length, std::nullopt);
}

// 8 rounds of 20 s work and 10 s rest are 4:00, the last rest counted: the protocol of Medicine and Science
// in Sports and Exercise 28:1327-1330, 1996, DOI 10.1097/00005768-199610000-00018.
TEST(Cues, ShowRoundsOfWorkAndRest) {
  Block intervals = block(BlockKind::Intervals, {item("burpee", domain::Max{})});
  intervals.rounds = 8;
  intervals.work = seconds(20);
  intervals.rest = seconds(10);
  const auto line = cues({intervals});
  ASSERT_EQ(line.size(), 17u);
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i) sum += line[i].length.value_or(minutes(99)).si();
  EXPECT_DOUBLE_EQ(sum, 240);
  EXPECT_EQ(line[15].kind, CueKind::Work);
  EXPECT_EQ(line[15].round, 7);
  EXPECT_EQ(line[15].rounds, 8);
  EXPECT_EQ(line[15].into, seconds(210));
}

TEST(Cues, NameTheSlotOfEachMinute) {
  Block every = block(BlockKind::Every);
  every.every = base::minute;
  every.intervals = 6;
  every.slots = {{item("burpee", 8.0)}, {item("pull-up", 8.0)}, {}};
  const auto line = cues({every});
  ASSERT_EQ(line.size(), 7u);
  EXPECT_EQ(line[2].slot, 1);
  EXPECT_EQ(line[2].slots, 2);
  EXPECT_EQ(line[3].kind, CueKind::Rest) << "an empty slot";
  EXPECT_EQ(line[5].round, 1);
  EXPECT_EQ(line[5].rounds, 2);
}

TEST(Cues, GiveEachHeatACountInOfItsOwnOutOfTheChange) {
  Block piece = amrap(8);
  piece.heats = 2;
  const auto line = cues({piece});
  EXPECT_THAT(kinds(line),
              ElementsAre(CueKind::CountIn, CueKind::Work, CueKind::Change, CueKind::CountIn, CueKind::Work));
  EXPECT_THAT(lengths(line), ElementsAre(10, 480, 65, 10, 480));
  EXPECT_EQ(line[3].heat, 1);
  EXPECT_EQ(line[4].heats, 2);
}

TEST(Cues, KnowWhenEachGroupOfAStaggeredStartGoesAndLetTheLastFinish) {
  Block piece = amrap(10);
  piece.start = domain::Stagger{seconds(15), 4};
  const auto line = cues({piece});
  EXPECT_THAT(kinds(line), ElementsAre(CueKind::CountIn, CueKind::Work, CueKind::Tail));
  EXPECT_THAT(line[1].group_starts, ElementsAre(seconds(0), seconds(15), seconds(30)));
  EXPECT_EQ(line[1].counting, Counting::Up) << "each group reads its own time off it";
  EXPECT_EQ(line[2].into, minutes(10));
  EXPECT_EQ(line[2].length, seconds(30));
}

TEST(Cues, LeaveSetsOfPeoplesOwnToTheCoach) {
  Block sets = block(BlockKind::Sets, {item("back-squat", 5.0)});
  sets.sets = 5;
  sets.duration = minutes(12);
  const auto line = cues({sets});
  EXPECT_THAT(kinds(line), ElementsAre(CueKind::Work)) << "nobody starts together";
  EXPECT_EQ(line[0].end, CueEnd::OnWord);
  EXPECT_EQ(line[0].length, minutes(12));
}

TEST(Cues, GoOnByThemselvesWhereTheBoardNamesAClockTime) {
  const auto window = [](double from, double to) {
    Block made = block(BlockKind::Window);
    made.from = minutes(from);
    made.to = minutes(to);
    made.text = "row easy";
    return made;
  };
  const auto line = cues({window(0, 10), window(10, 12), window(12, 20)});
  EXPECT_THAT(lengths(line), ElementsAre(600, 120, 480));
  EXPECT_EQ(line[0].end, CueEnd::ByItself);
  EXPECT_EQ(line[1].end, CueEnd::ByItself);
  EXPECT_EQ(line[2].end, CueEnd::OnWord);
}

TEST(Cues, HaveNamesOfTheirOwnThatStayWhenSomethingElseChanges) {
  Block longer = amrap(9);
  longer.heats = 2;
  const auto before = cues({amrap(11), rest(4), longer});
  longer.duration = minutes(12);
  const auto after = cues({amrap(11), rest(4), longer});
  std::set<std::string> ids;
  ASSERT_EQ(before.size(), after.size());
  for (std::size_t i = 0; i < before.size(); ++i) {
    ids.insert(before[i].id);
    EXPECT_EQ(before[i].id, after[i].id);
  }
  EXPECT_EQ(ids.size(), before.size());
}

}  // namespace
}  // namespace repwright::timetable
