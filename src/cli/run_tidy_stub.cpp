#include "cli/commands.hpp"
namespace repwright::cli {
int run_tidy(const ReadOptions&) {
  return 70;
}
}  // namespace repwright::cli
