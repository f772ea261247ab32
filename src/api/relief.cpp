#include "api/relief.hpp"

namespace repwright::api {

bool is_relief(const Call& call) {
  return call.who().role == Role::Relief;
}

const domain::GymClass* relief_class(const Call& call) {
  const auto found = call.gym->classes.find(call.who().class_id);
  return found == call.gym->classes.end() ? nullptr : &found->second;
}

std::set<domain::PersonId> met_by_relief(const Call& call) {
  std::set<domain::PersonId> met;
  const domain::GymClass* taken = relief_class(call);
  if (taken == nullptr) return met;
  met.insert(taken->booked.begin(), taken->booked.end());
  met.insert(taken->walk_ins.begin(), taken->walk_ins.end());
  for (const domain::Arrival& arrival : taken->arrivals) met.insert(arrival.person);
  return met;
}

bool class_is_over(const Caller& caller, const app::OpenGym& gym, std::chrono::year_month_day today) {
  if (caller.role != Role::Relief) return false;
  const auto taken = gym.classes.find(caller.class_id);
  if (taken == gym.classes.end()) return true;
  const auto& date = taken->second.date;
  return date && std::chrono::sys_days{today} > std::chrono::sys_days{*date} + std::chrono::days{1};
}

bool takes_another_class(const Call& call, const std::string& class_id) {
  return is_relief(call) && call.who().class_id != class_id;
}

}  // namespace repwright::api
