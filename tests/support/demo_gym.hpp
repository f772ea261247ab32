#pragma once

#include <memory>
#include <stdexcept>
#include <utility>

#include "app/open_gym.hpp"
#include "store/gym_folder.hpp"
#include "support/shipped.hpp"

namespace repwright::test {

/// The demo gym (all of it invented) as it is shipped, without its history; read once.
inline std::shared_ptr<const app::OpenGym> demo_gym() {
  static const std::shared_ptr<const app::OpenGym> gym = [] {
    auto folder = store::read_gym(source_dir() / "data/demo", shipped_catalogue());
    if (!folder) throw std::runtime_error(folder.error().message);
    return std::make_shared<const app::OpenGym>(
        app::open_gym({std::move(*folder), {}}, shipped_catalogue(), shipped_constants()));
  }();
  return gym;
}

}  // namespace repwright::test
