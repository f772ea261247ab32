#pragma once

#include "api/route_table.hpp"

/// What people scored in a class and how hard it was for them: added, corrected, and who did so when. A
/// person reads and writes their own.
namespace repwright::api {

/// `[{"number", "version", "person", "piece", "score", "done_as", "effort", "flag", "entered_by", "saved_by",
/// "saved_at"}]` of a class, in the order of entry.
Answer get_class_scores(const Call& call);

/// `person`, `score`, `piece`, `done_as`, `effort`, `flag`: answers the line's `number` and `version`.
Answer post_class_score(const Call& call);

/// The same with the `version` that was looked at: what the line says from now on.
Answer put_score(const Call& call);

/// All that a line ever said, oldest first, as `get_class_scores`.
Answer get_score_versions(const Call& call);

/// `[{"person", "effort"}]` of a class: how hard the whole hour was.
Answer get_efforts(const Call& call);

/// `person`, `effort`: replaces what was said of that person before.
Answer put_effort(const Call& call);

}  // namespace repwright::api
