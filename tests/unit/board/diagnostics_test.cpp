#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "board/diagnostic_names.hpp"
#include "board/read.hpp"
#include "support/shipped_catalogue.hpp"

namespace repwright::board {
namespace {

/// A board, the remark that it must get, and where the doubtful words begin.
struct Case {
  std::string text;
  std::string name;
  int line;
  int column;
};

const std::vector<Case>& cases() {
  static const std::vector<Case> all{
      {"AMRAP 12:75\n10 burpees", "no-such-time", 1, 7},
      {"3:60 plank", "no-such-time", 1, 1},
      {"For time, cap 3\n5 rounds\n60 s plank\n10 burpees", "cap-too-short", 1, 11},
      {"AMRAP 10 cap 5\n10 burpees", "cap-too-short", 1, 10},
      {"5000 rounds for time\n10 burpees", "too-many", 1, 1},
      {"bench 4x6 @ RPE 12", "too-many", 1, 13},
      {"AMRAP 10\n10 cal push-ups", "no-kilocalories", 2, 1},
      {"AMRAP 10", "no-work", 1, 1},
      {"5 x 400 m run @ 75%", "share-of-nothing", 1, 5},
      {"5x5 @ 75%", "share-of-nothing", 1, 1},
      {"for time\n500 m row 30 cal", "two-units", 2, 11},
      {"500 m 30 cal row", "two-units", 1, 7},
      {"0 push-ups", "no-amount", 1, 1},
      {"for time\n-5 burpees\n10 squats", "no-amount", 2, 1},
      {"0 rounds: 10 burpees", "no-amount", 1, 1},
      {"AMRAP 12\n10 burpees\nintent 14-10 min", "intent-backwards", 3, 1},
      {"RPE 8-6, bench 3x5", "backwards", 1, 1},
      {"3 RFT\n10 swings 2400 kg", "too-heavy", 2, 1},
      {"AMRAP 10\n8 unheard of things", "unknown-movement", 2, 3},
      {"For time\n500/400/300 run", "slash-without-levels", 2, 1},
      {"AMRAP\n5 burpees", "no-length", 1, 1},
      {"run 800 m\n24/40/96/48, your partition", "numbers-without-movement", 2, 1},
      {"AMRAP 10\n200 m push-ups", "unit-of-movement", 2, 1},
      {"same rounds", "nothing-to-repeat", 1, 1},
      {"0-10 AMRAP 10: 5 burpees\n5-15 AMRAP 10: 5 squats", "window-order", 2, 1},
      {"3 RFT, cap 10\n5 burpees\ncap 12", "second-clock", 3, 1},
      {"10 swigns", "spelling-guess", 1, 4},
      {"3 ruonds for time\n5 burpees", "spelling-guess", 1, 3},
      {"AMRAP 10\n5 dips", "ambiguous-movement", 2, 3},
      {"3 RFT\n14 KBS 24/16", "tier-order", 2, 8},
      {"RDL 4x8 @3-1-1-0", "tempo-order", 1, 10},
      {"3 RFT\n14 KBS 24", "mass-unit", 2, 8},
      {"AMRAP 13\n9 box step ups (each leg)", "both-sides", 2, 1},
      {"goblet squat 2x15", "sets-or-bells", 1, 16},
      {"AMRAP 10: 2 m plank, 5 burpees", "minutes-or-metres", 1, 11},
      {"bench 4x6 @7", "load-or-effort", 1, 12},
      {"EMOM 10\n5 burpees\n10 air squats", "slots-or-together", 3, 1},
      {"run 2 km\n8 rds: 6 push-ups 10 squats\nrun 2 km", "round-scope", 2, 1},
      {"EMOM 11\nodd: 5 burpees\neven: 9 sit-ups", "slots-do-not-divide", 1, 1},
      {"for time\npush-ups", "one-each", 2, 1},
      {"heats of two\n3 rounds for time\n300 m row", "heats-of", 1, 1},
      {"AMRAP 6 / rest 2 / AMRAP 6\n5 burpees", "work-of-next", 1, 1},
      {"3 RFT\n10 burpees\ngloves optional", "kept-as-words", 3, 1},
      {"3 RFT\n10 burpees\nvest 9/6 kg", "first-of-two", 3, 1},
      {"A / B\n3 RFT: 10/8 burpees\nC may stop at 2 rds", "level-ignored", 3, 1},
      {"AMRAP 10\n(5 burpees", "unclosed-bracket", 2, 1},
  };
  return all;
}

const domain::Diagnostic* find(const Reading& reading, const std::string& name) {
  const auto at = std::ranges::find(reading.diagnostics, name, &domain::Diagnostic::name);
  return at == reading.diagnostics.end() ? nullptr : &*at;
}

TEST(Diagnostics, StandWhereTheDoubtfulWordsBegin) {
  for (const Case& c : cases()) {
    const Reading reading = read(c.text, test::shipped_catalogue(), {});
    const domain::Diagnostic* found = find(reading, c.name);
    ASSERT_NE(found, nullptr) << c.name << ": " << c.text;
    EXPECT_EQ(found->span.line, c.line) << c.name << ": " << c.text;
    EXPECT_EQ(found->span.column, c.column) << c.name << ": " << c.text;
    EXPECT_EQ(found->severity, severity_of(c.name));
    EXPECT_FALSE(found->text.empty());
    EXPECT_NE(found->text.back(), '.') << found->text;
    EXPECT_FALSE(found->hint.empty()) << c.name;
  }
}

TEST(Diagnostics, CountColumnsInCharacters) {
  const Reading reading =
      read("AMRAP 10\n\u2022\u00A0\u00A08 unheard of things", test::shipped_catalogue(), {});
  const domain::Diagnostic* found = find(reading, "unknown-movement");
  ASSERT_NE(found, nullptr);
  EXPECT_EQ(found->span.column, 6);
}

TEST(Diagnostics, AllHaveACaseThatShowsThem) {
  // Said by the house's own rule, by brackets deeper than anyone writes, and by fields of other kinds.
  std::set<std::string> shown{"pull-up-swing", "too-deep", "rule-of-another-kind"};
  for (const Case& c : cases()) shown.insert(c.name);
  for (const DiagnosticName& known : all_diagnostic_names)
    EXPECT_TRUE(shown.contains(std::string(known.name))) << known.name;
}

TEST(Diagnostics, NameTheSwingRuleOfTheHouse) {
  domain::House house;
  house.pull_up_may_swing = true;
  EXPECT_NE(find(read("3 RFT\n5 pull-ups", test::shipped_catalogue(), house), "pull-up-swing"), nullptr);
}

TEST(Diagnostics, GiveUpOnBracketsInBracketsInBrackets) {
  const std::string text = "AMRAP 10\n5 burpees\n" + std::string(40, '(') + "every 2 min 3 squats";
  EXPECT_NE(find(read(text, test::shipped_catalogue(), {}), "too-deep"), nullptr);
}

TEST(Diagnostics, OfferTheNearestNames) {
  const Reading reading = read("AMRAP 10\n8 knee jerk raises", test::shipped_catalogue(), {});
  const domain::Diagnostic* found = find(reading, "unknown-movement");
  ASSERT_NE(found, nullptr);
  EXPECT_FALSE(found->repairs.empty());
}

/// What is offered first for the one name that nobody knows on a line.
std::string first_offered(const std::string& line) {
  const Reading reading = read("3 RFT\n" + line, test::shipped_catalogue(), {});
  const domain::Diagnostic* found = find(reading, "unknown-movement");
  return found == nullptr || found->repairs.empty() ? "" : found->repairs.front();
}

TEST(Diagnostics, OfferWhatIsCountedInTheUnitOfTheLine) {
  EXPECT_EQ(first_offered("400 m rum"), "running");
  EXPECT_EQ(first_offered("400m rnu"), "running");
  EXPECT_EQ(first_offered("500 m rwo"), "rowing");
  EXPECT_EQ(first_offered("30 kcal roe"), "rowing");
  EXPECT_EQ(first_offered("10 rum"), "ring muscle-ups") << "repetitions, as far as the line says";
  EXPECT_EQ(first_offered("10 rng dips"), "ring dips");
}

/// The text with the doubtful words replaced.
std::string mended(std::string text, const domain::Diagnostic& doubt, std::size_t repair) {
  return text.replace(doubt.span.begin, doubt.span.end - doubt.span.begin, doubt.repairs.at(repair));
}

struct Question {
  std::string text;
  std::string name;
  std::vector<std::string> answered;  // the text after each repair
};

TEST(Diagnostics, LetQuestionsOfTheHouseBeAnsweredByReplacingTheirWords) {
  const std::vector<Question> questions{
      {"3 RFT\n14 KBS 24/16 kg", "tier-order", {}},
      {"3 RFT\n14 KBS 24/16", "tier-order", {"3 RFT\n14 KBS 16/24"}},
      {"3 RFT\n14 KBS 24", "mass-unit", {"3 RFT\n14 KBS 24 kg", "3 RFT\n14 KBS 24 lb"}},
      {"RDL 4x8 @3-1-1-0", "tempo-order", {"RDL 4x8 @1-0-3-1"}},
      {"RDL 4x8 @3110", "tempo-order", {"RDL 4x8 @1031"}},
      {"AMRAP 13\n9 box step ups (each leg)", "both-sides", {"AMRAP 13\n9 box step ups"}},
      {"AMRAP 13\n9 box step ups each leg", "both-sides", {"AMRAP 13\n9 box step ups"}},
      {"AMRAP 10: 2 m plank, 5 burpees", "minutes-or-metres", {"AMRAP 10: 2 min plank, 5 burpees"}},
      {"AMRAP 12:75\n10 burpees", "no-such-time", {"AMRAP 13:15\n10 burpees"}},
      {"bench 4x6 @7", "load-or-effort", {"bench 4x6 @7 kg"}},
  };
  for (const Question& question : questions) {
    const Reading reading = read(question.text, test::shipped_catalogue(), {});
    const domain::Diagnostic* found = find(reading, question.name);
    ASSERT_NE(found, nullptr) << question.text;
    std::vector<std::string> answered;
    for (std::size_t i = 0; i < found->repairs.size(); ++i)
      answered.push_back(mended(question.text, *found, i));
    EXPECT_EQ(answered, question.answered) << question.text;
    for (const std::string& text : answered)
      for (const domain::Diagnostic& left : read(text, test::shipped_catalogue(), {}).diagnostics)
        EXPECT_EQ(left.severity, domain::Severity::Note) << text << ": " << left.text;
  }
}

TEST(Diagnostics, OfferBothKindsOfPullUpWhereTheHouseLetsThemSwing) {
  domain::House house;
  house.pull_up_may_swing = true;
  const std::string text = "3 RFT\n5 pull-ups";
  const Reading reading = read(text, test::shipped_catalogue(), house);
  const domain::Diagnostic* found = find(reading, "pull-up-swing");
  ASSERT_NE(found, nullptr);
  EXPECT_EQ(found->repairs, (std::vector<std::string>{"strict pull-ups", "kipping pull-ups"}));
  for (std::size_t i = 0; i < 2; ++i)
    EXPECT_EQ(find(read(mended(text, *found, i), test::shipped_catalogue(), house), "pull-up-swing"),
              nullptr);
}

}  // namespace
}  // namespace repwright::board
