#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace repwright::rehearsal {

/// How many use a kind of place, and who waits for it: first come, first served. Knows no time.
class Places {
 public:
  /// `counts`: places of each kind.
  explicit Places(std::vector<int> counts);

  void clear();
  int kinds() const { return static_cast<int>(counts_.size()); }
  bool free(int kind) const;
  /// True if the person has the place now; else they stand at the end of the queue.
  bool claim(int kind, int person);
  /// Gives one place back; returns who has it now, if somebody waited.
  std::optional<int> release(int kind);
  /// Leaves the queue without having got a place.
  void leave(int kind, int person);

  int in_use(int kind) const { return used_[static_cast<std::size_t>(kind)]; }
  int waiting(int kind) const { return static_cast<int>(queues_[static_cast<std::size_t>(kind)].size()); }

 private:
  // A queue that reuses its memory: people before `head` have gone.
  struct Queue {
    std::vector<int> people;
    std::size_t head = 0;
    std::size_t size() const { return people.size() - head; }
  };
  std::vector<int> counts_;
  std::vector<int> used_;
  std::vector<Queue> queues_;
};

}  // namespace repwright::rehearsal
