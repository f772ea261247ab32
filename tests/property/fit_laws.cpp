#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "support/chalk.hpp"
#include "support/floor.hpp"

namespace repwright {
namespace {

using domain::BlockKind;
using test::block;
using test::board;
using test::Floor;

/// Every movement of the catalogue as one line, with whatever else of it may be shown to a person.
domain::Board whole_catalogue(std::size_t shift) {
  const auto& movements = test::shipped_catalogue().movements;
  std::vector<domain::Item> items;
  for (std::size_t i = 0; i < movements.size(); ++i) {
    domain::Item line = test::item(movements[i].id.text, 8.0, movements[i].default_unit);
    const domain::MovementId other = movements[(i + shift) % movements.size()].id;
    line.gate = domain::Gate{other, "", domain::Unit::Seconds};
    line.second_station = other;
    line.scale = domain::Scale{{{other, 1}}, false};
    line.personal_version = i % 3 == 0;
    items.push_back(line);
  }
  return board({block(BlockKind::Partner, items)});
}

bool allowed(const domain::MovementId& id, const std::vector<domain::Limit>& limits) {
  const domain::Movement* movement = test::shipped_catalogue().find(id);
  return !movement || std::ranges::none_of(limits, [&](const domain::Limit& limit) {
    return forbidden(*movement, limit.limit);
  });
}

void expect_within_limits(const Floor& floor, const domain::Board& read) {
  const domain::FittedBoard fitted = floor.fit(read);
  for (std::size_t i = 0; i < floor.people.size(); ++i) {
    const auto& limits = floor.people[i].limits;
    for (const domain::FittedItem& line : fitted.people[i].items)
      for (const domain::MovementId& shown : {line.movement, line.gate, line.second_station})
        RC_ASSERT(allowed(shown, limits));
  }
}

TEST(FitLaws, NoPairOfLimitsIsEverShownWhatItForbids) {
  const auto& limits = test::shipped_catalogue().limits;
  const domain::Board read = whole_catalogue(1);
  for (const domain::LimitKind& one : limits) {
    Floor floor;
    for (const domain::LimitKind& other : limits) {
      domain::Person who = test::person("p");
      who.limits = {{one.id, "", std::nullopt}, {other.id, "", std::nullopt}};
      floor.add(who);
    }
    const domain::FittedBoard fitted = floor.fit(read);
    for (std::size_t i = 0; i < floor.people.size(); ++i)
      for (const domain::FittedItem& line : fitted.people[i].items) {
        EXPECT_TRUE(allowed(line.movement, floor.people[i].limits)) << line.movement.text << one.id.text;
        EXPECT_TRUE(allowed(line.gate, floor.people[i].limits)) << line.gate.text << one.id.text;
      }
  }
}

body::Body any_body() {
  body::Body drawn;
  drawn.critical_speed = *rc::gen::inRange(15, 50) / 10.0;
  for (double& best : drawn.best_set) best = *rc::gen::inRange(0, 900) / 10.0;
  return drawn;
}

RC_GTEST_PROP(FitLaws, NobodyIsShownWhatALimitForbids, ()) {
  const auto& catalogue = test::shipped_catalogue();
  Floor floor;
  domain::Person who = test::person("p", *rc::gen::element(domain::Sex::Male, domain::Sex::Female));
  for (const domain::LimitKind& kind : catalogue.limits)
    if (*rc::gen::inRange(0, 3) == 0) who.limits.push_back({kind.id, "", std::nullopt});
  const auto& standing = *rc::gen::elementOf(catalogue.movements);
  for (const char* word : {"pull", "push", "step", "row"}) who.versions[word] = standing.id;
  floor.add(who, any_body());
  expect_within_limits(floor, whole_catalogue(static_cast<std::size_t>(*rc::gen::inRange(0, 120))));
}

RC_GTEST_PROP(FitLaws, WhoHasNoLimitAndTheStrengthDoesTheBoardAsWritten, ()) {
  Floor floor;
  body::Body strong;
  strong.best_set = {200, 100, 400, 300, 400};
  floor.add(test::person("p"), strong);
  const auto& movement = *rc::gen::elementOf(test::shipped_catalogue().movements);
  const auto read =
      board({block(BlockKind::ForTime, {test::item(movement.id.text, 8.0, movement.default_unit)})});
  const domain::FittedItem line = floor.fit(read).people.at(0).items.at(0);
  RC_ASSERT(line.movement == movement.id);
  RC_ASSERT(line.swapped_for.empty());
}

}  // namespace
}  // namespace repwright
