#pragma once

#include "api/route_table.hpp"

/// What coaches tell each other of a person or of the gym until it wears off.
namespace repwright::api {

/// `[{"number", "person", "text", "until", "by", "at"}]` of those that hold today, in the order in which they
/// came; `person` is null for a note of the gym. A relief coach reads those of the gym and of who they meet.
Answer get_notes(const Call& call);

/// `text`, `person`, `until` (the last day): answers the note's `number`.
Answer post_note(const Call& call);

Answer delete_note(const Call& call);

}  // namespace repwright::api
