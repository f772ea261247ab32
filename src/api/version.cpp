#include "api/version.hpp"

#include <fmt/format.h>

#include "base/hash.hpp"

namespace repwright::api {

std::string version_of(std::string_view content) {
  return fmt::format("{:016x}", base::fnv1a(content));
}

}  // namespace repwright::api
