#include "app/comers.hpp"

#include <map>
#include <set>

namespace repwright::app {
namespace {

using std::chrono::sys_days;

constexpr std::chrono::weeks away_for_long{3};

/// The days before `day` on which each person scored.
std::map<domain::PersonId, std::set<sys_days>> days_of(const std::vector<domain::ScoreEntry>& scores,
                                                       sys_days day) {
  std::map<domain::PersonId, std::set<sys_days>> days;
  for (const domain::ScoreEntry& entry : scores)
    if (const sys_days date{entry.date}; date < day) days[entry.person].insert(date);
  return days;
}

Standing standing_of(const std::set<sys_days>& came, sys_days day) {
  if (came.empty()) return Standing::First;
  return day - *came.rbegin() >= away_for_long ? Standing::Back : Standing::Regular;
}

}  // namespace

std::vector<Comer> comers_of(const Attendance& attendance, const GymKnowledge& gym,
                             const domain::GymClass& gym_class) {
  const sys_days day = gym_class.date ? sys_days{*gym_class.date} : sys_days{};
  const auto days = days_of(gym.scores, day);
  std::vector<Comer> comers;
  for (std::size_t p = 0; p < attendance.people.size(); ++p) {
    Comer comer{.person = attendance.people[p], .late = attendance.late[p], .last_came = {}};
    const auto known = days.find(comer.person.id);
    const std::set<sys_days> came = known == days.end() ? std::set<sys_days>{} : known->second;
    comer.sessions = static_cast<int>(came.size());
    if (!came.empty()) comer.last_came = std::chrono::year_month_day(*came.rbegin());
    if (!days.empty()) comer.standing = standing_of(came, day);
    comers.push_back(std::move(comer));
  }
  return comers;
}

}  // namespace repwright::app
