#include "app/desk.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <future>
#include <stdexcept>
#include <thread>

#include "support/demo_gym.hpp"

namespace repwright::app {
namespace {

/// A place where another program changes the gym.
struct Elsewhere {
  OpenGym kept = *test::demo_gym();
  std::uint64_t mark = 1;
  int loads = 0;
  bool broken = false;

  Origin origin() {
    return {.mark = [this]() -> base::Result<std::uint64_t> { return mark; },
            .load = [this]() -> base::Result<OpenGym> {
              ++loads;
              if (broken) return base::failure(base::ErrorCode::Invalid, "people.csv: row 3");
              return kept;
            }};
  }
  void change(const std::string& text) {
    kept.knowledge.boards["thursday"] = text;
    ++mark;
  }
};

TEST(Desk, LaysDownWhatAnotherProgramKept) {
  Elsewhere elsewhere;
  const auto desk = Desk::open(elsewhere.origin());
  ASSERT_TRUE(desk);
  const auto before = (*desk)->gym();
  elsewhere.change("5 RFT");
  EXPECT_TRUE((*desk)->look_again());
  EXPECT_EQ((*desk)->gym()->knowledge.boards.at("thursday"), "5 RFT");
  EXPECT_FALSE(before->knowledge.boards.contains("thursday")) << "whoever took the gym keeps it as it was";
}

TEST(Desk, LeavesTheGymWhereItLiesWhileNobodyChangesIt) {
  Elsewhere elsewhere;
  const auto desk = Desk::open(elsewhere.origin());
  ASSERT_TRUE(desk);
  const auto before = (*desk)->at_hand();
  EXPECT_TRUE((*desk)->look_again());
  EXPECT_EQ((*desk)->at_hand(), before);
  EXPECT_EQ(elsewhere.loads, 1);
}

TEST(Desk, ChangesWhatIsKeptNowAndNotWhatItLoadedOnce) {
  Elsewhere elsewhere;
  const auto desk = Desk::open(elsewhere.origin());
  ASSERT_TRUE(desk);
  elsewhere.change("theirs");
  std::string seen;
  EXPECT_TRUE((*desk)->change([&](OpenGym& gym) -> base::Result<void> {
    seen = gym.knowledge.boards.at("thursday");
    gym.knowledge.boards["friday"] = "ours";
    return {};
  }));
  EXPECT_EQ(seen, "theirs");
  EXPECT_EQ((*desk)->gym()->knowledge.boards.at("friday"), "ours");
}

TEST(Desk, KeepsTheLastGymThatCouldBeReadAndRefusesChangesUntilItCanBeReadAgain) {
  Elsewhere elsewhere;
  const auto desk = Desk::open(elsewhere.origin());
  ASSERT_TRUE(desk);
  const auto nothing = [](OpenGym&) -> base::Result<void> { return {}; };
  elsewhere.broken = true;
  elsewhere.change("half a line");
  for (int again = 0; again < 2; ++again) {
    EXPECT_EQ((*desk)->look_again().error().message, "people.csv: row 3");
    EXPECT_FALSE((*desk)->change(nothing));
  }
  EXPECT_EQ(elsewhere.loads, 2) << "the same fault is not looked at twice";
  EXPECT_FALSE((*desk)->gym()->knowledge.boards.contains("thursday"));
  elsewhere.broken = false;
  elsewhere.change("the whole line");
  EXPECT_TRUE((*desk)->change(nothing));
  EXPECT_EQ((*desk)->gym()->knowledge.boards.at("thursday"), "the whole line");
}

TEST(Desk, LeavesTheGymAsItWasWhenAChangeFails) {
  Desk desk(*test::demo_gym());
  EXPECT_FALSE(desk.change([](OpenGym& gym) -> base::Result<void> {
    gym.knowledge.boards["thursday"] = "5 RFT";
    return base::failure(base::ErrorCode::Full, "no room");
  }));
  EXPECT_FALSE(desk.gym()->knowledge.boards.contains("thursday"));
}

domain::NewScore score_of(const std::string& text) {
  domain::NewScore score;
  score.entry.text = text;
  score.entry.value = domain::read_score(text);
  return score;
}

/// A store that is slow, and counts how often it was asked.
struct SlowSheet {
  std::atomic<int> asked = 0;
  std::int64_t lines = 0;
  std::promise<void> first_began{};
  std::promise<void> first_may_end{};

