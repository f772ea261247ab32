#include "rehearsal/findings_intent.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace repwright {
namespace {

using domain::FindingKind;
using domain::FindingSeverity;
using ::testing::IsEmpty;
using ::testing::SizeIs;

/// Three people before a piece that is meant to be four to six rounds; everybody does five.
struct Meant {
  domain::Rehearsal rehearsal;
  timetable::Timetable timetable;
  domain::Board board;

  Meant() {
    domain::Block& block = board.blocks.emplace_back();
    block.id = {0};
    block.intent =
        domain::Intent{.time = {}, .rounds = domain::Intent::Window{4, 6.0}, .effort = {}, .spare = {}};
    timetable.pieces.emplace_back().block = block.id;
    rehearsal.piece_names = {"Piece A"};
    for (const char* name : {"Ana", "Bo", "Cy"}) {
      domain::PersonOutcome& person = rehearsal.people.emplace_back();
      person.person = {name};
      person.name = name;
      person.pieces.emplace_back().measure = domain::Measure::Reps;
      does(rehearsal.people.size() - 1, 5);
    }
  }
  void does(std::size_t person, double rounds) {
    rehearsal.people[person].pieces[0].rounds = domain::Spread{.p50 = rounds};
  }
  std::vector<domain::Finding> found() const {
    std::vector<domain::Finding> found;
    rehearsal::find_missed_intents({rehearsal, timetable, board}, found);
    return found;
  }
};

TEST(FindingsOfIntent, AreNoneWhereEverybodyGetsWhatIsMeantOrNothingIs) {
  Meant meant;
  EXPECT_THAT(meant.found(), IsEmpty());
  meant.does(1, 3);
  meant.board.blocks[0].intent.reset();
  EXPECT_THAT(meant.found(), IsEmpty());
}

TEST(FindingsOfIntent, SayWhoMissesWhatThePieceIsMeantToBe) {
  Meant meant;
  meant.does(1, 3);
  auto found = meant.found();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::MissesIntent);
  EXPECT_EQ(found[0].severity, FindingSeverity::Note);
  EXPECT_EQ(found[0].text, "Piece A is meant to be 4 to 6 rounds, and 1 of 3 miss that: Bo (3.0 rounds).");
  meant.does(2, 9);
  found = meant.found();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, FindingSeverity::Warning);
  EXPECT_THAT(found[0].people, ::testing::ElementsAre(domain::PersonId{"Cy"}, domain::PersonId{"Bo"}));
}

TEST(FindingsOfIntent, LookAtTheLongestIntervalWhereItLeavesTime) {
  Meant meant;
  domain::Block& block = meant.board.blocks[0];
  block.every = 120 * base::second;
  block.intent = domain::Intent{.time = {}, .rounds = {}, .effort = {}, .spare = 30 * base::second};
  for (auto& person : meant.rehearsal.people) person.pieces[0].interval_s = {70, 80};
  EXPECT_THAT(meant.found(), IsEmpty());
  meant.rehearsal.people[0].pieces[0].interval_s = {70, 110};
  const auto found = meant.found();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].people.size(), 1u);
}

}  // namespace
}  // namespace repwright
