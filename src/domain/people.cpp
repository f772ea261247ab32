#include "domain/people.hpp"

namespace repwright::domain {

std::vector<Limit> limits_on(const Person& person, std::optional<std::chrono::year_month_day> day) {
  std::vector<Limit> holding;
  for (const Limit& limit : person.limits)
    if (!limit.until || !day || *day <= *limit.until) holding.push_back(limit);
  return holding;
}

}  // namespace repwright::domain