  base::Result<std::vector<domain::AddedScore>> keep(const std::vector<domain::NewScore>& scores) {
    if (++asked == 1) {
      first_began.set_value();
      first_may_end.get_future().wait();
    }
    std::vector<domain::AddedScore> added;
    for (std::size_t i = 0; i < scores.size(); ++i) added.push_back({++lines, true});
    return added;
  }
};

TEST(Desk, EntersTogetherWhatComesWhileAScoreIsBeingKept) {
  constexpr int phones = 20;
  Desk desk(*test::demo_gym());
  const std::size_t before = desk.gym()->knowledge.scores.size();
  SlowSheet sheet;
  const auto enter = [&](int phone) {
    return desk.enter(score_of(std::to_string(phone)),
                      [&](const auto& scores) { return sheet.keep(scores); });
  };
  std::vector<std::future<base::Result<domain::AddedScore>>> entered;
  entered.push_back(std::async(std::launch::async, enter, 0));
  sheet.first_began.get_future().wait();
  std::atomic<int> knocking = 0;
  for (int phone = 1; phone < phones; ++phone)
    entered.push_back(std::async(std::launch::async, [&, phone] {
      ++knocking;
      return enter(phone);
    }));
  while (knocking < phones - 1) std::this_thread::yield();
  sheet.first_may_end.set_value();
  std::set<std::int64_t> numbers;
  for (auto& each : entered) numbers.insert(each.get().value().number);
  EXPECT_EQ(numbers.size(), static_cast<std::size_t>(phones));
  EXPECT_LT(sheet.asked, phones) << "each waited alone";
  EXPECT_EQ(desk.gym()->knowledge.scores.size(), before + phones);
}

TEST(Desk, LetsNobodyWaitForeverWhereKeepingAScoreBreaks) {
  Desk desk(*test::demo_gym());
  const auto breaks =
      [](const std::vector<domain::NewScore>&) -> base::Result<std::vector<domain::AddedScore>> {
    throw std::runtime_error("broken");
  };
  EXPECT_THROW(static_cast<void>(desk.enter(score_of("9:00"), breaks)), std::runtime_error);
  const auto full =
      [](const std::vector<domain::NewScore>&) -> base::Result<std::vector<domain::AddedScore>> {
    return base::failure(base::ErrorCode::Full, "no room");
  };
  EXPECT_EQ(desk.enter(score_of("9:00"), full).error().message, "no room");
  EXPECT_EQ(desk.gym()->knowledge.scores.size(), test::demo_gym()->knowledge.scores.size());
}

TEST(Desk, LaysDownNothingForALineThatWasSentBefore) {
  Desk desk(*test::demo_gym());
  const auto before = desk.at_hand();
  const auto known = [](const std::vector<domain::NewScore>& scores) {
    return base::Result<std::vector<domain::AddedScore>>(
        std::vector<domain::AddedScore>(scores.size(), {7, false}));
  };
  EXPECT_EQ(desk.enter(score_of("9:00"), known).value().number, 7);
  EXPECT_EQ(desk.at_hand(), before);
}

TEST(GymAtHand, ReadsABoardAsTheReaderOfOneBoardDoes) {
  const GymAtHand at_hand(*test::demo_gym());
  const GymKnowledge& known = at_hand.gym().knowledge;
  for (const auto& [id, text] : at_hand.gym().knowledge.boards)
    EXPECT_EQ(at_hand.read(text).board, board::read(text, known.catalogue, known.house).board) << id;
}

/// A gym where everybody did one push-up on the day before the class.
TEST(GymAtHand, LetsTheRehearsalKnowWhatPeopleDidLately) {
  OpenGym gym = *test::demo_gym();
  gym.knowledge.boards["one"] = "1 RFT\n1 push-up\n";
  const domain::GymClass& sat = gym.classes.at("sat-24");
  for (const domain::Person& person : gym.people) {
    domain::ScoreEntry& entry = gym.knowledge.scores.emplace_back();
    entry.date = std::chrono::sys_days{sat.date.value()} - std::chrono::days(1);
    entry.board_id = "one";
    entry.person = person.id;
    entry.text = "0:10";
    entry.value = domain::read_score(entry.text);
  }
  const GymAtHand at_hand(std::move(gym));
  EXPECT_EQ(at_hand.lately_on(sat.date).size(), at_hand.gym().people.size());
  EXPECT_TRUE(at_hand.lately_on(std::nullopt).empty());
  const auto finds_much_more = [&](const std::string& class_id) {
    const WhatIf what{.class_id = class_id, .heads = {}, .out = {}, .runs = 5, .stop = {}};
    const auto result = rehearse_what_if(at_hand, at_hand.read("20 RFT\n30 push-ups\n"), what);
    return std::ranges::any_of(result.value().rehearsal.findings, [](const domain::Finding& finding) {
      return finding.kind == domain::FindingKind::MuchMoreThanLately;
    });
  };
  EXPECT_TRUE(finds_much_more("sat-24"));
  EXPECT_FALSE(finds_much_more("")) << "on no date nothing is known";

  domain::ScoreEntry today = at_hand.gym().knowledge.scores.back();
  today.date = *sat.date;
  const auto after = GymAtHand::with_scores(at_hand, {today});
  EXPECT_EQ(after->gym().knowledge.scores.size(), at_hand.gym().knowledge.scores.size() + 1);
  EXPECT_EQ(after->lately_on(sat.date).size(), at_hand.lately_on(sat.date).size());
  domain::ScoreEntry earlier = today;
  earlier.date = std::chrono::sys_days{*sat.date} - std::chrono::days(2);
  const GymAtHand fresh(GymAtHand::with_scores(*after, {earlier})->gym());
  const auto worked_out = GymAtHand::with_scores(*after, {earlier})->lately_on(sat.date);
  const auto anew = fresh.lately_on(sat.date);
  EXPECT_EQ(worked_out.at(earlier.person).weeks, anew.at(earlier.person).weeks)
      << "what an earlier score changes is worked out anew";
}

}  // namespace
}  // namespace repwright::app
