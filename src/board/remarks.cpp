#include "board/remarks.hpp"

#include <algorithm>
#include <tuple>

#include "board/diagnostic_names.hpp"

namespace repwright::board {

void Remarks::add(Remark remark) {
  list_.push_back({.name = std::string(remark.name),
                   .severity = severity_of(remark.name),
                   .text = std::move(remark.text),
                   .hint = std::move(remark.hint),
                   .span = remark.span,
                   .repairs = std::move(remark.repairs)});
}

void Remarks::add_once(Remark remark) {
  if (said_.insert(std::string(remark.name)).second) add(std::move(remark));
}

std::vector<domain::Diagnostic> Remarks::take() {
  const auto place = [](const domain::Diagnostic& d) {
    return std::tuple<std::size_t, std::size_t, const std::string&>(d.span.begin, d.span.end, d.name);
  };
  std::ranges::stable_sort(list_, {}, place);
  const auto twice = std::ranges::unique(
      list_, [&](const auto& a, const auto& b) { return place(a) == place(b) && a.text == b.text; });
  list_.erase(twice.begin(), twice.end());
  return std::move(list_);
}

}  // namespace repwright::board
