#include "timetable/running_clock.hpp"

#include <gmock/gmock.h>

namespace repwright::timetable {
namespace {

using domain::ClockAct;
using domain::ClockDeed;
using testing::ElementsAre;

constexpr std::int64_t begin = 1'810'000'000'000;

Cue cue(std::string id, CueKind kind, std::optional<double> length) {
  Cue made;
  made.id = std::move(id);
  made.kind = kind;
  if (length) made.length = base::Duration::from_si(*length);
  made.end = length ? CueEnd::ByItself : CueEnd::OnWord;
  return made;
}

/// A count-in, a minute of work, half a minute of rest, work without an end, a part at the end.
const std::vector<Cue> line{cue("a", CueKind::CountIn, 10), cue("b", CueKind::Work, 60),
                            cue("c", CueKind::Rest, 30), cue("d", CueKind::Work, std::nullopt),
                            cue("e", CueKind::Part, 40)};

ClockAct act(ClockDeed deed, double at_s, std::string where = {}, double seconds = 0) {
  ClockAct made;
  made.deed = deed;
  made.at_ms = begin + static_cast<std::int64_t>(at_s * 1000);
  made.cue = std::move(where);
  made.seconds = base::Duration::from_si(seconds);
  return made;
}

ClockPosition at(const std::vector<ClockAct>& acts, double s) {
  return position_at(acts, line, begin + static_cast<std::int64_t>(s * 1000));
}

TEST(RunningClock, IsReadyUntilItIsStarted) {
  EXPECT_EQ(at({}, 0).state, ClockState::Ready);
  EXPECT_EQ(position_at({}, {}, begin).state, ClockState::Ready);
}

TEST(RunningClock, GoesThroughTheCuesAndWaitsInAnOpenOne) {
  const std::vector<ClockAct> acts{act(ClockDeed::Start, 0)};
  EXPECT_EQ(at(acts, 9.999).cue, 0);
  EXPECT_EQ(at(acts, 10).cue, 1);
  EXPECT_EQ(at(acts, 75).cue, 2);
  EXPECT_EQ(at(acts, 75).elapsed.ms, 5000);
  EXPECT_EQ(at(acts, 4000).cue, 3);
  EXPECT_EQ(at(acts, 4000).elapsed.ms, 3'900'000);
}

TEST(RunningClock, StartsWhereItIsTold) {
  EXPECT_EQ(at({act(ClockDeed::Start, 0, "c")}, 5).cue, 2);
  EXPECT_EQ(at({act(ClockDeed::Start, 0, "gone")}, 5).state, ClockState::Ready);
}

TEST(RunningClock, StandsStillWhilePausedAndGoesOnFromThere) {
  const std::vector<ClockAct> acts{act(ClockDeed::Start, 0), act(ClockDeed::Pause, 30),
                                   act(ClockDeed::GoOn, 300)};
  EXPECT_EQ(at(acts, 310).elapsed.ms, 30'000);
  EXPECT_EQ(at(acts, 310).cue, 1);
}

TEST(RunningClock, GivesMoreTimeAndTakesSomeAwayButNotWhatHasPassed) {
  EXPECT_EQ(at({act(ClockDeed::Start, 0), act(ClockDeed::Add, 20, "", 30)}, 99).cue, 1);
  EXPECT_EQ(at({act(ClockDeed::Start, 0), act(ClockDeed::Add, 20, "", 30)}, 100).cue, 2);
  EXPECT_EQ(at({act(ClockDeed::Start, 0), act(ClockDeed::Add, 20, "", -500)}, 20).cue, 2);
  EXPECT_EQ(at({act(ClockDeed::Start, 0), act(ClockDeed::Add, 20, "", -500)}, 20).elapsed.ms, 0);
}

TEST(RunningClock, JumpsAlsoWhilePausedAndAlsoBack) {
  const auto back = at({act(ClockDeed::Start, 0), act(ClockDeed::Jump, 75, "b")}, 80);
  EXPECT_EQ(back.cue, 1);
  EXPECT_EQ(back.elapsed.ms, 5000);
  const auto held =
      at({act(ClockDeed::Start, 0), act(ClockDeed::Pause, 20), act(ClockDeed::Jump, 75, "d")}, 80);
  EXPECT_EQ(held.state, ClockState::Paused);
  EXPECT_EQ(held.cue, 3);
  EXPECT_EQ(held.elapsed.ms, 0);
}

TEST(RunningClock, EndsAnOpenPieceAMinuteAfterTheLastCall) {
  const std::vector<ClockAct> acts{act(ClockDeed::Start, 0, "d"), act(ClockDeed::LastCall, 500)};
  EXPECT_EQ(at(acts, 559).cue, 3);
  EXPECT_EQ(at(acts, 559).call_ms, begin + 500'000);
  EXPECT_EQ(at(acts, 560).cue, 4);
  EXPECT_EQ(at(acts, 560).call_ms, std::nullopt);
}

TEST(RunningClock, OnlyAnnouncesTheLastCallOfAPieceThatEndsByItself) {
  const std::vector<ClockAct> acts{act(ClockDeed::Start, 0, "b"), act(ClockDeed::LastCall, 10)};
  EXPECT_EQ(at(acts, 59).cue, 1);
  EXPECT_EQ(at(acts, 60).cue, 2);
}

TEST(RunningClock, IsOverAtTheEndOrWhenItIsStoppedAndCanStartAgain) {
  EXPECT_EQ(at({act(ClockDeed::Start, 0, "e")}, 40).state, ClockState::Over);
  const std::vector<ClockAct> stopped{act(ClockDeed::Start, 0), act(ClockDeed::Stop, 20)};
  EXPECT_EQ(at(stopped, 500).state, ClockState::Over);
  std::vector<ClockAct> again = stopped;
  again.push_back(act(ClockDeed::Start, 600));
  EXPECT_EQ(at(again, 611).cue, 1);
}

TEST(RunningClock, TakesBackTheLastActAsIfItHadNotBeen) {
  const std::vector<ClockAct> acts{act(ClockDeed::Start, 0), act(ClockDeed::Pause, 15),
                                   act(ClockDeed::Undo, 25)};
  EXPECT_EQ(at(acts, 30), at({act(ClockDeed::Start, 0)}, 30));
  EXPECT_EQ(at({act(ClockDeed::Start, 0), act(ClockDeed::Undo, 5)}, 30).state, ClockState::Ready);
  EXPECT_TRUE(still_done(std::vector{act(ClockDeed::Undo, 0)}).empty());
}

TEST(RunningClock, KnowsWhichActsFit) {
  const ClockPosition ready = at({}, 0);
  EXPECT_TRUE(fits(ready, line, act(ClockDeed::Start, 0)));
  for (const ClockDeed deed : {ClockDeed::Pause, ClockDeed::GoOn, ClockDeed::Add, ClockDeed::LastCall,
                               ClockDeed::Stop, ClockDeed::Undo})
    EXPECT_FALSE(fits(ready, line, act(deed, 0, "b", 30))) << domain::name_of(deed);
  const ClockPosition runs = at({act(ClockDeed::Start, 0, "b")}, 5);
  EXPECT_FALSE(fits(runs, line, act(ClockDeed::Start, 6)));
  EXPECT_FALSE(fits(runs, line, act(ClockDeed::GoOn, 6)));
  EXPECT_FALSE(fits(runs, line, act(ClockDeed::Jump, 6, "gone")));
  EXPECT_TRUE(fits(runs, line, act(ClockDeed::LastCall, 6)));
  EXPECT_FALSE(fits(at({act(ClockDeed::Start, 0, "c")}, 5), line, act(ClockDeed::LastCall, 6))) << "a rest";
  EXPECT_FALSE(fits({}, {}, act(ClockDeed::Start, 6)));
}

TEST(RunningClock, SaysWhenEachCueWillBeginUpToAnOpenOne) {
  const std::int64_t now = begin + 30'000;
  const auto ahead = line_ahead(at({act(ClockDeed::Start, 0)}, 30), line, now);
  EXPECT_THAT(ahead.starts, ElementsAre(CueStart{1, begin + 10'000}, CueStart{2, begin + 70'000},
                                        CueStart{3, begin + 100'000}));
  EXPECT_EQ(ahead.over_ms, std::nullopt);
  EXPECT_EQ(line_ahead(at({act(ClockDeed::Start, 0, "e")}, 30), line, now).over_ms, begin + 40'000);
  EXPECT_TRUE(line_ahead(at({}, 0), line, now).starts.empty());
}

TEST(ClockDeeds, HaveNames) {
  for (int i = 0; i <= static_cast<int>(ClockDeed::Undo); ++i) {
    const auto deed = static_cast<ClockDeed>(i);
    EXPECT_EQ(domain::clock_deed_of(domain::name_of(deed)), deed);
  }
  EXPECT_EQ(domain::clock_deed_of("faster"), std::nullopt);
}

}  // namespace
}  // namespace repwright::timetable
