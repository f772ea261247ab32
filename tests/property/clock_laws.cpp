#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "any_block.hpp"
#include "support/chalk.hpp"
#include "timetable/running_clock.hpp"

/// Laws of a running clock, whatever is on the board and whatever is done to it.
namespace repwright {
namespace {

using domain::ClockAct;
using domain::ClockDeed;
using timetable::ClockPosition;
using timetable::ClockState;
using timetable::Cue;

constexpr std::int64_t begin = 1'810'000'000'000;

std::vector<Cue> any_cues() {
  std::vector<domain::Block> blocks{test::any_block(), test::any_block()};
  for (domain::Block& block : blocks) {
    if (*rc::gen::inRange(0, 3) == 0) block.heats = *rc::gen::inRange(2, 4);
    if (*rc::gen::inRange(0, 3) == 0)
      block.start = domain::Stagger{test::seconds(*rc::gen::inRange(5, 90)), *rc::gen::inRange(1, 3)};
  }
  domain::GymClass gym_class;
  gym_class.boxes.briefing = test::minutes(3);
  gym_class.boxes.clean = test::minutes(2);
  return timetable::cues_of(timetable::lay_out(test::board(blocks), gym_class), *rc::gen::inRange(1, 30));
}

ClockAct any_act(const std::vector<Cue>& cues, std::int64_t at_ms) {
  ClockAct act;
  act.deed = static_cast<ClockDeed>(*rc::gen::inRange(0, static_cast<int>(ClockDeed::Undo) + 1));
  act.at_ms = at_ms;
  act.seconds = test::seconds(*rc::gen::inRange(-120, 121));
  if (*rc::gen::arbitrary<bool>())
    act.cue = cues[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(cues.size())))].id;
  return act;
}

