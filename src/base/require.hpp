#pragma once

#include <source_location>
#include <stdexcept>
#include <string_view>

namespace repwright::base {

/// A broken promise inside the program: never caused by what a person typed. Caught once per face.
struct Bug : std::logic_error {
  using std::logic_error::logic_error;
};

/// Throws `Bug` naming the promise and the place when it does not hold.
void require(bool holds, std::string_view promise, std::source_location at = std::source_location::current());

}  // namespace repwright::base
