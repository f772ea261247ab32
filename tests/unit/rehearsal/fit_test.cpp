#include <gtest/gtest.h>

#include <cmath>

#include "support/chalk.hpp"
#include "support/floor.hpp"

namespace repwright::rehearsal {
namespace {

using domain::BlockKind;
using domain::FittedItem;
using domain::Item;
using domain::Sex;
using test::block;
using test::board;
using test::Floor;
using test::item;
using test::person;

domain::Limit limit(std::string id, std::string action) {
  return {domain::LimitId{std::move(id)}, std::move(action), std::nullopt};
}

base::Mass kg(double mass) {
  return base::Mass::from_si(mass);
}

/// The first line of a one-block board as one person does it.
FittedItem fit_one(const Floor& floor, const Item& line, BlockKind kind = BlockKind::ForTime) {
  return floor.fit(board({block(kind, {line})})).people.at(0).items.at(0);
}

Floor alone(const domain::Person& who, const body::Body& its_body = {}) {
  Floor floor;
  floor.add(who, its_body);
  return floor;
}

body::Body without_pull_up() {
  body::Body weak;
  weak.best_set = {12, 0.4, 50, 25, 20};
  return weak;
}

TEST(PlainFit, LeavesTheBoardAsWrittenToWhoeverCanDoIt) {
  const FittedItem fitted = fit_one(alone(person("Ann")), item("pull-up", 8.0));
  EXPECT_EQ(fitted.movement.text, "pull-up");
  EXPECT_EQ(fitted.amount, domain::Amount(8.0));
  EXPECT_EQ(fitted.swapped_for, "");
}

TEST(PlainFit, TakesTheFirstScaleOptionThatNoLimitForbids) {
  domain::Person ann = person("Ann");
  ann.limits = {limit("no-hang", "no hanging today")};
  Item pulls = item("pull-up", 8.0);
  pulls.scale =
      domain::Scale{{{domain::MovementId{"band-pull-up"}, 1}, {domain::MovementId{"ring-row"}, 1}}, false};
  const FittedItem fitted = fit_one(alone(ann), pulls);
  EXPECT_EQ(fitted.movement.text, "ring-row");
  EXPECT_EQ(fitted.swapped_for, "no hanging today");
}

TEST(PlainFit, PrefersTheStandingVersionToTheSwap) {
  domain::Person ann = person("Ann");
  ann.limits = {limit("no-hang", "rows only")};
  ann.versions["pull"] = domain::MovementId{"bar-row"};
  EXPECT_EQ(fit_one(alone(ann), item("pull-up", 8.0)).movement.text, "bar-row");
}

/// A body with four push-ups at a time, whose own version is with the hands raised.
TEST(PlainFit, DoesTheUsualEasierVersionWhereARoundAsksForMoreThanTwiceTheBestSet) {
  domain::Person ann = person("Ann");
  ann.versions["push"] = domain::MovementId{"incline-push-up"};
  body::Body four;
  four.best_set = {4, 4, 50, 25, 20};
  const FittedItem many = fit_one(alone(ann, four), item("push-up", 10.0));
  EXPECT_EQ(many.movement.text, "incline-push-up");
  EXPECT_EQ(many.swapped_for, "as usual");
  EXPECT_EQ(fit_one(alone(ann, four), item("push-up", 6.0)).movement.text, "push-up");
}

TEST(PlainFit, DoesTheNearestEasierVersionWhereLessThanHalfOfASetIsThere) {
  const domain::Person ann = person("Ann");
  body::Body four;
  four.best_set = {4, 4, 50, 25, 20};
  EXPECT_EQ(fit_one(alone(ann, four), item("push-up", 7.0)).movement.text, "push-up");
  const FittedItem many = fit_one(alone(ann, four), item("push-up", 10.0));
  EXPECT_EQ(many.movement.text, "incline-push-up");
  EXPECT_EQ(many.swapped_for, "less than half of a set at once as written");
  four.best_set = {6, 4, 50, 25, 20};
  EXPECT_EQ(fit_one(alone(ann, four), item("push-up", 40.0)).movement.text, "push-up")
      << "five at once are enough for any count";
}

TEST(PlainFit, LightensALoadOfWhichThereIsLessThanHalfOfASet) {
  const domain::Person ann = person("Ann");
  domain::Item clean = item("bb-clean-and-jerk", 10.0);
  body::Body body;
  const double best = body.best_lift[body::index_of(body::Lift::Clean)];
  clean.loads = domain::Loads{.masses = {base::Mass::from_si(std::round(.95 * best))}};
  const FittedItem light = fit_one(alone(ann, body), clean);
  ASSERT_TRUE(light.load);
  EXPECT_LT(light.load->si(), .9 * best);
  clean.loads = domain::Loads{.masses = {base::Mass::from_si(std::round(.4 * best))}};
  EXPECT_DOUBLE_EQ(fit_one(alone(ann, body), clean).load->si(), std::round(.4 * best));
}

TEST(PlainFit, TakesAUsualVersionForNothingThatIsNoHarder) {
  domain::Person ann = person("Ann");
  ann.versions["push"] = domain::MovementId{"push-up"};
  body::Body four;
  four.best_set = {4, 4, 50, 25, 20};
  EXPECT_EQ(fit_one(alone(ann, four), item("incline-push-up", 60.0)).movement.text, "incline-push-up");
}

TEST(PlainFit, ForgetsALimitAfterItsLastDay) {
  using namespace std::chrono_literals;
  domain::Person ann = person("Ann");
  ann.limits = {{domain::LimitId{"no-hang"}, "rows only", 2027y / std::chrono::May / 10d}};
  Floor floor = alone(ann);
  floor.gym_class.date = 2027y / std::chrono::May / 10d;
  EXPECT_EQ(fit_one(floor, item("pull-up", 8.0)).movement.text, "ring-row");
  floor.gym_class.date = 2027y / std::chrono::May / 11d;
  EXPECT_EQ(fit_one(floor, item("pull-up", 8.0)).movement.text, "pull-up");
}

TEST(PlainFit, GivesWhoHasNoPullUpAVersionWithFiveOrMore) {
  const Floor floor = alone(person("Ann"), without_pull_up());
  const FittedItem fitted = fit_one(floor, item("pull-up", 5.0));
  EXPECT_NE(fitted.movement.text, "pull-up");
  EXPECT_EQ(fitted.swapped_for, "no full rep as written") << fitted.swapped_for;
}

TEST(PlainFit, IgnoresLimitsOnlyAsWritten) {
  domain::Person ann = person("Ann");
  ann.limits = {limit("no-hang", "rows only")};
  Floor floor = alone(ann, without_pull_up());
  floor.rule = FitRule::AsWritten;
  EXPECT_EQ(fit_one(floor, item("pull-up", 8.0)).movement.text, "pull-up");
}

TEST(PlainFit, DoesAClassWordInThePersonsOwnVersion) {
  domain::Person ann = person("Ann");
  ann.versions["pull"] = domain::MovementId{"ring-row"};
  Item pulls = item("pull-up", 3.0);
  pulls.personal_version = true;
  const FittedItem fitted = fit_one(alone(ann), pulls);
  EXPECT_EQ(fitted.movement.text, "ring-row");
  EXPECT_EQ(fitted.swapped_for, "");
}

TEST(PlainFit, TurnsARunIntoAsManySecondsOnTheBike) {
  domain::Person ann = person("Ann");
  ann.limits = {limit("no-impact", "bike instead of running")};
  const FittedItem fitted = fit_one(alone(ann), item("run", 200.0, domain::Unit::Metres));
  EXPECT_EQ(fitted.movement.text, "fan-bike");
  EXPECT_EQ(fitted.unit, domain::Unit::Metres);
  EXPECT_EQ(fitted.amount, domain::Amount(510.0));  // 200 m x 0.345 / 0.135 s, to ten metres
}

TEST(PlainFit, CountsThreeSinglesAsOneDouble) {
  domain::Person ann = person("Ann");
  Item doubles = item("double-under", 50.0);
  doubles.scale = domain::Scale{{{domain::MovementId{"single-under"}, 3}}, false};
  Floor floor = alone(ann);
  ann.versions.clear();
  floor.people[0].limits = {};
  const FittedItem as_written = fit_one(floor, doubles);
  EXPECT_EQ(as_written.movement.text, "double-under");
  // Without one unbroken double under the option on the board counts.
  floor.bodies[0].best_set = {28, 7, 0.5, 45, 40};
  const FittedItem fitted = fit_one(floor, doubles);
  if (fitted.movement.text == "single-under") {
    EXPECT_EQ(fitted.amount, domain::Amount(150.0));
    EXPECT_DOUBLE_EQ(fitted.score_factor, 3);
  }
}

TEST(PlainFit, GivesTheFirstLoadToMenAndTheSecondToEverybodyElse) {
  Item swings = item("kb-swing", 14.0);
  swings.loads = domain::Loads{{kg(24), kg(16)}, false};
  EXPECT_EQ(fit_one(alone(person("Al", Sex::Male)), swings).load, kg(24));
  EXPECT_EQ(fit_one(alone(person("Bo", Sex::Female)), swings).load, kg(16));
  EXPECT_EQ(fit_one(alone(person("Cy", Sex::Unsaid)), swings).load, kg(16));
}

TEST(PlainFit, ResolvesPairsOfAmountsAndBoxHeightsLikeLoads) {
  Item calories = item("rower", domain::Tiers{18, 14}, domain::Unit::Kilocalories);
  calories.heights = {base::Length::from_si(0.6), base::Length::from_si(0.5)};
  const FittedItem fitted = fit_one(alone(person("Bo", Sex::Female)), calories);
  EXPECT_EQ(fitted.amount, domain::Amount(14.0));
  EXPECT_EQ(fitted.height, base::Length::from_si(0.5));
}

TEST(PlainFit, LightensALoadOfWhichThereIsNotOneRep) {
  Item lifts = item("bb-deadlift", 6.0);
  lifts.loads = domain::Loads{{kg(200)}, false};
  const FittedItem fitted = fit_one(alone(person("Al")), lifts);
  EXPECT_EQ(fitted.movement.text, "bb-deadlift");
  ASSERT_TRUE(fitted.load);
  EXPECT_LT(fitted.load->si(), 150);
  EXPECT_TRUE(fitted.swapped_for.starts_with("lighter: ")) << fitted.swapped_for;
}

TEST(PlainFit, TakesPercentOfTheBestSetBySet) {
  Item squats = item("bb-back-squat", domain::PerSet{{5.0, 3.0}});
  squats.load_share = domain::LoadShare{{60, 75}, domain::ShareOf::OneRepBest};
  const FittedItem fitted = fit_one(alone(person("Al")), squats, BlockKind::Sets);
  ASSERT_EQ(fitted.set_loads.size(), 2U);
  EXPECT_LT(fitted.set_loads[0], fitted.set_loads[1]);
  EXPECT_NEAR(fitted.set_loads[1] / fitted.set_loads[0], 75.0 / 60, 0.1);
  EXPECT_EQ(fitted.load, fitted.set_loads[0]);
}

TEST(PlainFit, TakesPercentOfWhatWasBuiltUpToToday) {
  Item heavy = item("bb-front-squat", 3.0);
  Item back_off = heavy;
  back_off.load_share = domain::LoadShare{{90}, domain::ShareOf::TodayBest};
  const auto fitted = alone(person("Al"))
                          .fit(board({block(BlockKind::Build, {heavy}), block(BlockKind::Sets, {back_off})}))
                          .people.at(0);
  ASSERT_TRUE(fitted.items[0].load && fitted.items[1].load);
  EXPECT_NEAR(fitted.items[1].load->si(), 0.9 * fitted.items[0].load->si(), 2.5);
}

domain::Board by_level() {
  domain::Block rounds = block(BlockKind::ForTime, {item("pull-up", domain::PerLevel{{12, 8}})});
  rounds.items[0].scale =
      domain::Scale{{{domain::MovementId{"pull-up"}, 1}, {domain::MovementId{"ring-row"}, 1}}, true};
  rounds.levels = {"A", "B"};
  rounds.rounds = 4;
  return board({rounds});
}

TEST(PlainFit, PutsPeopleOnTheHighestLevelThatTheyCanDo) {
  Floor floor;
  floor.add(person("Al"));
  floor.add(person("Bo"), without_pull_up());
  const auto fitted = floor.fit(by_level());
  EXPECT_EQ(fitted.people[0].level, 0);
  EXPECT_EQ(fitted.people[0].items[0].amount, domain::Amount(12.0));
  EXPECT_EQ(fitted.people[1].level, 1);
  EXPECT_EQ(fitted.people[1].items[0].movement.text, "ring-row");
  EXPECT_EQ(fitted.people[1].items[0].amount, domain::Amount(8.0));
  EXPECT_EQ(fitted.people[1].items[0].swapped_for, "");
}

TEST(PlainFit, SwapsWhatAPartnerHoldsToo) {
  domain::Person ann = person("Ann");
  ann.limits = {limit("no-floor", "standing versions")};
  Item swings = item("kb-swing", 110.0);
  swings.gate = domain::Gate{domain::MovementId{"plank"}, "", domain::Unit::Seconds};
  const FittedItem fitted = fit_one(alone(ann), swings, BlockKind::Partner);
  EXPECT_EQ(fitted.gate.text, "suitcase-hold");
}

Floor without_bars() {
  Floor floor;
  floor.hall.unlimited = false;
  floor.hall.places = {{domain::EquipmentId{"pull-up-bar"}, 2}};
  floor.gym_class.faults = {{domain::EquipmentId{"pull-up-bar"}, 2, "both bars loose"}};
  return floor;
}

TEST(PlainFit, GivesNobodyAMovementForWhichThereIsNoPlace) {
  Floor floor = without_bars();
  floor.add(person("Ann"));
  const FittedItem fitted = fit_one(floor, item("pull-up", 8.0));
  EXPECT_EQ(fitted.movement.text, "ring-row");  // the first easier version off the bar
  EXPECT_EQ(fitted.amount, domain::Amount(8.0));
  EXPECT_EQ(fitted.lacking.text, "pull-up-bar");
  EXPECT_EQ(fitted.swapped_for, "none today: Pull-up bar place");
}

TEST(PlainFit, TakesTheSecondStationWhereTheFirstIsGone) {
  Floor floor = without_bars();
  floor.add(person("Ann"));
  Item pulls = item("pull-up", 8.0);
  pulls.second_station = domain::MovementId{"db-row"};
  EXPECT_EQ(fit_one(floor, pulls).movement.text, "db-row");
}

TEST(PlainFit, NeverTakesAVersionThatLacksItsPlaceToo) {
  Floor floor;
  floor.hall.unlimited = false;
  for (const domain::Movement& movement : test::shipped_catalogue().movements)
    for (const domain::EquipmentId& id : movement.equipment) floor.hall.places.push_back({id, 0});
  floor.add(person("Ann"));
  for (const domain::Movement& movement : test::shipped_catalogue().movements) {
    const FittedItem fitted = fit_one(floor, item(movement.id.text, 8.0, movement.default_unit));
    const domain::Movement* version = test::shipped_catalogue().find(fitted.movement);
    EXPECT_TRUE(version ? version->equipment.empty() : fitted.amount == domain::Amount(0.0)) << movement.name;
    EXPECT_EQ(fitted.lacking.empty(), movement.equipment.empty()) << movement.name;
  }
}

TEST(PlainFit, PlaysWhatIsNotThereOnlyAsWritten) {
  Floor floor = without_bars();
  floor.rule = FitRule::AsWritten;
  floor.add(person("Ann"));
  const auto written = floor.write(board({block(BlockKind::ForTime, {item("pull-up", 4.0)})}));
  EXPECT_EQ(written.plan.pieces[0].scripts[0].tasks[0].place, -1);
  ASSERT_EQ(written.findings.size(), 1U);
  EXPECT_EQ(written.findings[0].text,
            "Pull-up bar place: none left for Pull-up, strict; rehearsed as if there were enough.");
}

TEST(PlainFit, SaysAtTheLineWhoDoesWhatForWantOfAPlace) {
  Floor floor = without_bars();
  domain::Person bo = person("Bo");
  bo.versions["pull"] = domain::MovementId{"bar-row"};
  floor.add(person("Ann"));
  floor.add(bo);
  const auto written =
      floor.write(board({block(BlockKind::ForTime, {item("burpee", 5.0), item("pull-up", 4.0)})}));
  ASSERT_EQ(written.findings.size(), 1U);
  const domain::Finding& found = written.findings[0];
  EXPECT_EQ(found.kind, domain::FindingKind::KitShort);
  EXPECT_EQ(found.severity, domain::FindingSeverity::Problem);
  EXPECT_EQ(found.step, domain::StepId{1});
  EXPECT_EQ(found.people.size(), 2U);
  EXPECT_TRUE(found.text.starts_with("Pull-up bar place: none today. Instead of Pull-up, strict: "))
      << found.text;
  EXPECT_NE(found.text.find(": Ann; "), std::string::npos) << found.text;
}

TEST(PlainFit, KeepsFreeTextAsItIs) {
  Item unknown = item("", 50.0);
  unknown.movement.reset();
  unknown.free_text = "banded pull aparts";
  const FittedItem fitted = fit_one(alone(person("Al")), unknown);
  EXPECT_TRUE(fitted.movement.empty());
  EXPECT_EQ(fitted.amount, domain::Amount(50.0));
}

}  // namespace
}  // namespace repwright::rehearsal
