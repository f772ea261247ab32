#include "cli/stop_key.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <cstdlib>
#include <ctime>

#include "cli/say.hpp"

namespace repwright::cli {
namespace {

constexpr int looks_per_second = 20;
constexpr int interrupted = 130;  // what a shell calls a program that Ctrl-C ended

sigset_t only_interrupts() {
  sigset_t set;
  sigemptyset(&set);
  sigaddset(&set, SIGINT);
  return set;
}

}  // namespace

StopKey::StopKey() {
  const sigset_t set = only_interrupts();
  pthread_sigmask(SIG_BLOCK, &set, &before_);
  watcher_ = std::jthread([this](const std::stop_token& done) { watch(done); });
}

StopKey::~StopKey() {
  watcher_.request_stop();
  watcher_.join();
  pthread_sigmask(SIG_SETMASK, &before_, nullptr);
}

void StopKey::watch(const std::stop_token& done) {
  const sigset_t set = only_interrupts();
  const bool terminal = isatty(STDERR_FILENO) != 0;
  bool told = false;
  for (int look = 1; !done.stop_requested(); ++look) {
    const timespec wait{.tv_sec = 0, .tv_nsec = 1'000'000'000 / looks_per_second};
    if (sigtimedwait(&set, nullptr, &wait) == SIGINT) {
      if (source_.stop_requested()) std::_Exit(interrupted);
      source_.request_stop();
    }
    if (!terminal || look % looks_per_second != 0) continue;
    const std::string come = of_ > 0 ? fmt::format(", {} of {} tried", done_.load(), of_.load()) : "";
    remark(fmt::format("\r{} s{}, {}", look / looks_per_second, come,
                       source_.stop_requested() ? "stopping" : "Ctrl-C stops it"));
    told = true;
  }
  if (told) remark("\r\x1b[K");
}

}  // namespace repwright::cli
