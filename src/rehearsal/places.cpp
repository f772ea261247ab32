#include "rehearsal/places.hpp"

#include <algorithm>

#include "base/require.hpp"

namespace repwright::rehearsal {

Places::Places(std::vector<int> counts)
    : counts_(std::move(counts)), used_(counts_.size(), 0), queues_(counts_.size()) {
  for (const int count : counts_) base::require(count > 0, "a kind of place has at least one place");
}

void Places::clear() {
  std::ranges::fill(used_, 0);
  for (Queue& queue : queues_) {
    queue.people.clear();
    queue.head = 0;
  }
}

bool Places::free(int kind) const {
  const auto k = static_cast<std::size_t>(kind);
  return used_[k] < counts_[k];
}

bool Places::claim(int kind, int person) {
  const auto k = static_cast<std::size_t>(kind);
  if (free(kind)) {
    ++used_[k];
    return true;
  }
  queues_[k].people.push_back(person);
  return false;
}

std::optional<int> Places::release(int kind) {
  const auto k = static_cast<std::size_t>(kind);
  base::require(used_[k] > 0, "only a place in use is released");
  Queue& queue = queues_[k];
  if (queue.size() == 0) {
    --used_[k];
    return std::nullopt;
  }
  const int next = queue.people[queue.head++];
  if (queue.size() == 0) {
    queue.people.clear();
    queue.head = 0;
  }
  return next;
}

void Places::leave(int kind, int person) {
  Queue& queue = queues_[static_cast<std::size_t>(kind)];
  const auto waiting = queue.people.begin() + static_cast<std::ptrdiff_t>(queue.head);
  const auto at = std::find(waiting, queue.people.end(), person);
  base::require(at != queue.people.end(), "only somebody who waits can leave the queue");
  queue.people.erase(at);
}

}  // namespace repwright::rehearsal
