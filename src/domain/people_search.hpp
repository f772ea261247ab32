#pragma once

#include <algorithm>
#include <vector>

#include "domain/people.hpp"

namespace repwright::domain {

/// The person of that id; null if nobody has it.
inline const Person* find_person(const std::vector<Person>& people, const PersonId& id) {
  const auto found = std::ranges::find(people, id, &Person::id);
  return found == people.end() ? nullptr : &*found;
}

}  // namespace repwright::domain
