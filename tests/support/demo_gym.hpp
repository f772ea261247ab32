#pragma once

#include <memory>

#include "app/open_gym.hpp"
#include "support/demo_folder.hpp"
#include "support/shipped.hpp"

namespace repwright::test {

/// The demo gym (all of it invented) as it is shipped, without its history; read once.
inline std::shared_ptr<const app::OpenGym> demo_gym() {
  static const auto gym = std::make_shared<const app::OpenGym>(
      app::open_gym({demo_folder(), {}}, shipped_catalogue(), shipped_constants()));
  return gym;
}

}  // namespace repwright::test
