#pragma once

#include <optional>
#include <string>

#include "domain/hour_plan.hpp"
#include "timetable/timetable.hpp"

namespace repwright::api {

/// The planned class as one JSON document: boxes in order and pieces with their clock edges, and with a plan
/// what to cut and what happens to the kit; its shape is docs/timetable.schema.json. UTF-8, indented by two,
/// ends with a line feed.
std::string timetable_json(const timetable::Timetable& timetable,
                           const std::optional<domain::HourPlan>& plan);

}  // namespace repwright::api