/// Some acts, one after another, and the instant of the last one.
struct Past {
  std::vector<ClockAct> acts;
  std::int64_t now = begin;
};
Past any_past(const std::vector<Cue>& cues) {
  Past past;
  ClockAct start;
  start.at_ms = begin;
  past.acts.push_back(start);
  for (int i = *rc::gen::inRange(0, 8); i > 0; --i) {
    past.now += *rc::gen::inRange(0, 900'000);
    past.acts.push_back(any_act(cues, past.now));
  }
  return past;
}

ClockPosition at(const Past& past, const std::vector<Cue>& cues, std::int64_t ms) {
  return timetable::position_at(past.acts, cues, ms);
}

bool not_before(const ClockPosition& later, const ClockPosition& earlier) {
  return later.cue > earlier.cue || (later.cue == earlier.cue && later.elapsed >= earlier.elapsed);
}

RC_GTEST_PROP(RunningClock, StaysAmongItsCues, ()) {
  const auto cues = any_cues();
  const Past past = any_past(cues);
  const ClockPosition position = at(past, cues, past.now + *rc::gen::inRange(0, 9'000'000));
  RC_ASSERT(position.cue >= 0 && position.cue < static_cast<int>(cues.size()));
  RC_ASSERT(position.elapsed.ms >= 0);
  const auto end = timetable::end_of(position, cues[static_cast<std::size_t>(position.cue)]);
  const bool past_its_end = position.state == ClockState::Running && end && position.elapsed >= *end;
  RC_ASSERT(!past_its_end);
}

RC_GTEST_PROP(RunningClock, NeverGoesBackUnlessItIsToldTo, ()) {
  const auto cues = any_cues();
  Past past = any_past(cues);
  const ClockPosition before = at(past, cues, past.now);
  const std::int64_t later = past.now + *rc::gen::inRange(0, 900'000);
  RC_ASSERT(not_before(at(past, cues, later), before));
  const ClockAct act = any_act(cues, later);
  RC_PRE(act.deed != ClockDeed::Jump && act.deed != ClockDeed::Start && act.deed != ClockDeed::Undo);
  past.acts.push_back(act);
  RC_ASSERT(not_before(at(past, cues, later), before));
}

RC_GTEST_PROP(RunningClock, LosesNothingByAPause, ()) {
  const auto cues = any_cues();
  Past past = any_past(cues);
  const std::int64_t run = *rc::gen::inRange(0, 900'000);
  const ClockPosition without = at(past, cues, past.now + run);
  RC_PRE(at(past, cues, past.now).state == ClockState::Running);
  const std::int64_t held = *rc::gen::inRange(0, 900'000);
  ClockAct pause;
  pause.deed = ClockDeed::Pause;
  pause.at_ms = past.now;
  ClockAct go_on;
  go_on.deed = ClockDeed::GoOn;
  go_on.at_ms = past.now + held;
  past.acts.push_back(pause);
  past.acts.push_back(go_on);
  RC_ASSERT(at(past, cues, past.now + held + run) == without);
}

RC_GTEST_PROP(RunningClock, ShiftsAllThatComesByTheTimeAdded, ()) {
  const auto cues = any_cues();
  Past past = any_past(cues);
  const ClockPosition before = at(past, cues, past.now);
  RC_PRE(before.state == ClockState::Running);
  const auto line = timetable::line_ahead(before, cues, past.now);
  ClockAct more;
  more.deed = ClockDeed::Add;
  more.at_ms = past.now;
  more.seconds = test::seconds(*rc::gen::inRange(1, 600));
  past.acts.push_back(more);
  const auto moved = timetable::line_ahead(at(past, cues, past.now), cues, past.now);
  RC_ASSERT(moved.starts.size() == line.starts.size());
  for (std::size_t i = 1; i < line.starts.size(); ++i)
    RC_ASSERT(moved.starts[i].at_ms == line.starts[i].at_ms + base::sim_time(more.seconds).ms);
}

RC_GTEST_PROP(RunningClock, LandsAtTheBeginOfTheCueOfAJump, ()) {
  const auto cues = any_cues();
  Past past = any_past(cues);
  const ClockPosition before = at(past, cues, past.now);
  RC_PRE(before.state == ClockState::Running || before.state == ClockState::Paused);
  const int where = *rc::gen::inRange(0, static_cast<int>(cues.size()));
  ClockAct jump;
  jump.deed = ClockDeed::Jump;
  jump.at_ms = past.now;
  jump.cue = cues[static_cast<std::size_t>(where)].id;
  past.acts.push_back(jump);
  const ClockPosition after = at(past, cues, past.now);
  RC_ASSERT(after.cue == where);
  RC_ASSERT(after.elapsed.ms == 0);
}

RC_GTEST_PROP(RunningClock, IsAfterAnUndoAsIfTheActHadNotBeen, ()) {
  const auto cues = any_cues();
  Past past = any_past(cues);
  const std::int64_t later = past.now + *rc::gen::inRange(0, 900'000);
  const ClockPosition without = at(past, cues, later);
  ClockAct act = any_act(cues, past.now);
  RC_PRE(act.deed != ClockDeed::Undo);
  ClockAct undo;
  undo.deed = ClockDeed::Undo;
  undo.at_ms = later;
  past.acts.push_back(act);
  past.acts.push_back(undo);
  RC_ASSERT(at(past, cues, later) == without);
}

RC_GTEST_PROP(RunningClock, BeginsEachCueWhenItWasSaidAhead, ()) {
  const auto cues = any_cues();
  const Past past = any_past(cues);
  const auto line = timetable::line_ahead(at(past, cues, past.now), cues, past.now);
  for (const timetable::CueStart& start : line.starts) {
    if (start.at_ms < past.now) continue;
    const ClockPosition then = at(past, cues, start.at_ms);
    RC_ASSERT(then.elapsed.ms == 0);
    RC_ASSERT(then.cue == start.cue);
  }
  if (line.over_ms) RC_ASSERT(at(past, cues, *line.over_ms).state == ClockState::Over);
}

}  // namespace
}  // namespace repwright
