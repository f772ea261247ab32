#pragma once

#include <chrono>
#include <set>

#include "api/route_table.hpp"

/// What of the gym a relief coach is shown: the one class they take, and who comes to it.
namespace repwright::api {

bool is_relief(const Call& call);

/// The class that the relief coach who asks takes, or null if it is gone.
const domain::GymClass* relief_class(const Call& call);

/// Who the relief coach who asks meets.
std::set<domain::PersonId> met_by_relief(const Call& call);

/// Whether that account is of a relief coach whose class is over: from the second day after it on, so that it
/// is over everywhere on earth. A class that was taken away is over, one without a date is not.
bool class_is_over(const Caller& caller, const app::OpenGym& gym, std::chrono::year_month_day today);

/// Whether who asks is a relief coach of another class.
bool takes_another_class(const Call& call, const std::string& class_id);

}  // namespace repwright::api
