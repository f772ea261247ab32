#include <cstddef>
#include <cstdint>
#include <string>

#include "fuzz/fuzz_catalogue.hpp"

/// The bytes as a gym's own movements: whatever loads keeps every promise that the check makes.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace repwright;
  const std::string bytes(reinterpret_cast<const char*>(data), size);
  const auto read = test::read_small(test::movement_text("press"), bytes);
  if (!read) return 0;
  for (const domain::Movement& movement : read->movements)
    for (const domain::LimitId& limit : movement.avoid_with)
      if (!movement.swap_for.contains(limit) || read->find(movement.swap_for.at(limit)) == nullptr)
        std::abort();
  return 0;
}
