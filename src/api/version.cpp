#include "api/version.hpp"

#include <fmt/format.h>

#include <cstdint>

namespace repwright::api {

std::string version_of(std::string_view content) {
  std::uint64_t hash = 0xCBF29CE484222325ULL;
  for (const char c : content) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001B3ULL;
  }
  return fmt::format("{:016x}", hash);
}

}  // namespace repwright::api
