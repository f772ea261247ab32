#pragma once

#include "api/route_table.hpp"

/// What is proposed for a class, asked as `post_rehearse` is; none of it changes anything.
namespace repwright::api {

/// What each person does so that a piece is what it is meant to be.
Answer post_fit(const Call& call);

/// The warm-up; also `minutes` and `kit`, ids of what is out though the board does not use it.
Answer post_warm_up(const Call& call);

/// Who works with whom; also `apart`, as in `["a01+a07"]`.
Answer post_pairs(const Call& call);

/// The session at another place; also `who`, `kit`, `room` in square metres, `minutes`, `quiet`, `outside`.
Answer post_away(const Call& call);

}  // namespace repwright::api
