#pragma once

#include "api/route_table.hpp"

/// The list at the door of a class, and who is out on the run.
namespace repwright::api {

/// `{"people": [{"id", "name", "state", "late_s", "walk_in", "standing", "told"}]}`, `told` in action words.
Answer get_arrivals(const Call& call);
/// Of the list against those who had booked: `{"words", "planned", "now"}`.
Answer get_list_effect(const Call& call);
/// `{"person", "state", "late_s"?, "key"?}`: one tick.
Answer post_arrival(const Call& call);
/// Nobody else comes.
Answer post_nobody_else(const Call& call);
/// `{"name", "key", "late_s"?}`: somebody whom nobody knows yet; answered with their id.
Answer post_walk_in(const Call& call);

}  // namespace repwright::api
