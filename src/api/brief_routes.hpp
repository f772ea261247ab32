#pragma once

#include "api/route_table.hpp"

/// What is looked up for a coach beside the gym itself.
namespace repwright::api {

/// `{"people": [{"id", "name", "actions", "late_s", "standing", "sessions", "last_came", "marks"}],
/// "set_out": [{"equipment", "name", "kg", "height_cm", "needed", "available"}]}` of a class.
Answer get_brief(const Call& call);

/// `[{"date", "board", "title", "piece", "score", "version", "effort", "flag", "value", "forecast"}]`, the
/// latest first; `forecast` is null or `{"measure", "p10", "p50", "p90", "reps_per_round"}`.
Answer get_person_scores(const Call& call);

}  // namespace repwright::api
