#pragma once

#include <map>
#include <string>
#include <string_view>

#include "base/result.hpp"
#include "domain/demo_past.hpp"

namespace repwright::store {

/// The plan of the demo's past as data/demo/history.json writes it; `boards` gives each session its text.
/// Fails with Invalid for what is no such plan, NotFound for a session whose board is missing.
base::Result<domain::DemoPast> read_demo_past(std::string_view bytes, const std::string& file,
                                              const std::map<std::string, std::string>& boards);

}  // namespace repwright::store
