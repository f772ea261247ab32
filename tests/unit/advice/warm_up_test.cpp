#include "advice/warm_up.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <numeric>

#include "solver/cbc_solver.hpp"
#include "support/shipped_catalogue.hpp"

namespace repwright::advice {
namespace {

using domain::Drill;
using domain::NeedKind;
using domain::WarmUp;
using domain::WarmUpNeed;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

Drill drill(const std::string& id, const std::string& phase, double seconds,
            std::vector<std::string> patterns, std::vector<std::string> flags = {}) {
  Drill made;
  made.id = made.name = id;
  made.phase = phase;
  made.length = seconds * base::second;
  made.patterns = std::move(patterns);
  made.flags = std::move(flags);
  return made;
}

WarmUpNeed need(NeedKind kind, const std::string& id, int weight = 1) {
  return {kind, id, id, weight, "test lines"};
}

struct Case {
  std::vector<WarmUpNeed> needs;
  std::vector<Drill> drills;
  double seconds = 600;
  std::vector<WithLimits> people{};

  WarmUp chosen() const {
    solver::CbcSolver solver;
    auto warm_up = choose_warm_up({needs, drills, seconds * base::second, people, {}}, solver);
    EXPECT_TRUE(warm_up);
    return warm_up ? *warm_up : WarmUp{};
  }
};

std::vector<std::string> ids_of(const WarmUp& warm_up) {
  std::vector<std::string> ids;
  for (const domain::WarmUpStep& step : warm_up.steps) ids.push_back(step.drill);
  return ids;
}

TEST(WarmUp, TakesTheWeightiestWhenTimeIsShort) {
  const Case short_of_time{{need(NeedKind::Pattern, "push", 1), need(NeedKind::Pattern, "hinge", 3)},
                           {drill("a", "activate", 60, {"push"}), drill("b", "activate", 60, {"hinge"})},
                           100};
  const WarmUp warm_up = short_of_time.chosen();
  EXPECT_THAT(ids_of(warm_up), ElementsAre("b"));
  EXPECT_THAT(warm_up.unprepared, ElementsAre(0));
  EXPECT_DOUBLE_EQ(warm_up.prepared_share, 0.75);
  EXPECT_TRUE(warm_up.proven);
}

TEST(WarmUp, GivesAJointAtLeastHalfAMinute) {
  Case joint{{need(NeedKind::Joint, "wrist", 2)}, {drill("quick", "mobilise", 25, {})}, 100};
  joint.drills[0].joints = {"wrist"};
  EXPECT_THAT(joint.chosen().unprepared, ElementsAre(0));
  joint.drills[0].length = 30 * base::second;
  EXPECT_THAT(joint.chosen().unprepared, IsEmpty());
}

TEST(WarmUp, RaisesMobilisesAndRehearsesInThatOrder) {
  const Case whole{{need(NeedKind::Pattern, "squat", 2)},
                   {drill("rehearse", "rehearse", 40, {"squat"}),
                    drill("mobilise", "mobilise", 40, {"squat"}), drill("raise", "raise", 90, {})},
                   300};
  EXPECT_THAT(ids_of(whole.chosen()), ElementsAre("raise", "mobilise", "rehearse"));
}

TEST(WarmUp, PutsDrillsOnTheFloorTogether) {
  const Case floor{{need(NeedKind::Pattern, "a"), need(NeedKind::Pattern, "b"), need(NeedKind::Pattern, "c"),
                    need(NeedKind::Pattern, "d")},
                   {drill("down-1", "mobilise", 30, {"a"}, {"floor"}), drill("up-1", "mobilise", 30, {"b"}),
                    drill("up-2", "activate", 30, {"c"}), drill("down-2", "activate", 30, {"d"}, {"floor"})},
                   150};
  const WarmUp warm_up = floor.chosen();
  EXPECT_THAT(ids_of(warm_up), ElementsAre("up-1", "down-1", "down-2", "up-2"));
  EXPECT_EQ(warm_up.floor_visits, 1);
}

TEST(WarmUp, StaysOnItsFeetWhereThatPreparesAsMuch) {
  const Case either{
      {need(NeedKind::Pattern, "push")},
      {drill("down", "activate", 30, {"push"}, {"floor"}), drill("up", "activate", 30, {"push"})},
      40};
  EXPECT_THAT(ids_of(either.chosen()), ElementsAre("up"));
}

TEST(WarmUp, NamesWhoLeavesADrillOutAndWhatTheyDoInstead) {
  Case limited{{need(NeedKind::Pattern, "push"), need(NeedKind::Pattern, "pull")},
               {drill("both", "activate", 60, {"push", "pull"}), drill("half", "activate", 60, {"push"})},
               60,
               {{"Ana Invented", {{{"wrist"}, "fists, no flat palms", {}}}}, {"Bo Invented", {}}}};
  limited.drills[0].avoid_with = {{"wrist"}};
  const WarmUp warm_up = limited.chosen();
  ASSERT_EQ(warm_up.steps.size(), 1u);
  EXPECT_THAT(warm_up.steps[0].others,
              ElementsAre(domain::OtherDrill{"Ana Invented", "fists, no flat palms", "half"}));
}

TEST(WarmUp, IsEmptyWhenNoDrillFitsAndSaysThatAllIsUnprepared) {
  const Case none{{need(NeedKind::Pattern, "push")}, {drill("long", "raise", 90, {"push"})}, 30};
  const WarmUp warm_up = none.chosen();
  EXPECT_THAT(warm_up.steps, IsEmpty());
  EXPECT_THAT(warm_up.unprepared, ElementsAre(0));
  EXPECT_THAT(Case({.needs = {need(NeedKind::Pattern, "push")}, .drills = {}}).chosen().steps, IsEmpty());
}

TEST(WarmUp, UsesKitOnlyAsFarAsTwoCanShareIt) {
  Drill banded = drill("banded", "activate", 40, {"pull"});
  banded.equipment = {"band"};
  banded.space = 2 * base::metre * base::metre;
  WarmUpRoom room{.out = {{{"band"}, 6}}, .floor = {}, .people = 12};
  EXPECT_EQ(drills_for({banded}, room).size(), 1u);
  room.people = 13;
  EXPECT_THAT(drills_for({banded}, room), IsEmpty());
  room = {.out = {}, .floor = {}, .people = 1};
  EXPECT_THAT(drills_for({banded}, room), IsEmpty());
  room = {.out = {{{"band"}, 6}}, .floor = 5 * base::metre * base::metre, .people = 3};
  EXPECT_THAT(drills_for({banded}, room), IsEmpty()) << "three people need six square metres";
}

TEST(WarmUp, OfTheShippedDrillsEveryOneHasAFormWithoutKitOrIsReplacedByOne) {
  const std::vector<Drill>& all = test::shipped_catalogue().drills;
  const std::vector<Drill> anywhere = drills_without_kit(all);
  for (const Drill& one : anywhere) EXPECT_THAT(one.equipment, IsEmpty());
  for (const Drill& one : all) {
    if (one.phase == "recover") continue;
    const std::string& stands_in = one.home_kind == "drill" ? one.home_drill : one.id;
    EXPECT_TRUE(std::ranges::any_of(anywhere, [&](const Drill& d) { return d.id == stands_in; })) << one.id;
  }
}

/// What a choice is worth by docs/decisions/warm-up.md, counted drill by drill.
double worth(const std::vector<const Drill*>& chosen, const Case& of) {
  double sum = 0;
  bool down = false;
  for (const Drill* one : chosen) {
    sum -= 2;
    if (std::ranges::count(one->flags, "floor") == 0) continue;
    if (one->phase == "rehearse")
      sum -= 25;
    else
      down = true;
  }
  if (down) sum -= 25;
  for (const WarmUpNeed& asked : of.needs) {
    const auto touches = std::ranges::count_if(
        chosen, [&](const Drill* one) { return std::ranges::count(one->patterns, asked.id) > 0; });
    if (touches > 0) sum += 100 * asked.weight;
    if (touches > 1) sum += 12 * asked.weight;
  }
  return sum;
}

RC_GTEST_PROP(WarmUp, IsWorthAsMuchAsTheBestOfAllChoices, ()) {
  const std::vector<std::string> patterns{"push", "pull", "squat", "hinge", "trunk"};
  Case any;
  any.seconds = *rc::gen::inRange(40, 115);  // too short for phases
  for (const std::string& pattern : patterns)
    any.needs.push_back(need(NeedKind::Pattern, pattern, *rc::gen::inRange(1, 5)));
  const int count = *rc::gen::inRange(1, 9);
  for (int d = 0; d < count; ++d) {
    std::vector<std::string> own;
    for (const std::string& pattern : patterns)
      if (*rc::gen::inRange(0, 3) == 0) own.push_back(pattern);
    const std::string phase = *rc::gen::element<std::string>("mobilise", "activate", "rehearse");
    const bool down = *rc::gen::arbitrary<bool>();
    any.drills.push_back(drill("d" + std::to_string(d), phase, *rc::gen::inRange(10, 60), own,
                               down ? std::vector<std::string>{"floor"} : std::vector<std::string>{}));
  }
  double best = 0;
  for (unsigned mask = 0; mask < (1u << any.drills.size()); ++mask) {
    std::vector<const Drill*> chosen;
    double seconds = 0;
    for (std::size_t d = 0; d < any.drills.size(); ++d)
      if ((mask >> d & 1u) != 0) {
        chosen.push_back(&any.drills[d]);
        seconds += any.drills[d].length.si();
      }
    if (seconds <= any.seconds) best = std::max(best, worth(chosen, any));
  }
  std::vector<const Drill*> chosen;
  for (const std::string& id : ids_of(any.chosen()))
    chosen.push_back(&*std::ranges::find(any.drills, id, &Drill::id));
  RC_ASSERT(std::abs(worth(chosen, any) - best) < 1e-6);
}

}  // namespace
}  // namespace repwright::advice
