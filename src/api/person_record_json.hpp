#pragma once

#include <string>

#include "app/person_record.hpp"

namespace repwright::api {

/// All that is kept of a person as a document of docs/person.schema.json, readable: two spaces to a step.
std::string person_record_json(const app::PersonRecord& record);

}  // namespace repwright::api
