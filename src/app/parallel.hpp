#pragma once

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

#include "rehearsal/rehearse.hpp"

namespace repwright::app {

/// A loop over 0 .. count - 1 on so many threads; 0: as many as the machine has. Indices are handed out one
/// by one, so that a slow one holds nobody up. The first exception of any of them is thrown again to the
/// caller when all threads have ended.
inline rehearsal::ForEach in_parallel(int threads) {
  const int wanted = threads > 0 ? threads : static_cast<int>(std::thread::hardware_concurrency());
  if (wanted <= 1) return rehearsal::one_after_another;
  return [wanted](int count, const std::function<void(int)>& one) {
    std::atomic<int> next = 0;
    std::exception_ptr failed;
    std::mutex failing;
    const auto loop = [&] {
      try {
        for (int i = next++; i < count; i = next++) one(i);
      } catch (...) {
        const std::scoped_lock lock(failing);
        if (!failed) failed = std::current_exception();
        next = count;
      }
    };
    {
      std::vector<std::jthread> helpers;
      for (int t = 1; t < std::min(wanted, count); ++t) helpers.emplace_back(loop);
      loop();
    }
    if (failed) std::rethrow_exception(failed);
  };
}

}  // namespace repwright::app
