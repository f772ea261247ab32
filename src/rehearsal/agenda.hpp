#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

#include "base/quantity.hpp"

namespace repwright::rehearsal {

/// The order of what happens at the same millisecond: whoever finishes at 2:00 frees a place for whoever
/// claims it at 2:00.
enum class Phase : std::uint8_t { Finish, Release, Claim, Start };

/// What an event is about; `who` is a person, the place of a Freed, or the team of a PoolFree.
enum class EventKind : std::uint8_t { Start, Claim, Freed, Bell, Turn, Pass, PoolFree, Meet, Home };

struct Event {
  base::SimTime at;
  Phase phase = Phase::Start;
  EventKind kind = EventKind::Start;
  int who = 0;
  std::uint32_t token =
      0;  // an event whose person has gone on since (another token) is void; of PoolFree: pool
};

/// Events in the order (at, phase, sequence of posting). Keeps its memory between runs.
class Agenda {
 public:
  void clear() {
    heap_.clear();
    sequence_ = 0;
  }
  bool empty() const { return heap_.empty(); }

  void post(const Event& event) {
    heap_.push_back({rank(event.at, event.phase, sequence_++), event});
    std::ranges::push_heap(heap_, later);
  }

  Event pop() {
    std::ranges::pop_heap(heap_, later);
    const Event next = heap_.back().event;
    heap_.pop_back();
    return next;
  }

 private:
  struct Entry {
    std::uint64_t rank;
    Event event;
  };
  static bool later(const Entry& a, const Entry& b) { return a.rank > b.rank; }
  // 36 bits of milliseconds (two years), 2 of phase, 26 of sequence: one comparison for all three.
  static std::uint64_t rank(base::SimTime at, Phase phase, std::uint32_t sequence) {
    return static_cast<std::uint64_t>(at.ms) << 28U | static_cast<std::uint64_t>(phase) << 26U | sequence;
  }

  std::vector<Entry> heap_;
  std::uint32_t sequence_ = 0;
};

}  // namespace repwright::rehearsal
