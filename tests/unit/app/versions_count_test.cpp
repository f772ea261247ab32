#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "app/rehearse_class.hpp"
#include "support/demo_gym.hpp"

/// Three of an easier movement may stand for one written: the score counts what is written.
namespace repwright::app {
namespace {

/// People of the demo gym (invented) before one board; every second one does not hang from a bar today.
ClassRehearsal rehearsed(const std::string& chalk, std::size_t people) {
  const auto gym = test::demo_gym();
  std::vector<domain::Person> who = gym->people;
  who.resize(std::min(who.size(), people));
  for (std::size_t p = 0; p < who.size(); ++p) {
    who[p].versions.clear();
    who[p].limits.clear();
    if (p % 2 == 0) who[p].limits.push_back({.limit = {"no-hang"}, .action = "rows today", .until = {}});
  }
  const board::Reading reading = board::read(chalk, gym->knowledge.catalogue, gym->knowledge.house);
  const domain::GymClass gym_class;
  auto result = rehearse_class({.reading = reading,
                                .gym = gym->knowledge,
                                .people = who,
                                .gym_class = gym_class,
                                .heads = {},
                                .runs = 20,
                                .threads = 1,
                                .keep_draws = true,
                                .stop = {}});
  EXPECT_TRUE(result) << result.error().message;
  return result ? *std::move(result) : ClassRehearsal{};
}

bool counts_otherwise(const domain::FittedPerson& person) {
  return std::ranges::any_of(person.items,
                             [](const domain::FittedItem& item) { return item.score_factor != 1; });
}

TEST(VersionsCount, TheirRoundsAreTheRepsOfTheirScore) {
  const ClassRehearsal all = rehearsed("AMRAP 12\n20 pull-ups (scale: 40 ring rows)\n14 air squats\n", 24);
  int otherwise = 0;
  for (std::size_t p = 0; p < all.fitted.people.size(); ++p) {
    if (!counts_otherwise(all.fitted.people[p])) continue;
    ++otherwise;
    const domain::PieceOutcome& piece = all.rehearsal.people[p].pieces.front();
    EXPECT_NEAR(piece.reps_per_round, 34, 1);
    EXPECT_NEAR(std::floor(piece.score.p50 / piece.reps_per_round), piece.rounds->p50, 1);
  }
  EXPECT_GE(otherwise, 5) << "hardly anybody here counts otherwise";
}

TEST(VersionsCount, TeamsShareWhatIsWritten) {
  const ClassRehearsal all =
      rehearsed("Teams of 2, for time\none works, one rests\n40 pull-ups (scale: 80 ring rows)\n", 24);
  EXPECT_TRUE(std::ranges::any_of(all.fitted.people, counts_otherwise)) << "nobody here counts otherwise";
  double done = 0;
  for (std::size_t p = 0; p < all.rehearsal.people.size(); ++p)
    for (const domain::StepTrace& step : all.rehearsal.people[p].pieces.front().steps) {
      const domain::FittedItem& line = all.fitted.people[p].items[static_cast<std::size_t>(step.step.index)];
      done += step.share_of_runs * step.amount / line.score_factor;
    }
  EXPECT_NEAR(done, 12 * 40, 5);
}

}  // namespace
}  // namespace repwright::app
