#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "base/result.hpp"

namespace repwright::store {

/// Where shipped data may lie, the first place first: the folder that the environment variable
/// REPWRIGHT_DATA names, or, if it is not set, <exe>/../../data (a build in the source tree), <exe>/data and
/// <exe>/../share/repwright (installed).
std::vector<std::filesystem::path> data_places(const std::optional<std::filesystem::path>& override,
                                               const std::filesystem::path& program);

/// The first of `places` that holds a folder `catalogue`. Fails with NotFound, naming every place.
base::Result<std::filesystem::path> first_data_folder(const std::vector<std::filesystem::path>& places);

/// The shipped data of the running program, from any working folder.
base::Result<std::filesystem::path> data_folder();

}  // namespace repwright::store
