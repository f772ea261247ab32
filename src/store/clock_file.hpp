#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "domain/clock_act.hpp"

/// What was done to the clock of one class, as a file of a gym folder (docs/guide/gym-folder.md).
namespace repwright::store {

/// Fails with Invalid, naming every row that cannot be read; `file` is its name in messages.
base::Result<std::vector<domain::ClockAct>> read_clock(std::string_view bytes, const std::string& file);

std::string write_clock(const std::vector<domain::ClockAct>& acts);

}  // namespace repwright::store
