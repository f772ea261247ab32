#include "base/require.hpp"

#include <string>

namespace repwright::base {

void require(bool holds, std::string_view promise, std::source_location at) {
  if (holds) return;
  throw Bug(std::string(at.file_name()) + ":" + std::to_string(at.line()) +
            ": broken promise: " + std::string(promise));
}

}  // namespace repwright::base
