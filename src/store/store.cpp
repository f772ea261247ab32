#include "store/store.hpp"

#include <algorithm>

namespace repwright::store {

std::optional<base::Error> stale(const std::string& what, domain::Version kept, domain::Version seen) {
  if (kept == seen) return std::nullopt;
  const char* why = kept == 0   ? "was taken away meanwhile"
                    : seen == 0 ? "is there already"
                                : "was changed meanwhile: look again";
  return base::Error{base::ErrorCode::Conflict, what + " " + why};
}

domain::Stamp stamp_of(const domain::ClockAct& act) {
  const std::chrono::sys_time<std::chrono::milliseconds> at{std::chrono::milliseconds(act.at_ms)};
  return {act.who, std::chrono::floor<std::chrono::seconds>(at)};
}

std::string clock_words(const std::string& class_id, const domain::ClockAct& act) {
  return "clock " + class_id + ": " + std::string(domain::name_of(act.deed));
}

base::Result<std::optional<std::int64_t>> kept_before(const std::vector<domain::ClockAct>& acts,
                                                      const domain::ClockAct& act, std::int64_t seen) {
  const auto same = std::ranges::find(acts, act.key, &domain::ClockAct::key);
  if (same != acts.end()) return std::optional<std::int64_t>(same - acts.begin() + 1);
  if (static_cast<std::int64_t>(acts.size()) != seen)
    return base::failure(base::ErrorCode::Conflict, "somebody else moved the clock meanwhile: look again");
  return std::optional<std::int64_t>();
}

}  // namespace repwright::store
