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
  std::vector<const Problem*> sorted;
  sorted.reserve(all_.size());
  for (const Problem& problem : all_) sorted.push_back(&problem);
  std::ranges::sort(sorted, [](const Problem* a, const Problem* b) {
    return std::tie(a->file, a->line, a) < std::tie(b->file, b->line, b);
  });
  std::string message;
  for (const Problem* problem : sorted) {
    if (!message.empty()) message += '\n';
    message += in_words(*problem);
  }
  return {base::ErrorCode::Invalid, std::move(message)};
}

}  // namespace repwright::store
