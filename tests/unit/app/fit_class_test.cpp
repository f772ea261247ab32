#include "app/fit_class.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <map>
#include <regex>

#include "api/fit_json.hpp"
#include "solver/cbc_solver.hpp"
#include "support/demo_gym.hpp"

namespace repwright::app {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

/// People of the demo gym (invented) before one board.
struct Class {
  explicit Class(std::size_t people) : gym(test::demo_gym()->knowledge), all(test::demo_gym()->people) {
    gym.scores.clear();
    all.resize(std::min(all.size(), people));
  }
  ClassFit fitted(const std::string& text, int threads = 1, domain::Solver* with = nullptr) const {
    const board::Reading reading = board::read(text, gym.catalogue, gym.house);
    solver::CbcSolver cbc;
    auto fit = fit_class({.reading = reading,
                          .gym = gym,
                          .people = all,
                          .gym_class = gym_class,
                          .heads = heads,
                          .runs = 60,
                          .threads = threads,
                          .stop = {}},
                         with != nullptr ? *with : cbc);
    EXPECT_TRUE(fit) << fit.error().message;
    return fit ? *std::move(fit) : ClassFit{};
  }

  GymKnowledge gym;
  std::vector<domain::Person> all;
  domain::GymClass gym_class;
  std::optional<int> heads{};
};

const std::string mixed =
    "AMRAP 11\n"
    "8 pull-ups\n"
    "14 box step-ups\n"
    "9 push-ups\n"
    "intent 4+ rounds\n";

TEST(FitClass, BringsMorePeopleInsideWhatIsIntended) {
  const ClassFit fit = Class(24).fitted(mixed);
  ASSERT_EQ(fit.plan.pieces.size(), 1u);
  const domain::PieceFit& piece = fit.plan.pieces[0];
  EXPECT_EQ(piece.people.size(), 24u);
  EXPECT_GT(piece.inside_after, piece.inside_before + 0.1);
  EXPECT_GT(piece.inside_after, 0.8);
}

TEST(FitClass, TouchesNobodysLimits) {
  const Class everybody(24);
  const ClassFit fit = everybody.fitted(mixed);
  for (std::size_t p = 0; p < everybody.all.size(); ++p) {
    for (const domain::FittedItem& item : fit.fitted.people[p].items) {
      const domain::Movement* movement = everybody.gym.catalogue.find(item.movement);
      if (movement == nullptr) continue;
      for (const domain::Limit& limit : everybody.all[p].limits)
        EXPECT_FALSE(domain::forbidden(*movement, limit.limit))
            << everybody.all[p].name << " " << movement->name;
    }
  }
}

TEST(FitClass, LeavesAloneWhatIsInsideAlready) {
  const ClassFit fit = Class(3).fitted("AMRAP 8\n5 air squats\nintent 1+ rounds\n");
  for (const domain::PersonFit& person : fit.plan.pieces[0].people)
    EXPECT_THAT(person.does, IsEmpty()) << person.name;
}

TEST(FitClass, TakesWhoComesLateToTheClassForThereWhenTheLastPieceBegins) {
  const std::string with_warm_up = "Warm-up 10 min\n\n" + mixed;
  Class some(4);
  const domain::PieceFit in_time = some.fitted(with_warm_up).plan.pieces.back();
  for (const domain::Person& person : some.all) {
    some.gym_class.booked.push_back(person.id);
    some.gym_class.arrivals.push_back({person.id, 420 * base::second});
  }
  const domain::PieceFit late = some.fitted(with_warm_up).plan.pieces.back();
  for (std::size_t p = 0; p < in_time.people.size(); ++p)
    EXPECT_DOUBLE_EQ(late.people[p].expected, in_time.people[p].expected) << in_time.people[p].name;
}

TEST(FitClass, OffersNoWalkAsAHarderRun) {
  const ClassFit fit = Class(12).fitted("AMRAP 11\n200 m run\n10 air squats\nintent 3+ rounds\n");
  for (const domain::PersonFit& person : fit.plan.pieces[0].people)
    EXPECT_THAT(person.harder, Not(HasSubstr("walk"))) << person.name;
}

/// What is said of one movement in two ways: `8 kg for ... with 6 kg`, `7 push-ups for 9 push-ups`.
void expect_all(const std::string& words, const std::string& name, bool harder) {
  static const std::regex loads(
      "([0-9.]+) ([^,]*?) with ([0-9.]+) kg for ([0-9.]+) ([^,]*?) with ([0-9.]+) kg");
  static const std::regex counts("(?:^|, )([0-9.]+) ([^,0-9]*?) for ([0-9.]+) ([^,0-9]*?)(?=,|$)");
  const auto larger = [&](double is, double was) {
    if (is != was) {
      EXPECT_EQ(is > was, harder) << name << ": " << words;
    }
  };
  for (auto at = std::sregex_iterator(words.begin(), words.end(), loads); at != std::sregex_iterator(); ++at)
    if ((*at)[2] == (*at)[5]) larger(std::stod((*at)[3]), std::stod((*at)[6]));
  for (auto at = std::sregex_iterator(words.begin(), words.end(), counts); at != std::sregex_iterator(); ++at)
    if ((*at)[2] == (*at)[4]) larger(std::stod((*at)[1]), std::stod((*at)[3]));
}

TEST(FitClass, GoesEasierToLessAndHarderToMore) {
  const ClassFit fit = Class(24).fitted(
      "AMRAP 11\n14 hanging knee raises\n18 KB swings 16/12\n11 sit-ups\nintent 3+ rounds\n");
  int easier = 0;
  int harder = 0;
  for (const domain::PersonFit& person : fit.plan.pieces[0].people) {
    expect_all(person.easier, person.name, false);
    expect_all(person.harder, person.name, true);
    easier += person.easier.empty() ? 0 : 1;
    harder += person.harder.empty() ? 0 : 1;
  }
  EXPECT_GE(easier, 20) << "nearly everybody has an easier way";
  EXPECT_GE(harder, 20);
}

TEST(FitClass, ShowsNoVersionHarderThanTheBoardToWhoDoesLessThanTheBoard) {
  Class one(24);
  std::erase_if(one.all, [](const domain::Person& person) { return person.id.text != "a17"; });
  ASSERT_EQ(one.all.size(), 1u);
  const ClassFit fit = one.fitted("AMRAP 11\n14 hanging knee raises\n18 KB swings 16/12\nintent 3+ rounds\n");
  ASSERT_THAT(fit.plan.pieces[0].people[0].does, Not(IsEmpty()));
  EXPECT_THAT(fit.plan.pieces[0].people[0].harder, Not(HasSubstr("toes-to-bar")));
}

TEST(FitClass, ProposesNoSwungPullUpWhereTheHouseWantsThemStrict) {
  const Class everybody(24);
  ASSERT_FALSE(everybody.gym.house.pull_up_may_swing);
  const ClassFit fit = everybody.fitted(mixed);
  for (std::size_t p = 0; p < everybody.all.size(); ++p) {
    const domain::PersonFit& person = fit.plan.pieces[0].people[p];
    EXPECT_THAT(person.easier, Not(HasSubstr("kipping"))) << person.name;
    EXPECT_THAT(person.harder, Not(HasSubstr("kipping"))) << person.name;
    for (const domain::FittedItem& item : fit.fitted.people[p].items)
      EXPECT_NE(item.movement, domain::MovementId{"kip-pull-up"}) << person.name;
  }
}

TEST(FitClass, SlowsDownWhoIsTooFast) {
  const ClassFit fit = Class(4).fitted("2 rounds for time\n10 push-ups\n200 m run\nintent 6-12 min\n");
  EXPECT_GT(fit.plan.pieces[0].inside_after, fit.plan.pieces[0].inside_before);
}

TEST(FitClass, LetsTheSlowDoFewerRounds) {
  const ClassFit fit = Class(8).fitted("6 rounds for time\n10 air squats\n200 m run\nintent 6-9 min\n");
  const domain::PieceFit& piece = fit.plan.pieces[0];
  EXPECT_GT(piece.inside_after, piece.inside_before);
  bool fewer = false;
  for (std::size_t p = 0; p < piece.people.size(); ++p) {
    if (fit.fitted.people[p].rounds.empty()) continue;
    EXPECT_THAT(piece.people[p].does.front(), HasSubstr("rounds for 6"));
    fewer = true;
  }
  EXPECT_TRUE(fewer);
}

TEST(FitClass, SaysWhichWishIsOutOfReachAndTheNearest) {
  const ClassFit fit = Class(4).fitted("for time\n200 push-ups\n3000 m run\nintent 2-3 min\n");
  for (const domain::PersonFit& person : fit.plan.pieces[0].people) {
    EXPECT_THAT(person.clash, HasSubstr("2:00 to 3:00 is out of reach"));
    EXPECT_THAT(person.clash, HasSubstr("comes to"));
  }
}

TEST(FitClass, AsksAboutPeopleOfWhomNothingIsKnown) {
  Class small(2);
  small.all[0].marks.clear();
  small.heads = 4;
  const ClassFit fit = small.fitted(mixed);
  const auto& people = fit.plan.pieces[0].people;
  ASSERT_EQ(people.size(), 4u);
  EXPECT_THAT(people[0].question, HasSubstr("no mark is known"));
  EXPECT_THAT(people[1].question, IsEmpty());
  EXPECT_THAT(people[3].question, HasSubstr("ask what to leave out"));
}

TEST(FitClass, SaysThatNothingIsIntended) {
  const ClassFit fit = Class(3).fitted("AMRAP 8\n5 push-ups\n");
  EXPECT_FALSE(fit.plan.pieces[0].window);
  EXPECT_THAT(fit.plan.notes, ::testing::Contains(HasSubstr("intends nothing")));
}

TEST(FitClass, GivesSixtyPeopleInAHallForTwelveAFitThatTheShelfHas) {
  Class crowd(24);
  crowd.heads = 60;
  const ClassFit fit = crowd.fitted("AMRAP 10\n10 KB swings 16 kg\n10 push-ups\nintent 5+ rounds\n");
  EXPECT_EQ(fit.plan.pieces[0].people.size(), 60u);
  EXPECT_THAT(fit.plan.pieces[0].short_of, IsEmpty());
  std::map<double, int> bells;
  for (const domain::FittedPerson& person : fit.fitted.people)
    if (const auto& load = person.items[0].load) ++bells[load->si()];
  for (const domain::KitLot& lot : crowd.gym.hall.kit)
    if (lot.equipment.text == "kettlebell") {
      EXPECT_LE(bells[lot.mass->si()], lot.count) << lot.mass->si() << " kg";
    }
}

TEST(FitClass, IsTheSameOnOneThreadAndOnSeveral) {
  const Class some(8);
  EXPECT_EQ(api::fit_json(some.fitted(mixed, 1).plan), api::fit_json(some.fitted(mixed, 3).plan));
}

/// Remembers what it was asked, and answers as CBC does.
class Witness final : public domain::Solver {
 public:
  base::Result<domain::WholeSolution> solve(const domain::WholeModel& model,
                                            const domain::SolveLimits& limits) override {
    asked = model;
    auto answer = solver::CbcSolver().solve(model, limits);
    if (answer) cost = answer->cost;
    return answer;
  }
  domain::WholeModel asked;
  double cost = 0;
};

/// The least cost over all choices of one way per person, what is short of kit rounded up and paid for.
double least_cost(const domain::WholeModel& model) {
  std::vector<std::vector<int>> groups;
  std::vector<const domain::LinearRow*> kit;
  for (const domain::LinearRow& row : model.rows) {
    if (row.at_least == 1 && row.at_most == 1) {
      groups.emplace_back();
      for (const domain::LinearTerm& term : row.terms) groups.back().push_back(term.variable);
    } else {
      kit.push_back(&row);
    }
  }
  double best = std::numeric_limits<double>::infinity();
  std::vector<double> taken(model.variables.size());
  const std::function<void(std::size_t, double)> from = [&](std::size_t group, double cost) {
    if (group < groups.size()) {
      for (const int way : groups[group]) {
        taken[static_cast<std::size_t>(way)] = 1;
        from(group + 1, cost + model.variables[static_cast<std::size_t>(way)].cost);
        taken[static_cast<std::size_t>(way)] = 0;
      }
      return;
    }
    for (const domain::LinearRow* row : kit) {
      double over = -row->at_most;
      double price = 0;
      for (const domain::LinearTerm& term : row->terms) {
        if (term.factor < 0) price = model.variables[static_cast<std::size_t>(term.variable)].cost;
        over += std::max(0.0, term.factor) * taken[static_cast<std::size_t>(term.variable)];
      }
      cost += price * std::max(0.0, std::ceil(over - 1e-9));
    }
    best = std::min(best, cost);
  };
  from(0, 0);
  return best;
}

TEST(FitClass, SharesTheKitAsWellAsTheBestOfAllWays) {
  Class three(3);
  for (domain::KitLot& lot : three.gym.hall.kit)
    if (lot.equipment.text == "kettlebell") lot.count = 1;
  Witness witness;
  const ClassFit fit =
      three.fitted("AMRAP 10\n15 KB swings 16 kg\n10 push-ups\nintent 5+ rounds\n", 1, &witness);
  ASSERT_FALSE(witness.asked.variables.empty());
  EXPECT_NEAR(witness.cost, least_cost(witness.asked), 1e-6);
}

}  // namespace
}  // namespace repwright::app
