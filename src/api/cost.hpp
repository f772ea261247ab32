#pragma once

#include <cstdint>

namespace repwright::api {

/// What an answer costs, and so who may work on it. Quick ones look and come at once; changes wait for the
/// disk, one after another; entries wait for it together; long ones compute, and a few run at a time.
enum class Cost : std::uint8_t { Quick, Change, Entry, Long };

}  // namespace repwright::api
