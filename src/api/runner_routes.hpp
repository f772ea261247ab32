#pragma once

#include "api/route_table.hpp"

/// Who is out on the run, and when they should be back.
namespace repwright::api {

/// `{"runners": [{"id", "name", "out_since_s"}]}` of everybody in the class: how long they have been out;
/// null: they are in.
Answer get_runners(const Call& call);
/// `{"runs": [{"id", "p10_s", "p50_s", "p90_s"}]}`: how long the runs of those who run take.
Answer get_runs(const Call& call);
/// `{"key", "person", "act": "out"|"in", "ago_s"?}`: seen so long ago; the same key is the same line.
Answer post_runner(const Call& call);

}  // namespace repwright::api
