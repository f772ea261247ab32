#pragma once

#include <string>
#include <vector>

#include "base/result.hpp"

namespace repwright::store {

/// One thing that is wrong in a file: where, in which row and field, and in words what and what was expected.
struct Problem {
  std::string file;
  int line = 0;       // from 1; 0: of the whole file
  std::string row;    // the row's id, empty if there is none
  std::string field;  // "swap_for.knee", a column, a JSON pointer; empty: of the whole row
  std::string text;
  bool operator==(const Problem&) const = default;
};

/// Collects, so that a person sees everything that is wrong in one go.
class Problems {
 public:
  void add(Problem problem) { all_.push_back(std::move(problem)); }
  bool empty() const { return all_.empty(); }
  const std::vector<Problem>& all() const { return all_; }

  /// One error (Invalid), a line per problem in the order of file and line. Must not be empty.
  base::Error error() const;

 private:
  std::vector<Problem> all_;
};

/// "file:line: row 'id': field 'name': text", leaving out what is empty.
std::string in_words(const Problem& problem);

}  // namespace repwright::store
