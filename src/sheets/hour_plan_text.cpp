#include "sheets/hour_plan_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "sheets/clock.hpp"
#include "sheets/page.hpp"
#include "sheets/table.hpp"

namespace repwright::sheets {
namespace {

using domain::ChangeOver;
using domain::KitMove;

std::string cuts_text(const std::vector<domain::HourCut>& cuts) {
  if (cuts.empty()) return "";
  Table table{{{"", Align::Right},
               {"gives", Align::Right},
               {"9 in 10 over by", Align::Right},
               {"work left", Align::Right},
               {"cut", Align::Left}},
              {}};
  int number = 0;
  for (const domain::HourCut& cut : cuts)
    table.rows.push_back({fmt::format("{}", ++number), clock_text(cut.gives_s), clock_text(cut.end_p90_s),
                          fmt::format("{:.0f} %", 100 * cut.work_left), cut.words});
  return heading("WHAT TO CUT FIRST", "each on top of those above it") + table_text(table, 2);
}

/// `fetch 6 kettlebells 16 kg, 4 mats`; empty where no lot has any of that.
std::string part(const std::vector<KitMove>& kit, const char* what, int KitMove::* count) {
  std::vector<std::string> lots;
  for (const KitMove& move : kit)
    if (move.*count > 0) lots.push_back(fmt::format("{} x {}", move.*count, move.name));
  return lots.empty() ? "" : fmt::format("{} {}", what, fmt::join(lots, ", "));
}

std::string change_text(const ChangeOver& change) {
  std::vector<std::string> parts;
  for (const auto& [what, count] : {std::pair{"stays:", &KitMove::stays},
                                    std::pair{change.from.empty() ? "set out:" : "fetch:", &KitMove::fetched},
                                    std::pair{"put away:", &KitMove::put_away}})
    if (std::string words = part(change.kit, what, count); !words.empty()) parts.push_back(std::move(words));
  for (const KitMove& move : change.kit)
    if (move.short_by > 0)
      parts.push_back(fmt::format("{}: {} of those who want one {}", move.name, move.short_by,
                                  move.short_by == 1 ? "shares" : "share"));
  if (change.bars_reloaded > 0)
    parts.push_back(fmt::format("{} {} another load", change.bars_reloaded,
                                change.bars_reloaded == 1 ? "bar gets" : "bars get"));
  if (parts.empty()) return "";
  if (!change.from.empty() && change.seconds > 0)
    parts.push_back(fmt::format("about {}", clock_text(change.seconds)));
  return paragraph(fmt::format("  Before {}: ", change.to), fmt::format("{}", fmt::join(parts, "; ")), 4);
}

}  // namespace

std::string hour_plan_text(const domain::HourPlan& plan) {
  std::string changes;
  for (const ChangeOver& change : plan.changes) changes += change_text(change);
  return cuts_text(plan.cuts) +
         (changes.empty() ? "" : heading("KIT", "as far as the hall lists it") + changes);
}

}  // namespace repwright::sheets
