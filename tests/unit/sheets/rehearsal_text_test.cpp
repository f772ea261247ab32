#include "sheets/rehearsal_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sheets/findings_text.hpp"
#include "sheets/queues_text.hpp"
#include "sheets/scores_text.hpp"
#include "sheets/timetable_text.hpp"

namespace repwright::sheets {
namespace {

using domain::FindingKind;
using domain::FindingSeverity;
using ::testing::HasSubstr;
using ::testing::Not;

domain::Finding finding(FindingKind kind, FindingSeverity severity, std::string text, int line) {
  domain::Finding made;
  made.kind = kind;
  made.severity = severity;
  made.text = std::move(text);
  made.line = line;
  return made;
}

TEST(FindingsText, TellsOneKindInOneBreathWithItsLines) {
  const std::vector<domain::Finding> found{
      finding(FindingKind::KitShort, FindingSeverity::Warning, "Box: 9 needed, 4 here.", 7),
      finding(FindingKind::KitShort, FindingSeverity::Warning, "Rope: 3 needed, 1 here.", 3)};
  EXPECT_EQ(findings_text(found),
            "\nWHAT MATTERS\n"
            "  !  Box: 9 needed, 4 here. Rope: 3 needed, 1 here. [lines 3 7, kit-short]\n"
            "     May help: share, go in heats, or take the next size down\n");
}

TEST(FindingsText, PutsThreeFirstAndTheRestBehind) {
  const std::vector<domain::Finding> found{
      finding(FindingKind::OverClass, FindingSeverity::Problem, "One.", 0),
      finding(FindingKind::Queue, FindingSeverity::Problem, "Two.", 4),
      finding(FindingKind::OverCap, FindingSeverity::Warning, "Three.", 0),
      finding(FindingKind::FreeText, FindingSeverity::Warning, "Four.", 5)};
  const std::string text = findings_text(found);
  EXPECT_THAT(text, HasSubstr("WHAT MATTERS FIRST\n  !! One. [over-class]\n"));
  EXPECT_LT(text.find("Three."), text.find("ALSO"));
  EXPECT_GT(text.find("Four."), text.find("ALSO"));
}

TEST(FindingsText, LeavesSwapsToTheirOwnSection) {
  const std::vector<domain::Finding> found{
      finding(FindingKind::LimitSwapped, FindingSeverity::Note, "Instead of Run: Bike: Bo.", 4)};
  EXPECT_EQ(findings_text(found), "\nWHAT MATTERS\n  Nothing stands out.\n");
}

TEST(SwapsText, TellsSharedReasonsByVersionAndOwnOnesByPerson) {
  const std::vector<Swap> swaps{{"Bo", "Run", "Bike", "No jumps"},
                                {"Ana", "Pull-up", "Row", "as usual"},
                                {"Cy", "Pull-up", "Row", "as usual"},
                                {"Bo", "Squat", "Bridge", "No jumps"},
                                {"Bo", "Run", "Bike", "No jumps"}};
  EXPECT_EQ(swaps_text(swaps),
            "\nWHO DOES WHAT INSTEAD\n"
            "  as usual:\n    Pull-up → Row: Ana, Cy\n"
            "  Bo: No jumps\n    Run → Bike; Squat → Bridge\n");
  EXPECT_EQ(swaps_text({}), "");
}

/// Two people in one piece, whose outcomes each test changes.
domain::Rehearsal two_people() {
  domain::Rehearsal rehearsal;
  rehearsal.runs = 1;
  rehearsal.piece_names = {"PIECE A"};
  for (const char* name : {"Ana", "Bo"}) {
    domain::PersonOutcome& person = rehearsal.people.emplace_back();
    person.person = {name};
    person.name = name;
    domain::PieceOutcome& piece = person.pieces.emplace_back();
    piece.score = {.mean = 300, .sd = 0, .p10 = 300, .p50 = 300, .p90 = 300};
  }
  return rehearsal;
}

TEST(ScoresText, SaysOnceWhatIsTheSameForEverybody) {
  EXPECT_EQ(scores_text(two_people(), 0),
            "\nPIECE A  time, eight times in ten between 'from' and 'to'\n"
            "             likely  from    to  waits  held by\n"
            "  everybody    5:00  5:00  5:00         pace\n");
}

TEST(ScoresText, ShowsWhoIsCappedHowOften) {
  domain::Rehearsal rehearsal = two_people();
  rehearsal.people[1].pieces[0].capped = 0.25;
  const std::string text = scores_text(rehearsal, 0);
  EXPECT_THAT(text, HasSubstr("capped"));
  EXPECT_THAT(text, HasSubstr("25 %"));
}

TEST(ScoresText, ListsLoadsThatAreChosenByLoad) {
  domain::Rehearsal rehearsal = two_people();
  for (auto& person : rehearsal.people) person.pieces[0].measure = domain::Measure::Kilograms;
  rehearsal.people[0].pieces[0].score = {.mean = 17.5, .sd = 0, .p10 = 17.5, .p50 = 17.5, .p90 = 17.5};
  rehearsal.people[1].pieces[0].score = {};
  EXPECT_EQ(scores_text(rehearsal, 0),
            "\nPIECE A  load to begin with; how it feels decides\n  no load  Bo\n  17.5 kg  Ana\n");
}

TEST(QueuesText, NamesPlacesAsPeopleDo) {
  domain::Rehearsal rehearsal = two_people();
  rehearsal.places.push_back({.place = {"pull-up-bar"}, .name = "Pull-up bar", .count = 2, .queue = {}});
  rehearsal.places.push_back({.place = {"r200"}, .count = 9, .queue = {}});
  EXPECT_EQ(queues_text(rehearsal), "\nWHERE THEY QUEUE\n  nobody waits: Pull-up bar × 2, r200 × 9\n");
}

TEST(HourText, NeverSaysNoneOfAHundredWhereThereWasOne) {
  domain::ClassOutcome hour;
  hour.planned_s = 3600;
  hour.p50_s = 3000;
  hour.p90_s = 3300;
  hour.over_share = 0.001;
  EXPECT_THAT(hour_text(hour), HasSubstr("too long in fewer than 1 of 100 runs"));
  hour.over_share = 0;
  EXPECT_THAT(hour_text(hour), Not(HasSubstr("too long")));
}

TEST(RehearsalText, EndsWithTheCautions) {
  const std::string text =
      rehearsal_text(two_people(), {.title = "MON", .when = "", .people = 2, .swaps = {}});
  EXPECT_THAT(text, ::testing::StartsWith("MON · 2 people · 1 run, seed 0\n"));
  EXPECT_THAT(text, HasSubstr("medical help"));
}

}  // namespace
}  // namespace repwright::sheets
