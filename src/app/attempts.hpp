#pragma once

#include <chrono>
#include <cstddef>
#include <map>
#include <mutex>
#include <string>
#include <vector>

namespace repwright::app {

/// Attempts to sign in that failed, so that nobody guesses a password or a PIN: after `most` failures of one
/// key (a name, a link) within `window` the key rests until the oldest of them is that old.
class Attempts {
 public:
  explicit Attempts(std::size_t most = 5, std::chrono::seconds window = std::chrono::minutes(15))
      : most_(most), window_(window) {}

  /// How long the key rests; zero if it may try. A try counts as failed until `succeeded`, so that many at
  /// once are no way around.
  std::chrono::seconds begin(const std::string& key, std::chrono::sys_seconds now);
  void succeeded(const std::string& key);

 private:
  std::size_t most_;
  std::chrono::seconds window_;
  std::mutex busy_;
  std::map<std::string, std::vector<std::chrono::sys_seconds>> failures_;  // oldest first
};

}  // namespace repwright::app
