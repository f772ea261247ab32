#pragma once

#include <string>

#include "timetable/timetable.hpp"

namespace repwright::api {

/// The planned class as one JSON document: boxes in order and pieces with their clock edges; its shape is
/// docs/timetable.schema.json. UTF-8, indented by two, ends with a line feed.
std::string timetable_json(const timetable::Timetable& timetable);

}  // namespace repwright::api
