#pragma once

#include "api/route_table.hpp"

/// A member's own next class.
namespace repwright::api {

/// `{"today": null | {"class", "date", "start", "board", "text", "told", "pieces": [{"piece", "title",
/// "form", "cap_s", "parts", "id", "name", "done_as", "with", "forecast", "least", "most", "lines",
/// "starts_with", "partners"}]}}` of that person.
Answer get_own_today(const Call& call);

}  // namespace repwright::api
