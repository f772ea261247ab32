#include <gtest/gtest.h>

#include "rehearsal/partition.hpp"
#include "rehearsal/routes.hpp"

namespace repwright::rehearsal {
namespace {

domain::Route route(std::string id, double metres) {
  domain::Route made;
  made.id.text = std::move(id);
  made.lap = base::Length::from_si(metres);
  return made;
}

domain::Hall towpath() {
  domain::Hall hall;
  hall.routes = {route("r200", 200), route("r400", 400), route("r1000", 1000), route("q200", 200),
                 route("in10", 10)};
  hall.routes[2].wet_ok = hall.routes[2].dark_ok = false;
  hall.routes[3].use = "carry";
  hall.routes[4].indoor = true;
  hall.routes[4].shape = "shuttle";
  return hall;
}

RouteWish run(double metres, int people = 1) {
  return {base::Length::from_si(metres), people, false};
}

TEST(Route, MakesTheDistanceExactlyWithTheFewestLaps) {
  const domain::Hall hall = towpath();
  const RouteChoice choice = choose_route(hall, {}, run(800));
  EXPECT_EQ(choice.route->id.text, "r400");
  EXPECT_EQ(choice.laps, 2);
  EXPECT_FALSE(choice.closed);
}

TEST(Route, TakesTheNearestWhereNoneIsExact) {
  const domain::Hall hall = towpath();
  EXPECT_EQ(choose_route(hall, {}, run(1100)).route->id.text, "r1000");
}

TEST(Route, KeepsCarriesAndRunsApart) {
  const domain::Hall hall = towpath();
  EXPECT_EQ(choose_route(hall, {}, {base::Length::from_si(200), 1, true}).route->id.text, "q200");
  EXPECT_EQ(choose_route(hall, {}, run(200)).route->id.text, "r200");
}

TEST(Route, PrefersOneWithRoomForEverybody) {
  domain::Hall hall = towpath();
  hall.routes[1].max_people = 12;
  EXPECT_EQ(choose_route(hall, {}, run(400, 19)).route->id.text, "r200");
  EXPECT_EQ(choose_route(hall, {}, run(400, 12)).route->id.text, "r400");
}

TEST(Route, GoesElsewhereInRainAndSaysSo) {
  const domain::Hall hall = towpath();
  domain::GymClass wet;
  wet.weather.rain = true;
  const RouteChoice choice = choose_route(hall, wet, run(1000));
  EXPECT_EQ(choice.route->id.text, "r200");
  EXPECT_EQ(choice.laps, 5);
  EXPECT_TRUE(choice.closed);
}

TEST(Route, RunsShuttlesWhereNothingElseIsOpen) {
  const domain::Hall hall = towpath();
  domain::GymClass inside;
  inside.indoors = true;
  const RouteChoice choice = choose_route(hall, inside, run(200));
  EXPECT_EQ(choice.route->id.text, "in10");
  EXPECT_EQ(choice.laps, 20);
  EXPECT_TRUE(choice.closed);
}

TEST(Route, RunsOnTheSpotWhereEverythingIsShut) {
  domain::Hall hall = towpath();
  hall.routes.pop_back();
  domain::GymClass inside;
  inside.indoors = true;
  const RouteChoice choice = choose_route(hall, inside, run(200));
  EXPECT_EQ(choice.route, nullptr);
  EXPECT_TRUE(choice.closed);
}

TEST(Partition, DividesAllCountsWithoutRest) {
  // 24/40/96/48 by someone with 10 pull-ups: sets of three.
  EXPECT_EQ(even_parts({{24, 10}, {40, 60}, {96, 100}, {48, 60}}), 8);
  EXPECT_EQ(even_parts({{60, 60}, {100, 300}}), 4);  // three do not divide 100
}

TEST(Partition, SpreadsWhatDoesNotDivide) {
  const int parts = even_parts({{7, 6}, {13, 90}});
  double sum = 0;
  for (int part = 0; part < parts; ++part) sum += part_of(7, part, parts);
  EXPECT_EQ(parts, 4);
  EXPECT_DOUBLE_EQ(sum, 7);
}

}  // namespace
}  // namespace repwright::rehearsal
