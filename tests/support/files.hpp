#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

#include "support/source_dir.hpp"

/// Files that tests read, by their place in the source folder.
namespace repwright::test {

inline std::string text_of_file(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path.string());
  return {std::istreambuf_iterator<char>(file), {}};
}

/// `name`: below tests/data.
inline std::string test_data(const std::string& name) {
  return text_of_file(source_dir() / "tests/data" / name);
}

}  // namespace repwright::test
