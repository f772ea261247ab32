#pragma once

#include "api/route_table.hpp"

/// Who is out on the run, and when they should be back.
namespace repwright::api {

/// `{"runners": [{"id", "name", "out_since_s", "p10_s", "p50_s", "p90_s"}]}` of everybody in the class;
/// `out_since_s` is how long they have been out (null: they are in), the others how long their run takes
/// (null: the board has none for them).
Answer get_runners(const Call& call);
/// `{"key", "person", "act": "out"|"in", "ago_s"?}`: seen so long ago; the same key is the same line.
Answer post_runner(const Call& call);

}  // namespace repwright::api
