#include "store/people_csv.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/shipped_catalogue.hpp"

namespace repwright::store {
namespace {

using base::kilogram;
using base::metre;
using base::minute;
using base::second;
using domain::Mark;
using domain::Person;
using ::repwright::test::shipped_catalogue;
using testing::AllOf;
using testing::HasSubstr;

PeopleFile read(std::string_view bytes) {
  auto people = read_people(bytes, "people.csv", shipped_catalogue());
  EXPECT_TRUE(people.has_value()) << people.error().message;
  return people.value_or(PeopleFile{});
}

std::string complaint(std::string_view bytes) {
  const auto people = read_people(bytes, "people.csv", shipped_catalogue());
  EXPECT_FALSE(people.has_value());
  return people ? std::string() : people.error().message;
}

/// The one mark of the one person of a file with that header and cell.
Mark mark(const std::string& header, const std::string& cell) {
  const PeopleFile file = read("name;" + header + "\nYusra;" + cell + "\n");
  EXPECT_EQ(file.notes, std::vector<std::string>()) << header;
  if (file.people.size() != 1 || file.people[0].marks.size() != 1) {
    ADD_FAILURE() << "no mark under " << header;
    return domain::AerobicPeak{};
  }
  return file.people[0].marks[0];
}

TEST(PeopleFile, ReadsEveryKnownColumn) {
  const PeopleFile file = read(
      "id,Name,SEX,age,birth_year,mass_kg,height_cm,training_years,vo2max_ml_kg_min,limits,actions,attends\n"
      "a07,Sunniva Okereke,F,38,1989,64.5,167,3.2,41,wrist@2027-05-31 knee,fists or bells|no deep bends,Mon "
      "wed\n");
  using namespace std::chrono_literals;
  Person expected;
  expected.id = {"a07"};
  expected.name = "Sunniva Okereke";
  expected.sex = domain::Sex::Female;
  expected.age = 38;
  expected.birth_year = 1989;
  expected.mass = 64.5 * kilogram;
  expected.height = 1.67 * metre;
  expected.training_years = 3.2;
  expected.marks = {domain::AerobicPeak{41}};
  expected.limits = {{{"wrist"}, "fists or bells", 2027y / 5 / 31}, {{"knee"}, "no deep bends", {}}};
  expected.attends = {"mon", "wed"};
  EXPECT_EQ(file, (PeopleFile{{expected}, {}}));
}

TEST(PeopleFile, ReadsMarksAsOnABoard) {
  EXPECT_EQ(mark("run 400 m", "1:32.5"), Mark(domain::TimedDistance{{"run"}, 400 * metre, 92.5 * second}));
  EXPECT_EQ(mark("Run 5 km", "24:10"), Mark(domain::TimedDistance{{"run"}, 5000 * metre, 1450 * second}));
  EXPECT_EQ(mark("run 1 mile", "7:30"), Mark(domain::TimedDistance{{"run"}, 1609.344 * metre, 450 * second}));
  EXPECT_EQ(mark("run 0,8 km (s)", "190"), Mark(domain::TimedDistance{{"run"}, 800 * metre, 190 * second}));
  EXPECT_EQ(mark("row 2000 m", "7:41"), Mark(domain::TimedDistance{{"rower"}, 2000 * metre, 461 * second}));
  EXPECT_EQ(mark("max push-up", "24"), Mark(domain::BestSet{{"push-up"}, 24, false}));
  EXPECT_EQ(mark("max Pull Ups any style", "9"), Mark(domain::BestSet{{"pull-up"}, 9, true}));
  EXPECT_EQ(mark("push-up in 2:00", "47"), Mark(domain::TimedReps{{"push-up"}, 2 * minute, 47}));
  EXPECT_EQ(mark("sit-ups in 2 min", "62"), Mark(domain::TimedReps{{"sit-up"}, 2 * minute, 62}));
  EXPECT_EQ(mark("max plank", "2:15"), Mark(domain::BestHold{{"plank"}, 135 * second}));
  EXPECT_EQ(mark("1rm back squat", "102,5"), Mark(domain::BestLoad{{"bb-back-squat"}, 102.5 * kilogram, 1}));
  EXPECT_EQ(mark("1RM back squat (lb)", "225"),
            Mark(domain::BestLoad{{"bb-back-squat"}, 225 * base::pound, 1}));
  EXPECT_EQ(mark("5rm deadlift", "75"), Mark(domain::BestLoad{{"bb-deadlift"}, 75 * kilogram, 5}));
  EXPECT_EQ(mark("1rm clean and jerk", "60"),
            Mark(domain::BestLoad{{"bb-clean-and-jerk"}, 60 * kilogram, 1}));
  EXPECT_EQ(mark("vo2max_ml_kg_min", "47.5"), Mark(domain::AerobicPeak{47.5}));
}

TEST(PeopleFile, ReadsStandingVersionsByMovementOrClassWord) {
  const PeopleFile file =
      read("name,push,box step-up,bar,jump\nIvo,incline push-ups,,ring row,\nAda,knee push-up,box squat,,\n");
  using Versions = std::map<std::string, domain::MovementId>;
  EXPECT_EQ(file.people[0].versions, (Versions{{"push", {"incline-push-up"}}, {"pull up", {"ring-row"}}}));
  EXPECT_EQ(file.people[1].versions, (Versions{{"push", {"knee-push-up"}}, {"box-step-up", {"box-squat"}}}));
  EXPECT_TRUE(file.notes.empty());
}

TEST(PeopleFile, TakesAnEmptyCellAsUnknown) {
  const PeopleFile file = read("name,sex,age,run 400 m,limits\nIvo,,,,\nAda,X,,,\n");
  EXPECT_EQ(file.people[0].sex, domain::Sex::Unsaid);
  EXPECT_EQ(file.people[1].sex, domain::Sex::Unsaid);
  EXPECT_FALSE(file.people[0].age.has_value());
  EXPECT_TRUE(file.people[0].marks.empty());
}

TEST(PeopleFile, NamesColumnsThatItLeavesOut) {
  const PeopleFile file =
      read("name,shoe,mas_kg,1rm lantern,max flying,run 400 m (h),push-up\nIvo,43,80,60,3,1,12\n");
  EXPECT_THAT(file.notes,
              testing::UnorderedElementsAre(
                  "column 'shoe' is left out: neither a known column nor a mark",
                  "column 'mas_kg' is left out: neither a known column nor a mark (nearest: mass_kg)",
                  "column '1rm lantern' is left out: the catalogue knows no 'lantern' that is lifted",
                  "column 'max flying' is left out: the catalogue knows no 'flying' that is counted or held",
                  "column 'run 400 m (h)' is left out: the unit 'h' is none of: s, min",
                  "column 'push-up' is left out: no cell names a movement, as a standing version would; "
                  "for a best set call it 'max push-up'"));
  EXPECT_EQ(file.people.size(), 1U);
}

TEST(PeopleFile, NamesEveryBadCellByRowAndColumnAndLoadsNothing) {
  const std::string said = complaint(
      "name,age,sex,run 400 m,max push-up,limits,attends,push\n"
      "Ivo,old,m,1:75,twelve,knees,mon fun,push-up\n"
      "Ada,30,f,1:40,20,wrist@soon,mon,sofa\n");
  EXPECT_THAT(said, AllOf(HasSubstr("people.csv:2: 'Ivo': age: is 'old', expected 4 to 110"),
                          HasSubstr("people.csv:2: 'Ivo': run 400 m: is '1:75', expected m:ss"),
                          HasSubstr("people.csv:2: 'Ivo': max push-up: is 'twelve', expected a count"),
                          HasSubstr("people.csv:2: 'Ivo': limits: no limit is called 'knees', nearest: knee"),
                          HasSubstr("people.csv:2: 'Ivo': attends: has 'fun'"),
                          HasSubstr("people.csv:3: 'Ada': limits: ends at 'soon', expected a day"),
                          HasSubstr("people.csv:3: 'Ada': push: is 'sofa', expected a movement")));
}

TEST(PeopleFile, RefusesWhatNobodyReaches) {
  const auto refused = [](const std::string& header, const std::string& cell) {
    return complaint("name;" + header + "\nIvo;" + cell + "\n");
  };
  EXPECT_THAT(refused("run 1 mile", "0:01"), HasSubstr("is '0:01', expected 2:33 to"));
  EXPECT_THAT(refused("run 400 m", "0:30"), HasSubstr("is '0:30'"));
  EXPECT_THAT(refused("run 400 m", "92"), HasSubstr("is '92', expected m:ss"));
  EXPECT_THAT(refused("run 400 m", "9:20:00"), HasSubstr("expected 0:38 to"));
  EXPECT_THAT(refused("max push-up", "900"), HasSubstr("is '900', expected 0 to 400"));
  EXPECT_THAT(refused("push-up in 2:00", "900"), HasSubstr("is '900', expected 0 to 263"));
  EXPECT_THAT(refused("1rm deadlift", "-80"), HasSubstr("is '-80', expected 1 to 500 kg"));
  EXPECT_THAT(refused("1rm deadlift", "700"), HasSubstr("is '700', expected 1 to 500 kg"));
  EXPECT_THAT(refused("max plank", "4:00:00"), HasSubstr("expected 0:00 to 1:00:00"));
  EXPECT_THAT(refused("age", "200"), HasSubstr("is '200', expected 4 to 110"));
  EXPECT_THAT(refused("birth_year", "3020"), HasSubstr("is '3020', expected 1900 to 2100"));
  EXPECT_THAT(refused("mass_kg", "-60"), HasSubstr("is '-60', expected 15 to 350"));
  EXPECT_THAT(refused("vo2max_ml_kg_min", "200"), HasSubstr("is '200', expected 10 to 100"));
}

TEST(PeopleFile, WantsAnIdForEqualNames) {
  EXPECT_THAT(
      complaint("name\nAda\nIvo\nAda\n"),
      HasSubstr("people.csv:4: 'Ada': id: 'Ada' is also the id (or, without one, the name) in line 2"));
  EXPECT_EQ(read("id,name\n1,Ada\n2,Ada\n").people.size(), 2U);
}

TEST(PeopleFile, WantsANameAndEachColumnOnce) {
  EXPECT_THAT(complaint("age\n30\n"), HasSubstr("people.csv:1: name: is missing"));
  EXPECT_THAT(complaint("name,age\n,30\n"), HasSubstr("people.csv:2: name: is empty"));
  EXPECT_THAT(complaint("name,run 1 km,run 1000 m\nAda,4:10,4:10\n"),
              HasSubstr("run 1000 m: means the same as a column before it"));
  EXPECT_THAT(complaint("name,limits,actions\nAda,knee wrist,no deep bends\n"),
              HasSubstr("actions: has 1 texts for 2 limits"));
}

TEST(PeopleFile, ReadsAnActionWithABarInIt) {
  const PeopleFile file = read("name,limits,actions\nAda,knee wrist,\"bike \\| row|fists\"\n");
  EXPECT_EQ(file.people[0].limits[0].action, "bike | row");
  EXPECT_EQ(file.people[0].limits[1].action, "fists");
}

TEST(PeopleFile, HoldsAHeaderAlone) {
  EXPECT_TRUE(read("name,age\n").people.empty());
}

TEST(PeopleFile, HoldsTwoThousandPeople) {
  std::string bytes = "id;name;sex;run 5 km;max push-up;1rm deadlift;limits;actions\n";
  for (int i = 0; i < 2000; ++i) {
    const std::string n = std::to_string(i);
    bytes += "p" + n + ";Person " + n + ";f;25:10;20;77,5;knee;no deep bends\n";
  }
  const PeopleFile file = read(bytes);
  ASSERT_EQ(file.people.size(), 2000U);
  EXPECT_EQ(file.people[1999].id.text, "p1999");
  EXPECT_EQ(file.people[1999].marks.size(), 3U);
}

}  // namespace
}  // namespace repwright::store
