#include "rehearsal/places.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "base/random.hpp"
#include "rehearsal/agenda.hpp"

namespace repwright::rehearsal {
namespace {

TEST(Agenda, FinishesBeforeReleasesBeforeClaimsAtTheSameInstant) {
  Agenda agenda;
  agenda.post({{5}, Phase::Start, EventKind::Start, 3});
  agenda.post({{5}, Phase::Claim, EventKind::Claim, 2});
  agenda.post({{5}, Phase::Finish, EventKind::Bell, 0});
  agenda.post({{5}, Phase::Release, EventKind::Freed, 1});
  agenda.post({{4}, Phase::Start, EventKind::Start, 4});
  agenda.post({{5}, Phase::Claim, EventKind::Claim, 5});
  for (const int who : {4, 0, 1, 2, 5, 3}) EXPECT_EQ(agenda.pop().who, who);
  EXPECT_TRUE(agenda.empty());
}

TEST(Places, AreGivenInTheOrderOfComing) {
  Places places({1});
  EXPECT_TRUE(places.claim(0, 7));
  EXPECT_FALSE(places.claim(0, 8));
  EXPECT_FALSE(places.claim(0, 9));
  EXPECT_FALSE(places.claim(0, 10));
  places.leave(0, 9);
  EXPECT_EQ(places.release(0), 8);
  EXPECT_EQ(places.release(0), 10);
  EXPECT_EQ(places.release(0), std::nullopt);
  EXPECT_TRUE(places.free(0));
}

/// Mean wait in queue of M/M/c by Erlang's second formula: A. K. Erlang, Post Office Electrical Engineers'
/// Journal 10 (1917) 189-197; R. B. Cooper, Introduction to Queueing Theory, 2nd ed., North Holland
/// 1981, 3.5.
double erlang_c_wait(int servers, double load, double service) {
  double term = 1, sum = 0;
  for (int k = 0; k < servers; ++k) {
    sum += term;
    term *= load / (k + 1);
  }
  const double share = load / servers;
  const double last = term / (1 - share);
  return last / (sum + last) * service / (servers - load);
}

/// Mean wait of people who come at random to `servers` places for exponentially long.
double queue_of_strangers(int servers, double load, double service, int people) {
  base::Stream arrivals(base::Seed{11}, 0, 1, base::Purpose::Search);
  base::Stream services(base::Seed{11}, 0, 2, base::Purpose::Search);
  const auto whole = [](double seconds) { return base::sim_time(base::Duration::from_si(seconds)); };
  std::vector<base::SimTime> came(static_cast<std::size_t>(people));
  std::vector<base::SimTime> needs(static_cast<std::size_t>(people));
  Agenda agenda;
  Places places({servers});
  double clock = 0, waited = 0;
  for (int p = 0; p < people; ++p) {
    clock += -std::log(arrivals.uniform()) * service / load;
    came[static_cast<std::size_t>(p)] = whole(clock);
    needs[static_cast<std::size_t>(p)] = whole(-std::log(services.uniform()) * service);
    agenda.post({whole(clock), Phase::Claim, EventKind::Claim, p});
  }
  const auto begin = [&](int person, base::SimTime at) {
    const auto p = static_cast<std::size_t>(person);
    waited += (at - came[p]).duration().si();
    agenda.post({at + needs[p], Phase::Release, EventKind::Freed, person});
  };
  while (!agenda.empty()) {
    const Event event = agenda.pop();
    if (event.kind == EventKind::Claim) {
      if (places.claim(0, event.who)) begin(event.who, event.at);
    } else if (const auto next = places.release(0)) {
      begin(*next, event.at);
    }
  }
  EXPECT_EQ(places.in_use(0), 0);
  EXPECT_EQ(places.waiting(0), 0);
  return waited / people;
}

TEST(Places, MakePeopleWaitAsErlangSays) {
  // Worked value: two servers at half load wait a third of a service time (Cooper 1981, 3.5).
  EXPECT_NEAR(erlang_c_wait(2, 1, 60), 20, 1e-9);
  struct Case {
    int servers;
    double load, tolerance;
  };
  // Tolerances: about four standard errors of the mean, from the spread over ten other seeds.
  for (const auto& [servers, load, tolerance] :
       {Case{1, 0.5, 0.03}, Case{4, 2.8, 0.04}, Case{8, 7.2, 0.08}}) {
    const double expected = erlang_c_wait(servers, load, 30);
    EXPECT_NEAR(queue_of_strangers(servers, load, 30, 200'000) / expected, 1, tolerance)
        << servers << " places at load " << load;
  }
}

}  // namespace
}  // namespace repwright::rehearsal
