#pragma once

#include <filesystem>

namespace repwright::test {

/// The root of this checkout. In a library of its own, so that no other object file knows where it was built
/// and a compiler cache serves every clone.
std::filesystem::path source_dir();

}  // namespace repwright::test
