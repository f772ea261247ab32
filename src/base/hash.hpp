#pragma once

#include <cstdint>
#include <string_view>

namespace repwright::base {

/// FNV-1a, 64 bits, of the bytes (G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, RFC 9923): the same on every
/// machine; tells slips apart, keeps no secrets.
constexpr std::uint64_t fnv1a(std::string_view bytes) {
  std::uint64_t hash = 0xCBF29CE484222325U;
  for (const char c : bytes) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001B3U;
  }
  return hash;
}

}  // namespace repwright::base
