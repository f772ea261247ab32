#pragma once

#include "api/route_table.hpp"

/// The clock of a class: what it shows when, and what a coach does to it.
namespace repwright::api {

/// `now_ms`: the program's clock, milliseconds since 1970 (UTC).
Answer get_time(const Call& call);

/// `{"class", "version", "state", "cues", "at", "ahead", "over_ms", "last_call_ms", "last_act", "now_ms"}`:
/// docs/guide/serving.md says what each is.
Answer get_clock(const Call& call);

/// `act`, `key`, the `version` that was looked at, `at_ms`, and for some acts `cue` or `seconds`: what
/// `get_clock` answers from now on. The same key again does nothing.
Answer post_clock_act(const Call& call);

/// Whether the clock of that class is between its start and its end, also while it is paused.
bool clock_runs(const Call& call, const std::string& class_id);

}  // namespace repwright::api
