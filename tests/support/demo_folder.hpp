#pragma once

#include <stdexcept>

#include "store/gym_folder.hpp"
#include "support/shipped_catalogue.hpp"
#include "support/source_dir.hpp"

namespace repwright::test {

/// The demo gym (all of it invented) as it is shipped, without its history; read once.
inline const store::GymFolder& demo_folder() {
  static const store::GymFolder folder = [] {
    auto read = store::read_gym(source_dir() / "data/demo", shipped_catalogue());
    if (!read) throw std::runtime_error(read.error().message);
    return *std::move(read);
  }();
  return folder;
}

}  // namespace repwright::test
