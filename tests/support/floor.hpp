#pragma once

#include <string>
#include <utility>
#include <vector>

#include "rehearsal/place_table.hpp"
#include "rehearsal/plain_fit.hpp"
#include "rehearsal/write_script.hpp"
#include "support/shipped.hpp"

/// A class made by hand, from people to scripts.
namespace repwright::test {

inline domain::Person person(std::string id, domain::Sex sex = domain::Sex::Male) {
  domain::Person made;
  made.id.text = id;
  made.name = std::move(id);
  made.sex = sex;
  return made;
}

struct Floor {
  std::vector<domain::Person> people;
  std::vector<body::Body> bodies;
  domain::House house;
  domain::Hall hall;
  domain::GymClass gym_class;
  body::Constants constants = shipped_constants();
  rehearsal::FitRule rule = rehearsal::FitRule::WithinLimits;

  void add(domain::Person one, const body::Body& its_body = {}) {
    people.push_back(std::move(one));
    bodies.push_back(its_body);
  }
  void add_many(int count) {
    for (int i = 0; i < count; ++i) add(person("p" + std::to_string(i)));
  }
  domain::FittedBoard fit(const domain::Board& board) const {
    return rehearsal::plain_fit({board, shipped_catalogue(), house, people, bodies, constants, gym_class.date,
                                 rule, nullptr, rehearsal::kinds_gone(hall, gym_class)});
  }
  rehearsal::WrittenFloor write(const domain::Board& board) const {
    const domain::FittedBoard fitted = fit(board);
    const timetable::Timetable laid_out = timetable::lay_out(board, gym_class);
    return rehearsal::write_scripts(
        {fitted, laid_out, shipped_catalogue(), hall, house, gym_class, people, bodies, constants});
  }
};

}  // namespace repwright::test
