#include <gtest/gtest.h>

#include "rehearsal/lone_pass.hpp"
#include "support/chalk.hpp"
#include "support/floor.hpp"

namespace repwright::rehearsal {
namespace {

using domain::BlockKind;

/// Three people, as strong as each other, before a piece on `bars` bars.
struct AtTheBars {
  explicit AtTheBars(int bars) {
    floor.add_many(3);
    floor.hall.unlimited = false;
    floor.hall.places.push_back({{"pull-up-bar"}, bars});
    domain::Block piece =
        test::block(BlockKind::ForTime, {test::item("pull-up", 5.0), test::item("air-squat", 10.0)});
    piece.rounds = 4;
    board = test::board({piece});
    timetable = timetable::lay_out(board, floor.gym_class);
    plan = floor.write(board).plan;
    for (std::size_t p = 0; p < floor.people.size(); ++p) {
      cast.ids.push_back(floor.people[p].id);
      cast.names.push_back(floor.people[p].name);
      cast.median.push_back(floor.bodies[p]);
    }
  }
  MiddlingParts alone() const { return lone_pass(plan, timetable, floor.constants, cast); }
  MiddlingParts crowded() const {
    const MiddlingParts lone = alone();
    std::vector<std::vector<double>> paces(1);
    for (const MiddlingPart& part : lone[0]) paces[0].push_back(part.active_s);
    return crowd_pass(plan, timetable, floor.constants, cast, paces);
  }

  test::Floor floor;
  domain::Board board;
  timetable::Timetable timetable;
  FloorPlan plan;
  Cast cast;
};

TEST(CrowdPass, ComesToTheLonePassWhereThereIsABarForEverybody) {
  const AtTheBars at(3);
  const MiddlingParts alone = at.alone();
  const MiddlingParts crowded = at.crowded();
  for (std::size_t p = 0; p < 3; ++p) {
    EXPECT_NEAR(crowded[0][p].seconds, alone[0][p].seconds, 0.02 * alone[0][p].seconds);
    ASSERT_EQ(crowded[0][p].places.size(), 1u);
    EXPECT_EQ(crowded[0][p].places[0].waited_s, 0);
  }
}

TEST(CrowdPass, LetsPeopleWaitForTheOnlyBarAndSaysHowLong) {
  const AtTheBars at(1);
  const MiddlingParts alone = at.alone();
  const MiddlingParts crowded = at.crowded();
  double waited = 0;
  for (std::size_t p = 0; p < 3; ++p) {
    const AtPlace& bar = crowded[0][p].places.at(0);
    EXPECT_EQ(bar.place.text, "pull-up-bar");
    EXPECT_EQ(bar.lines, 4) << "one in each round";
    const double lost = crowded[0][p].seconds - alone[0][p].seconds;
    EXPECT_GT(lost, 0);
    EXPECT_LE(lost, bar.waited_s) << "who waits has rested meanwhile";
    waited += bar.waited_s;
  }
  EXPECT_GT(waited, 10);
}

TEST(CrowdPass, KnowsAloneTheLinesAtAPlaceAndNoWaitForIt) {
  const MiddlingParts alone = AtTheBars(1).alone();
  ASSERT_EQ(alone[0][2].places.size(), 1u);
  EXPECT_EQ(alone[0][2].places[0].lines, 4);
  EXPECT_EQ(alone[0][2].places[0].waited_s, 0);
}

}  // namespace
}  // namespace repwright::rehearsal
