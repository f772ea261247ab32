#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <utility>

#include "app/open_gym.hpp"

namespace repwright::app {

/// The gym that everybody looks at now. Whoever took it keeps it as it was; a change lays down a new one.
class Desk {
 public:
  explicit Desk(std::shared_ptr<const OpenGym> gym) : gym_(std::move(gym)) {}

  std::shared_ptr<const OpenGym> gym() const {
    const std::scoped_lock lock(reading_);
    return gym_;
  }

  /// Lets `change` work on a copy, one change after another, and lays that down if it succeeded. Nobody who
  /// only looks waits for it.
  base::Result<void> change(const std::function<base::Result<void>(OpenGym& gym)>& change) {
    const std::scoped_lock changing(changing_);
    auto next = std::make_shared<OpenGym>(*gym());
    if (auto changed = change(*next); !changed) return changed;
    const std::scoped_lock lock(reading_);
    gym_ = std::move(next);
    return {};
  }

 private:
  mutable std::mutex reading_;
  std::mutex changing_;
  std::shared_ptr<const OpenGym> gym_;
};

}  // namespace repwright::app
