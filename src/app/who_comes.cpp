#include "app/who_comes.hpp"
#include "domain/people_search.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>

namespace repwright::app {
namespace {

/// The list of the class, each with how late; everybody on time if the class has no list.
std::vector<domain::Arrival> list_of(const std::vector<domain::Person>& people,
                                     const domain::GymClass& gym_class) {
  if (!gym_class.arrivals.empty()) return gym_class.arrivals;
  std::vector<domain::Arrival> list;
  if (!gym_class.booked.empty()) {
    for (const domain::PersonId& id : gym_class.booked) list.push_back({id, {}});
  } else {
    for (const domain::Person& person : people) list.push_back({person.id, {}});
  }
  return list;
}

domain::Person unknown_person(std::size_t number) {
  domain::Person person;
  person.id = {fmt::format("unknown-{}", number)};
  person.name = fmt::format("Unknown {}", number);
  person.unknown = true;
  return person;
}

}  // namespace

base::Result<Attendance> who_comes(const std::vector<domain::Person>& people,
                                   const domain::GymClass& gym_class, std::optional<int> heads) {
  Attendance attendance;
  std::string missing;
  for (const domain::Arrival& arrival : list_of(people, gym_class)) {
    const domain::Person* known = domain::find_person(people, arrival.person);
    if (known == nullptr) {
      missing += (missing.empty() ? "`" : ", `") + arrival.person.text + "`";
      continue;
    }
    attendance.people.push_back(*known);
    attendance.late.push_back(arrival.late);
  }
  if (!missing.empty())
    return base::failure(base::ErrorCode::NotFound,
                         "the class names people that the people file does not have: " + missing);
  if (heads) {
    const auto wanted = static_cast<std::size_t>(*heads);
    if (attendance.people.size() > wanted) {
      attendance.people.resize(wanted);
      attendance.late.resize(wanted);
    }
    for (std::size_t number = 1; attendance.people.size() < wanted; ++number) {
      attendance.people.push_back(unknown_person(number));
      attendance.late.emplace_back();
    }
  }
  if (attendance.people.empty())
    return base::failure(base::ErrorCode::Invalid,
                         "nobody is in the class: book people for it, or say how many come");
  return attendance;
}

}  // namespace repwright::app
