#pragma once

#include <atomic>
#include <csignal>
#include <stop_token>
#include <thread>

namespace repwright::cli {

/// While it lives, Ctrl-C asks the work for a stop instead of ending the program (pressed again, it ends it),
/// and a terminal is told after a second that the work goes on. A pipe is told nothing.
class StopKey {
 public:
  StopKey();
  ~StopKey();
  StopKey(const StopKey&) = delete;
  StopKey& operator=(const StopKey&) = delete;

  std::stop_token stop() const { return source_.get_token(); }

  /// How far the work has come, for the terminal; from any thread.
  void come(int done, int of) const {
    of_ = of;
    done_ = done;
  }

 private:
  void watch(const std::stop_token& done);

  std::stop_source source_;
  mutable std::atomic<int> done_ = 0;
  mutable std::atomic<int> of_ = 0;  // 0: nobody says
  sigset_t before_{};
  std::jthread watcher_;  // last: it uses all of the others
};

}  // namespace repwright::cli
