#include "app/attempts.hpp"

#include <iterator>

namespace repwright::app {

std::chrono::seconds Attempts::begin(const std::string& key, std::chrono::sys_seconds now) {
  const std::scoped_lock lock(busy_);
  for (auto each = failures_.begin(); each != failures_.end();) {
    std::erase_if(each->second, [&](std::chrono::sys_seconds at) { return at + window_ <= now; });
    each = each->second.empty() ? failures_.erase(each) : std::next(each);
  }
  auto& failures = failures_[key];
  if (failures.size() >= most_) return failures.front() + window_ - now;
  failures.push_back(now);
  return std::chrono::seconds::zero();
}

void Attempts::succeeded(const std::string& key) {
  const std::scoped_lock lock(busy_);
  failures_.erase(key);
}

}  // namespace repwright::app
