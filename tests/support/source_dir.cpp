#include "support/source_dir.hpp"

namespace repwright::test {

std::filesystem::path source_dir() {
  return REPWRIGHT_SOURCE_DIR;
}

}  // namespace repwright::test
