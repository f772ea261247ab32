#pragma once

#include "api/route_table.hpp"

/// What needs the board's text and the gym as it lies open, and changes nothing.
namespace repwright::api {

Answer post_read(const Call& call);
Answer post_tidy(const Call& call);
Answer post_rehearse(const Call& call);
Answer get_movements(const Call& call);
/// Ids and names of what a hall may hold; `kind` says whether people queue for it or carry it away.
Answer get_equipment(const Call& call);
/// Ids and names of limits, for those who write them down; never for the floor.
Answer get_limits(const Call& call);

}  // namespace repwright::api
