#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "support/small_catalogue.hpp"

/// Any bytes as a gym's own movements give a catalogue or errors; what loads keeps the promise of safe swaps.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace repwright;
  const std::string bytes(reinterpret_cast<const char*>(data), size);
  const auto read = test::read_small(test::movement_text("press"), bytes);
  if (!read) return 0;
  for (const domain::Movement& movement : read->movements)
    for (const domain::LimitId& limit : movement.avoid_with) {
      const auto swap = movement.swap_for.find(limit);
      const domain::Movement* target = swap == movement.swap_for.end() ? nullptr : read->find(swap->second);
      if (target == nullptr || domain::forbidden(*target, limit)) std::abort();
    }
  return 0;
}
