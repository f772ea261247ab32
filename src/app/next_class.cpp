#include "app/next_class.hpp"

#include <tuple>

namespace repwright::app {

std::string next_class(const OpenGym& gym, std::chrono::year_month_day today) {
  const domain::GymClass* next = nullptr;
  const auto before = [](const domain::GymClass& a, const domain::GymClass& b) {
    return std::tuple(*a.date, a.start_minute.value_or(0)) < std::tuple(*b.date, b.start_minute.value_or(0));
  };
  for (const auto& [id, each] : gym.classes)
    if (each.date && *each.date >= today && (next == nullptr || before(each, *next))) next = &each;
  return next == nullptr ? "" : next->id;
}

bool is_invented(const OpenGym& gym) {
  return gym.knowledge.hall.name.find("(invented)") != std::string::npos;
}

}  // namespace repwright::app
