#pragma once

#include "api/route_table.hpp"

/// A member's own next class.
namespace repwright::api {

/// `{"today": null | {"class", "date", "start", "board", "text", "told", "pieces": [{"piece", "title",
/// "scheme", "form", "cap_s", "parts", "lines", "starts_with", "partners", ...}]}}` of that person, each
/// piece with what `form_person_json` says.
Answer get_own_today(const Call& call);

}  // namespace repwright::api
