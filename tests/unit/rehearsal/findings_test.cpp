#include "rehearsal/findings.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/plans.hpp"

namespace repwright {
namespace {

using domain::FindingKind;
using domain::FindingSeverity;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

template <class Change>
domain::StepTrace line(int step, Change change) {
  domain::StepTrace trace;
  trace.step = {step};
  change(trace);
  return trace;
}

/// A class of three whose outcome each test writes by hand.
struct Scene {
  test::Stage stage = test::mixed_class({.people = 3, .bars = 1});
  domain::Rehearsal rehearsal;
  domain::Catalogue catalogue;
  domain::Hall hall;
  std::vector<rehearsal::History> history;

  Scene() {
    rehearsal.piece_names = {"Piece A"};
    for (const char* name : {"Ana", "Bo", "Cy"}) {
      domain::PersonOutcome& person = rehearsal.people.emplace_back();
      person.person = {name};
      person.name = name;
      person.pieces.emplace_back().rounds = domain::Spread{.p50 = 5};
    }
    rehearsal.timetable.boxes.push_back({.name = "Piece A", .kind = "work", .piece = {}, .planned_s = 1440});
  }
  domain::PieceOutcome& outcome(std::size_t person) { return rehearsal.people[person].pieces[0]; }
  std::vector<domain::Finding> find() const {
    return rehearsal::find({rehearsal, stage.plan, stage.timetable, catalogue, hall, history});
  }
};

TEST(Findings, AreNoneWhenAllGoesWell) {
  EXPECT_THAT(Scene().find(), IsEmpty());
}

TEST(Findings, NameTheMomentOfAQueueAndTheLineThatWaits) {
  Scene scene;
  scene.outcome(2).steps.push_back(line(0, [](auto& step) { step.wait_s = 35; }));
  scene.rehearsal.places.push_back({.place = {"pull-up-bar"},
                                    .count = 1,
                                    .wait_mean_s = 12,
                                    .wait_p90_s = 35,
                                    .queue_max_mean = 1.6,
                                    .queue = {{0, 0.5}, {90, 1.4}, {200, 0}}});
  const auto found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::Queue);
  EXPECT_EQ(found[0].severity, FindingSeverity::Warning);
  EXPECT_THAT(found[0].text, HasSubstr("up to 2, worst at 1:30"));
  EXPECT_EQ(found[0].step, domain::StepId{0});
  EXPECT_THAT(found[0].people, ::testing::ElementsAre(domain::PersonId{"Cy"}));
}

TEST(Findings, TellACapThatStopsSomeFromOneThatStopsAll) {
  Scene scene;
  scene.outcome(1).capped = 0.8;
  auto found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::OverCap);
  EXPECT_EQ(found[0].text, "The cap of Piece A stops Bo more often than not.");
  for (std::size_t p = 0; p < 3; ++p) scene.outcome(p).capped = 1;
  found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::NobodyFinishes);
  EXPECT_EQ(found[0].severity, FindingSeverity::Problem);
}

TEST(Findings, NameWhoGetsNoFullRound) {
  Scene scene;
  scene.outcome(0).rounds.reset();
  const auto found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::NoFullRound);
  EXPECT_EQ(found[0].text, "Ana does not get through one full round of Piece A.");
}

TEST(Findings, SayThatTheClassRunsOverAndWhere) {
  Scene scene;
  scene.rehearsal.timetable.planned_s = 3600;
  scene.rehearsal.timetable.over_share = 0.3;
  scene.rehearsal.timetable.p90_s = 3720;
  const auto found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::OverClass);
  EXPECT_THAT(found[0].text, HasSubstr("30 of 100"));
  EXPECT_THAT(found[0].text, HasSubstr("Piece A"));
}

TEST(Findings, MissTheLastRunner) {
  Scene scene;
  const std::array<double, 3> backs{110, 120, 210};
  for (std::size_t p = 0; p < 3; ++p)
    scene.rehearsal.runners.push_back(
        {.step = {0}, .person = scene.rehearsal.people[p].person, .back_s = {.p50 = backs[p]}});
  const auto found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::LastRunnerLate);
  EXPECT_EQ(found[0].text, "Cy comes back from the run at about 3:30, 1:30 after the middle of the class.");
}

