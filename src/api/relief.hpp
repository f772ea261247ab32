#pragma once

#include <set>

#include "api/route_table.hpp"

/// What of the gym a relief coach is shown: the one class they take, and who comes to it.
namespace repwright::api {

bool is_relief(const Call& call);

/// The class that the relief coach who asks takes, or null if it is gone.
const domain::GymClass* relief_class(const Call& call);

/// Who the relief coach who asks meets.
std::set<domain::PersonId> met_by_relief(const Call& call);

/// Whether who asks is a relief coach of another class.
bool takes_another_class(const Call& call, const std::string& class_id);

}  // namespace repwright::api
