#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <map>

#include "any_block.hpp"
#include "rehearsal/floor.hpp"
#include "rehearsal/luck.hpp"
#include "support/chalk.hpp"
#include "support/floor.hpp"
#include "support/script_text.hpp"

/// Laws of the floor, whatever is on the board and whoever comes.
namespace repwright {
namespace {

/// Somebody who can do anything of the catalogue often enough.
body::Body strong_body() {
  body::Body strong;
  strong.best_set = {80, 40, 200, 150, 200};
  strong.best_lift = {220, 260, 130, 160, 160};
  return strong;
}

test::Floor any_class() {
  test::Floor floor;
  for (int i = *rc::gen::inRange(1, 8); i > 0; --i) {
    const domain::Person who = test::person("p" + std::to_string(i));
    floor.add(who, strong_body());
    if (*rc::gen::inRange(0, 3) == 0)
      floor.gym_class.arrivals.push_back({who.id, test::seconds(*rc::gen::inRange(1, 900))});
  }
  floor.hall.unlimited = false;
  for (const char* kind : {"pull-up-bar", "rower", "rack", "rings"})
    if (*rc::gen::arbitrary<bool>())
      floor.hall.places.push_back({domain::EquipmentId{kind}, *rc::gen::inRange(0, 4)});
  floor.house.keep_place_while_resting = *rc::gen::arbitrary<bool>();
  return floor;
}

domain::Board any_board() {
  std::vector<domain::Block> blocks{test::any_block(), test::any_block()};
  for (domain::Block& block : blocks) {
    if (*rc::gen::inRange(0, 3) == 0) block.heats = *rc::gen::inRange(2, 4);
    if (*rc::gen::inRange(0, 3) == 0)
      block.start = domain::Stagger{test::seconds(*rc::gen::inRange(5, 90)), *rc::gen::inRange(1, 3)};
    if (*rc::gen::inRange(0, 4) == 0) block.penalty = test::some_items();
    if (*rc::gen::inRange(0, 4) == 0) block.after_fail = test::some_items();
    if (*rc::gen::inRange(0, 4) == 0) block.lanes = 1;
  }
  return test::board(blocks);
}

/// Sees that nobody is at two lines at once and that nothing takes less than its parts.
class Books final : public rehearsal::Recorder {
 public:
  void worked(rehearsal::Part part, const rehearsal::Stint& stint, const rehearsal::Player&) override {
    RC_ASSERT(stint.end >= stint.start);
    RC_ASSERT(stint.work + stint.rest + stint.wait <= stint.end - stint.start);
    if (stint.op >= rehearsal::aside) return;  // inside another line
    RC_ASSERT(stint.start >= ends[part.person]);
    ends[part.person] = stint.end;
  }
  void queued(int, int, std::int64_t from, std::int64_t to) override { RC_ASSERT(to >= from); }
  void queue_length(int, int waiting) override { RC_ASSERT(waiting >= 0); }
  void lap(rehearsal::Part, int, std::int64_t took) override { RC_ASSERT(took >= 0); }
  std::map<int, std::int64_t> ends;
};

struct Played {
  rehearsal::WrittenFloor written;
  std::vector<std::vector<rehearsal::PieceResult>> results;
  std::int64_t end = 0;
};

Played play(const test::Floor& floor, const domain::Board& board) {
  Played played{.written = floor.write(board), .results = {}, .end = 0};
  const timetable::Timetable times = timetable::lay_out(board, floor.gym_class);
  rehearsal::Cast cast;
  for (const domain::Person& person : floor.people) cast.ids.push_back(person.id);
  cast.median = floor.bodies;
  rehearsal::RunSetting setting = rehearsal::even_day(cast, times);
  setting.targets.assign(times.pieces.size(), std::vector<double>(cast.ids.size(), 900));
  rehearsal::Floor stage(played.written.plan, times, floor.constants, rehearsal::Crowd::Shared);
  Books books;
  stage.play(setting, &books);
  played.results = stage.results();
  played.end = stage.boxes().back().end;
  return played;
}

RC_GTEST_PROP(FloorLaws, EverybodyComesHomeFromEveryBoard, ()) {
  const test::Floor floor = any_class();
  const Played played = play(floor, any_board());
  for (std::size_t i = 0; i < played.results.size(); ++i) {
    const rehearsal::ScriptedPiece& piece = played.written.plan.pieces[i];
    for (std::size_t p = 0; p < floor.people.size(); ++p) {
      const rehearsal::PieceResult& result = played.results[i][p];
      if (!result.took_part) {
        RC_ASSERT(played.written.plan.late[p] > 0);
        continue;
      }
      if (result.home - result.zero >= rehearsal::whole_ms(rehearsal::longest_piece))
        RC_FAIL(test::script_text(piece.scripts[p]));
      RC_ASSERT(result.home >= result.zero);
      RC_ASSERT(result.home <= played.end);
      RC_ASSERT(result.queued >= 0);
      RC_ASSERT(std::isfinite(result.counts.reps + result.counts.metres + result.counts.kcal));
    }
  }
}

RC_GTEST_PROP(FloorLaws, WhatATeamHasDoneIsWhatItsMembersShow, ()) {
  const test::Floor floor = any_class();
  const Played played = play(floor, any_board());
  for (std::size_t i = 0; i < played.results.size(); ++i)
    for (const rehearsal::Team& team : played.written.plan.pieces[i].teams) {
      const auto& first = played.results[i][static_cast<std::size_t>(team.people.front())];
      for (const int member : team.people) {
        const auto& own = played.results[i][static_cast<std::size_t>(member)];
        RC_ASSERT(own.counts.reps == first.counts.reps);
        RC_ASSERT(own.rounds == first.rounds);
        RC_ASSERT(own.home == first.home);
      }
    }
}

RC_GTEST_PROP(FloorLaws, APieceOfFixedLengthEndsWhenTheTimetableSays, ()) {
  test::Floor floor = any_class();
  floor.gym_class.arrivals.clear();
  domain::Block block = test::block(domain::BlockKind::Amrap, test::some_items());
  block.duration = test::some_minutes();
  block.heats = *rc::gen::inRange(1, 4);
  const domain::Board board = test::board({block});
  const auto planned = timetable::lay_out(board, floor.gym_class).boxes.at(0).planned;
  RC_ASSERT(planned.has_value());
  RC_ASSERT(play(floor, board).end == rehearsal::whole_ms(planned->si()));
}

}  // namespace
}  // namespace repwright
