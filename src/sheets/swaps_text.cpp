#include "sheets/swaps_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "sheets/page.hpp"

namespace repwright::sheets {
namespace {

struct Change {
  std::string what;
  std::vector<std::string> people;
};
struct Reason {
  std::string text;
  std::vector<std::string> people;
  std::vector<Change> changes;
};

void add_once(std::vector<std::string>& names, const std::string& name) {
  if (std::ranges::find(names, name) == names.end()) names.push_back(name);
}

std::vector<Reason> by_reason(std::span<const Swap> swaps) {
  std::vector<Reason> reasons;
  for (const Swap& swap : swaps) {
    auto reason = std::ranges::find(reasons, swap.reason, &Reason::text);
    if (reason == reasons.end()) reason = reasons.insert(reasons.end(), {swap.reason, {}, {}});
    add_once(reason->people, swap.person);
    const std::string what =
        swap.written == swap.version ? swap.written : fmt::format("{} → {}", swap.written, swap.version);
    auto change = std::ranges::find(reason->changes, what, &Change::what);
    if (change == reason->changes.end()) change = reason->changes.insert(reason->changes.end(), {what, {}});
    add_once(change->people, swap.person);
  }
  return reasons;
}

std::string entry(const Reason& reason) {
  if (reason.people.size() == 1) {
    std::vector<std::string> whats;
    whats.reserve(reason.changes.size());
    for (const Change& change : reason.changes) whats.push_back(change.what);
    return paragraph("  ", fmt::format("{}: {}", reason.people.front(), reason.text), 4) +
           paragraph("    ", fmt::format("{}", fmt::join(whats, "; ")), 6);
  }
  std::string text = paragraph("  ", reason.text + ":", 4);
  for (const Change& change : reason.changes)
    text += paragraph("    ", fmt::format("{}: {}", change.what, fmt::join(change.people, ", ")), 6);
  return text;
}

}  // namespace

std::string swaps_text(std::span<const Swap> swaps) {
  if (swaps.empty()) return "";
  std::string text = heading("WHO DOES WHAT INSTEAD", "");
  std::vector<Reason> reasons = by_reason(swaps);
  std::ranges::stable_partition(reasons, [](const Reason& reason) { return reason.people.size() > 1; });
  for (const Reason& reason : reasons) text += entry(reason);
  return text;
}

}  // namespace repwright::sheets
