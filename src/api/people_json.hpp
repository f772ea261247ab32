#pragma once

#include <chrono>
#include <nlohmann/json_fwd.hpp>
#include <span>

#include "domain/people.hpp"

namespace repwright::api {

/// `{"version", "columns", "rows"}`: the columns of people.csv (docs/guide/gym-folder.md) that anybody has
/// something in, and an object per person with the cells that are not empty, as texts.
nlohmann::ordered_json people_json(std::span<const domain::Person> people);

/// One row of `people_json`.
nlohmann::ordered_json person_json(const domain::Person& person);

/// What the floor sees of a person on that day: id, name, and what they do instead, in action words. No
/// marks, no limits.
nlohmann::ordered_json floor_json(const domain::Person& person, std::chrono::year_month_day today);

}  // namespace repwright::api
