#pragma once

#include "api/route_table.hpp"

/// What changes the gym. Every change names the version that was looked at; nothing for what is new. Answers
/// with the new version; 409 if another one is kept by now.
namespace repwright::api {

Answer put_board(const Call& call);
Answer put_class(const Call& call);
/// Takes a class away; refused (409) while its clock runs, and once scores of it are kept.
Answer delete_class(const Call& call);
Answer put_people(const Call& call);
Answer put_hall(const Call& call);
Answer put_house(const Call& call);

}  // namespace repwright::api
