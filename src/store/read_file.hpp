#pragma once

#include <filesystem>
#include <string>

#include "base/result.hpp"

namespace repwright::store {

/// The bytes of a file. Fails with NotFound if it is not there, Unavailable if it cannot be read, Invalid
/// above 64 MB (nothing that belongs in a gym's folder is larger).
base::Result<std::string> read_file(const std::filesystem::path& path);

/// Writes the bytes, making the folders above; a reader never sees half a file, and what was written is there
/// after a power cut. Fails with Full, ReadOnly or Unavailable; then the file is as it was.
base::Result<void> write_file(const std::filesystem::path& path, const std::string& bytes);

/// Takes a file away; none is there after a power cut either. Where there is none nothing is done. Fails with
/// ReadOnly or Unavailable.
base::Result<void> remove_file(const std::filesystem::path& path);

}  // namespace repwright::store
