#pragma once

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

 private:
  void watch(const std::stop_token& done);

  std::stop_source source_;
  sigset_t before_{};
  std::jthread watcher_;  // last: it uses all of the others
};

}  // namespace repwright::cli
