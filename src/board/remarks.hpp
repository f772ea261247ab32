#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "domain/diagnostic.hpp"

namespace repwright::board {

struct Remark {
  std::string_view name;
  domain::Span span;
  std::string text;
  std::string hint;
  std::vector<std::string> repairs = {};
};

/// What reading has to say, in the order in which it came up.
class Remarks {
 public:
  void add(Remark remark);
  /// Says it the first time only: house rules are shown once a board.
  void add_once(Remark remark);
  std::size_t count() const { return list_.size(); }
  /// Sorted by place, nothing twice.
  std::vector<domain::Diagnostic> take();

 private:
  std::vector<domain::Diagnostic> list_;
  std::set<std::string, std::less<>> said_;
};

}  // namespace repwright::board
