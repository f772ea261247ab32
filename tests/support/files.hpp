#pragma once

#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

/// Files that tests read, by their place in the source folder.
namespace repwright::test {

inline std::string text_of_file(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// `name`: below tests/data.
inline std::string test_data(const std::string& name) {
  return text_of_file(REPWRIGHT_SOURCE_DIR "/tests/data/" + name);
}

}  // namespace repwright::test
