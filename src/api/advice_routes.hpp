#pragma once

#include "api/route_table.hpp"

/// What is proposed for a class, asked as `post_rehearse` is; none of it changes anything.
namespace repwright::api {

/// What happens when, what to cut first, and the kit between the pieces; also `words_per_minute`, by which
/// the briefing lasts where the class does not say how long it does.
Answer post_timetable(const Call& call);

/// What each person does so that a piece is what it is meant to be.
Answer post_fit(const Call& call);

/// The warm-up; also `minutes` and `kit`, ids of what is out though the board does not use it.
Answer post_warm_up(const Call& call);

/// Who works with whom; also `apart`, as in `["a01+a07"]`.
Answer post_pairs(const Call& call);

/// The session at another place; also `who`, `kit`, `room` in square metres, `minutes`, `quiet`, `outside`.
Answer post_away(const Call& call);
/// The next class of the person in the path, asked by them or a coach; only `kit` to `outside`.
Answer post_own_away(const Call& call);

}  // namespace repwright::api
