#include "store/problems.hpp"

#include <algorithm>
#include <tuple>

#include "base/require.hpp"

namespace repwright::store {

std::string in_words(const Problem& problem) {
  std::string out = problem.file;
  if (problem.line > 0) out += ":" + std::to_string(problem.line);
  out += ": ";
  if (!problem.row.empty()) out += "'" + problem.row + "': ";
  if (!problem.field.empty()) out += problem.field + ": ";
  return out + problem.text;
}

base::Error Problems::error() const {
  base::require(!all_.empty(), "an error is made of at least one problem");
  std::vector<Problem> sorted = all_;
  std::ranges::stable_sort(sorted, {}, [](const Problem& p) { return std::tie(p.file, p.line); });
  std::string message;
  for (const Problem& problem : sorted) {
    if (!message.empty()) message += '\n';
    message += in_words(problem);
  }
  return {base::ErrorCode::Invalid, std::move(message)};
}

}  // namespace repwright::store