TEST(Findings, CountTheFloorOfTheBusiestMinute) {
  Scene scene;
  scene.hall.floor = base::Area::from_si(7);
  for (std::size_t p = 0; p < 3; ++p)
    scene.outcome(p).steps.push_back(line(1, [](auto& step) {
      step.start_s = 60;
      step.end_s = 130;
    }));
  const auto found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::HallTooFull);
  EXPECT_THAT(found[0].text, HasSubstr("In minute 2 of the class 3 people need about 7 m2"));
  scene.hall.floor = base::Area::from_si(70);
  EXPECT_THAT(scene.find(), IsEmpty());
}

TEST(Findings, SayHowManyTheFloorHoldsWhereItIsFarTooSmall) {
  Scene scene;
  scene.hall.floor = base::Area::from_si(3.7);
  for (std::size_t p = 0; p < 3; ++p)
    scene.outcome(p).steps.push_back(line(1, [](auto& step) {
      step.start_s = 60;
      step.end_s = 120;
    }));
  const auto found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, FindingSeverity::Problem);
  EXPECT_THAT(found[0].text, HasSubstr("room for about 1 of them; what follows is of little use"));
}

/// Everybody works `there` s at the only bar and `elsewhere` s beside it, and waits `waits` s for it.
Scene at_one_bar(double there, double elsewhere, double waits) {
  Scene scene;
  for (std::size_t p = 0; p < 3; ++p) {
    scene.outcome(p).steps.push_back(line(0, [&](auto& step) {
      step.work_s = there;
      step.wait_s = waits;
    }));
    scene.outcome(p).steps.push_back(line(1, [&](auto& step) { step.work_s = elsewhere; }));
  }
  scene.rehearsal.places.push_back(
      {.place = {"pull-up-bar"}, .name = "Pull-up bar", .count = 1, .queue_max_mean = 1, .queue = {}});
  return scene;
}

TEST(Findings, SayHowManyTheOnlyBarHoldsWhereMostOfTheTimeIsWaiting) {
  // Two can take turns at a bar that takes half of each one's work.
  const auto found = at_one_bar(300, 300, 900).find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::HallTooFull);
  EXPECT_EQ(found[0].severity, FindingSeverity::Problem);
  EXPECT_EQ(
      found[0].text,
      "1 x Pull-up bar is enough for about 2 people at once in Piece A, and 3 come to it: they would wait "
      "for 60 % of it; what follows is of little use for so many.");
  EXPECT_THAT(found[0].people, SizeIs(3));
}

TEST(Findings, SayOnceThatTheRestIsOfLittleUse) {
  Scene scene = at_one_bar(300, 300, 900);
  scene.hall.floor = base::Area::from_si(3.7);
  for (std::size_t p = 0; p < 3; ++p) scene.outcome(p).steps[1].end_s = 120;
  const auto found = scene.find();
  ASSERT_THAT(found, SizeIs(2));
  EXPECT_THAT(found[0].text, HasSubstr("m2 at once"));
  EXPECT_THAT(found[0].text, HasSubstr("of little use"));
  EXPECT_THAT(found[1].text, HasSubstr("enough for about 2 people"));
  EXPECT_THAT(found[1].text, ::testing::Not(HasSubstr("of little use")));
}

TEST(Findings, CallNoHallTooFullForAQueueThatCanBeBorne) {
  EXPECT_THAT(at_one_bar(300, 300, 400).find(), IsEmpty());
}

/// Ana does so many pull-ups today; her weeks so far are given.
Scene after_weeks_of_pulls(double today, std::vector<double> weeks) {
  Scene scene;
  scene.outcome(0).steps.push_back(line(0, [&](auto& step) {
    step.version = {"pull-up"};
    step.amount = today;
  }));
  scene.history.resize(3);
  for (const double pulls : weeks) scene.history[0].weeks.push_back({0, pulls, 0, 0, 0});
  return scene;
}

TEST(Findings, WarnAboutMoreThanTwiceTheBestOfFourWeeks) {
  const auto found = after_weeks_of_pulls(70, {100, 30, 20, 0, 10}).find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::MuchMoreThanLately);
  EXPECT_EQ(
      found[0].text,
      "More than twice the work of any of the last four weeks for pulling muscles of Ana: cap them today.");
  EXPECT_THAT(found[0].people, ::testing::ElementsAre(domain::PersonId{"Ana"}));
  EXPECT_THAT(after_weeks_of_pulls(70, {100, 30, 20, 0, 40}).find(), IsEmpty()) << "not twice";
}

