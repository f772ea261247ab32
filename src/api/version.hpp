#pragma once

#include <string>
#include <string_view>

namespace repwright::api {

/// Names a state by its content: whoever sends back another one than is kept now has looked at an older
/// state. 16 hexadecimal digits of FNV-1a, 64 bits (draft-eastlake-fnv); tells slips apart, keeps no secrets.
std::string version_of(std::string_view content);

}  // namespace repwright::api
