#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "stores.hpp"
#include "support/shipped_catalogue.hpp"

/// What a folder says, the database says, and a folder written from it says again.
namespace repwright {
namespace {

using rc::gen::inRange;

const domain::Stamp kim{"Kim", std::chrono::sys_days{std::chrono::year{2027} / 5 / 14}};

std::string some_text() {
  const auto pieces = *rc::gen::container<std::vector<std::string>>(
      *inRange<std::size_t>(0, 8),
      rc::gen::element<std::string>("5 RFT", "\n", "ø", "Wąs", "'", "\"", "--", ";", "\\", "\t", "x", " "));
  std::string out;
  for (const std::string& piece : pieces) out += piece;
  return out;
}

domain::Person some_person(int number) {
  domain::Person person;
  person.id = {"p" + std::to_string(number)};
  person.name = "Ø'Ada; \"" + std::to_string(*inRange(0, 1000)) + "\"";
  person.sex = *rc::gen::element(domain::Sex::Unsaid, domain::Sex::Female, domain::Sex::Male);
  if (*rc::gen::arbitrary<bool>()) person.mass = *inRange(300, 1500) / 10.0 * base::kilogram;
  if (*rc::gen::arbitrary<bool>())
    person.limits.push_back({{"knee"}, "No jumps | no lunges", std::chrono::year{2027} / 5 / 31});
  return person;
}

domain::ScoreEntry some_score(int person) {
  domain::ScoreEntry entry;
  entry.date = std::chrono::sys_days(std::chrono::days(*inRange(18000, 24000)));
  entry.board_id = "b0";
  entry.person = {"p" + std::to_string(person)};
  entry.text = *rc::gen::element<std::string>("22:10", "cap, 3 rds + 40", "'; DROP TABLE score; --");
  entry.value = domain::read_score(entry.text);
  if (*rc::gen::arbitrary<bool>()) entry.effort = *inRange(0, 100) / 10.0;
  entry.flag = *rc::gen::element(domain::DayFlag::None, domain::DayFlag::Ill, domain::DayFlag::Easy);
  return entry;
}

store::GymFolder some_gym() {
  store::GymFolder gym;
  const int people = *inRange(1, 5);
  for (int i = 0; i < people; ++i) gym.people.push_back(some_person(i));
  gym.hall.name = "Lock'd \"Shed\"";
  gym.hall.places = {{{"rower"}, *inRange(0, 9)}};
  gym.hall.unlimited = false;
  gym.house.last_rest_counts = *rc::gen::arbitrary<bool>();
  for (int i = *inRange(1, 4); i > 0; --i) gym.boards["b" + std::to_string(i - 1)] = some_text();
  domain::GymClass gym_class;
  gym_class.id = "c1";
  gym_class.board_id = "b0";
  gym_class.booked = {{"p0"}};
  gym_class.walk_ins = {{"p" + std::to_string(people - 1)}};
  gym.classes["c1"] = gym_class;
  for (int i = *inRange(0, 4); i > 0; --i) gym.scores.push_back(some_score(people - 1));
  return gym;
}

/// The gym and the movements of one store, carried to the other; the gym as that one gives it back.
store::GymFolder carried(const store::GymFolder& gym, store::Store& to) {
  const auto put = to.put_gym(gym, std::nullopt, kim);
  if (!put) RC_FAIL(put.error().message);
  auto kept = to.gym(test::shipped_catalogue());
  if (!kept) RC_FAIL(kept.error().message);
  return kept->gym;
}

RC_GTEST_PROP(ImportAndExport, SayTheSame, ()) {
  const test::Scratch scratch;
  const store::GymFolder gym = some_gym();
  const auto database = test::make_store(test::StoreKind::Database, scratch.path());
  const auto folder = test::make_store(test::StoreKind::Folder, scratch.path());
  const store::GymFolder again = carried(carried(gym, *database), *folder);
  RC_ASSERT(again.people == gym.people);
  RC_ASSERT(again.hall == gym.hall);
  RC_ASSERT(again.house == gym.house);
  RC_ASSERT(again.boards == gym.boards);
  RC_ASSERT(again.classes == gym.classes);
  RC_ASSERT(again.scores == gym.scores);
}

}  // namespace
}  // namespace repwright