TEST(Findings, LeaveALittleMoreThanVeryLittleAlone) {
  EXPECT_THAT(after_weeks_of_pulls(27, {3}).find(), IsEmpty());
  EXPECT_THAT(after_weeks_of_pulls(29, {3}).find(), SizeIs(1));
  EXPECT_THAT(after_weeks_of_pulls(500, {}).find(), IsEmpty()) << "nothing is known of her weeks";
}

TEST(Findings, CountAThirdOfWhatIsEasyOnTheMuscles) {
  Scene scene = after_weeks_of_pulls(70, {3});
  domain::Movement row;
  row.id = {"pull-up"};
  row.eccentric_stress = "low";
  scene.catalogue.movements = {row};
  EXPECT_THAT(scene.find(), IsEmpty());
  scene.catalogue.movements[0].eccentric_stress = "high";
  EXPECT_THAT(scene.find(), SizeIs(1));
}

TEST(Findings, NameAllMusclesOfAJumpInOneLine) {
  Scene scene = after_weeks_of_pulls(70, {3});
  for (const std::size_t person : {std::size_t{0}, std::size_t{2}})
    scene.outcome(person).steps.push_back(line(1, [](auto& step) {
      step.version = {"push-up"};
      step.amount = 90;
    }));
  scene.history[2].weeks = {{20, 0, 0, 0, 0}};
  const auto found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_THAT(found[0].text, HasSubstr("pushing muscles of Ana and Cy; pulling muscles of Ana"));
  EXPECT_THAT(found[0].people, SizeIs(2));
}

TEST(Findings, SayThatAPieceWithoutACapNeverEndedAndWhere) {
  Scene scene;
  scene.stage.timetable.pieces[0].length.reset();
  scene.outcome(1).capped = 1;
  scene.outcome(1).steps.push_back(line(3, [](auto& step) {
    step.version = {"pull-up"};
    step.end_s = 14400;
    step.work_s = 20;
    step.rest_s = 14000;
  }));
  domain::Movement pull_up;
  pull_up.id = {"pull-up"};
  pull_up.name = "Pull-up, strict";
  scene.catalogue.movements = {pull_up};
  auto found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::OverCap);
  EXPECT_EQ(found[0].severity, FindingSeverity::Problem);
  EXPECT_EQ(found[0].text,
            "Bo does not come to the end of Piece A, which has no cap, in up to 100 of 100 rehearsals: taken "
            "out after "
            "4 hours, mostly at rest at Pull-up, strict.");
  EXPECT_EQ(found[0].step, domain::StepId{3});
  for (std::size_t p = 0; p < 3; ++p) scene.outcome(p).capped = 1;
  found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::NobodyFinishes);
}

TEST(Findings, SayOnceThatARouteIsFull) {
  Scene scene;
  domain::Route lane;
  lane.id = {"lane"};
  lane.name = "The lane";
  scene.hall.routes = {lane};
  scene.rehearsal.places.push_back({.place = {"lane"},
                                    .name = "The lane",
                                    .count = 2,
                                    .wait_mean_s = 30,
                                    .wait_p90_s = 70,
                                    .queue_max_mean = 3,
                                    .queue = {{0, 3}}});
  const auto found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::Queue);
}

TEST(Findings, NoteHeatsOfUnevenLength) {
  Scene scene;
  scene.stage.plan.pieces[0].scripts[2].heat = 1;
  for (std::size_t p = 0; p < 3; ++p) scene.outcome(p).score.p50 = p == 2 ? 900 : 600;
  const auto found = scene.find();
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].kind, FindingKind::UnevenHeats);
  EXPECT_THAT(found[0].text, HasSubstr("Heat 2 lasts 15:00"));
}

TEST(Findings, PutTheGravestFirst) {
  Scene scene;
  scene.outcome(1).capped = 0.6;
  scene.outcome(0).rounds.reset();
  const auto found = scene.find();
  ASSERT_THAT(found, SizeIs(2));
  EXPECT_EQ(found[0].severity, FindingSeverity::Problem);
  EXPECT_EQ(found[1].severity, FindingSeverity::Warning);
}

TEST(SomeNames, NameAFewAndCountTheRest) {
  EXPECT_EQ(rehearsal::some_names({"Ana"}), "Ana");
  EXPECT_EQ(rehearsal::some_names({"Ana", "Bo"}), "Ana and Bo");
  EXPECT_EQ(rehearsal::some_names({"Ana", "Bo", "Cy", "Di", "Eo"}), "Ana, Bo, Cy and 2 more");
}

}  // namespace
}  // namespace repwright
