#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "domain/reasons.hpp"

namespace repwright::api {

/// Why a person is forecast what they are: the member `why` of docs/rehearsal.schema.json.
nlohmann::ordered_json why_json(const domain::Why& why);

/// The tests that would tell most of a person as one JSON document (UTF-8, indented by two, ends with a line
/// feed); its shape is docs/tests.schema.json.
std::string tests_json(const domain::TestOffers& offers);

}  // namespace repwright::api
