#pragma once

#include "api/route_table.hpp"

/// What the gym keeps, as it lies on the desk: each role sees its part.
namespace repwright::api {

Answer get_gym(const Call& call);
Answer get_boards(const Call& call);
Answer get_board(const Call& call);
/// The last day on which the board was done.
Answer get_board_last(const Call& call);
Answer get_classes(const Call& call);
Answer get_class(const Call& call);
Answer get_people(const Call& call);
Answer get_person(const Call& call);
/// CSV in, and nothing is kept: the people that it says, or every bad cell by line and column.
Answer post_people_preview(const Call& call);
Answer get_hall(const Call& call);
Answer get_house(const Call& call);

}  // namespace repwright::api
