#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <stop_token>

#include "app/fit_class.hpp"
#include "solver/cbc_solver.hpp"
#include "support/demo_gym.hpp"

/// Fits where people stand in each other's way.
namespace repwright::app {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;

/// The people of the demo gym (invented) in a hall that has bars and nothing else.
struct OnlyBars {
  explicit OnlyBars(int bars) : gym(test::demo_gym()->knowledge), people(test::demo_gym()->people) {
    gym.scores.clear();
    gym.hall = {};
    gym.hall.unlimited = false;
    gym.hall.places.push_back({{"pull-up-bar"}, bars});
  }
  domain::PieceFit fitted(const std::string& text) const {
    solver::CbcSolver cbc;
    return fitted(text, cbc, {});
  }
  domain::PieceFit fitted(const std::string& text, domain::Solver& solver,
                          const std::stop_token& stop) const {
    const board::Reading reading = board::read(text, gym.catalogue, gym.house);
    const auto fit = fit_class({.reading = reading,
                                .gym = gym,
                                .people = people,
                                .gym_class = {},
                                .heads = heads,
                                .runs = 60,
                                .threads = 2,
                                .stop = stop},
                               solver);
    EXPECT_TRUE(fit) << fit.error().message;
    return fit ? fit->plan.pieces.at(0) : domain::PieceFit{};
  }

  GymKnowledge gym;
  std::vector<domain::Person> people;
  std::optional<int> heads{};
};

const std::string bars_in_rounds =
    "AMRAP 12\n"
    "8 pull-ups\n"
    "12 push-ups\n"
    "16 air squats\n";

TEST(FitCrowdedClass, LosesLittleToTheQueueBesideABarForEverybody) {
  const std::string text = bars_in_rounds + "intent 6-8 rounds\n";
  const domain::PieceFit three = OnlyBars(3).fitted(text);
  const domain::PieceFit a_bar_each = OnlyBars(24).fitted(text);
  EXPECT_LT(three.inside_before, 0.2);
  EXPECT_GT(three.inside_after, 0.85 * a_bar_each.inside_after);
}

TEST(FitCrowdedClass, NeverLeavesFewerInsideThanTheBoardAsItIs) {
  for (const int bars : {1, 2, 4})
    for (const char* intent : {"intent 3-5 rounds\n", "intent 5-6 rounds\n", "intent 9+ rounds\n"}) {
      const domain::PieceFit piece = OnlyBars(bars).fitted(bars_in_rounds + intent);
      EXPECT_GE(piece.inside_after, piece.inside_before) << bars << " bars, " << intent;
    }
}

TEST(FitCrowdedClass, NeverLeavesFewerInsideWhereEverybodyMustQueue) {
  const OnlyBars hall(2);
  for (const char* text : {"5 rounds for time\n10 hanging knee raises\n10 pull-ups\nintent 10-14 min\n",
                           "for time\n40 hanging knee raises\n40 push-ups\nintent 5-8 min\n"}) {
    const domain::PieceFit piece = hall.fitted(text);
    EXPECT_GE(piece.inside_after, piece.inside_before) << text;
  }
}

TEST(FitCrowdedClass, SaysHowMuchOfAMissIsTheQueue) {
  OnlyBars hall(1);
  hall.people.resize(12);
  const domain::PieceFit piece =
      hall.fitted("3 rounds for time\n30 s dead hang\n10 push-ups\nintent 3-4 min\n");
  std::vector<std::string> clashes;
  for (const domain::PersonFit& person : piece.people) clashes.push_back(person.clash);
  EXPECT_THAT(clashes, Contains(HasSubstr("of waiting for a place")));
}

TEST(FitCrowdedClass, ExpectsOfPeopleWhatTheRehearsalComesToWithTheQueue) {
  const domain::PieceFit piece = OnlyBars(2).fitted(bars_in_rounds + "intent 6-8 rounds\n");
  double inside = 0;
  int expected_inside = 0;
  for (const domain::PersonFit& person : piece.people) {
    if (person.expected < 6.3 || person.expected > 7.7) continue;
    inside += person.inside_after;
    ++expected_inside;
  }
  ASSERT_GT(expected_inside, 12) << "half the class";
  EXPECT_GT(inside / expected_inside, 0.6) << "more runs than not, though queues are longer on some days";
}

/// Answers as CBC does, and is interrupted by its first answer.
class Interrupted final : public domain::Solver {
 public:
  base::Result<domain::WholeSolution> solve(const domain::WholeModel& model,
                                            const domain::SolveLimits& limits) override {
    auto answer = solver::CbcSolver().solve(model, limits);
    stop.request_stop();
    return answer;
  }
  std::stop_source stop;
};

TEST(FitCrowdedClass, GivesWhatItHasToWhoStopsIt) {
  Interrupted solver;
  const domain::PieceFit piece =
      OnlyBars(2).fitted(bars_in_rounds + "intent 6-8 rounds\n", solver, solver.stop.get_token());
  EXPECT_EQ(piece.people.size(), 24u);
}

}  // namespace
}  // namespace repwright::app
