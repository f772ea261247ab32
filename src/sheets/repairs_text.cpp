#include "sheets/repairs_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

#include "base/clock_text.hpp"
#include "sheets/page.hpp"
#include "sheets/rehearsal_text.hpp"

namespace repwright::sheets {
namespace {

using domain::Consequences;

std::string clock(double seconds) {
  return base::format_clock(base::Duration::from_si(std::round(seconds)));
}

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

/// One row of the table: what a version of the board does.
std::string row(std::string_view name, const Consequences& told, double asked_work_s) {
  const double kept = asked_work_s > 0 ? told.work_s / asked_work_s : 1;
  return fmt::format("  {:<12} {:>10} {:>11} {:>12} {:>11} {:>9}\n", name, clock(told.wait_s),
                     percent(told.finished), clock(told.end_p50_s), clock(told.end_p90_s), percent(kept));
}

/// The line that a repair changed or added.
std::string line_of(std::string_view text, int number) {
  for (int skipped = 1; skipped < number && !text.empty(); ++skipped)
    text.remove_prefix(std::min(text.find('\n'), text.size() - 1) + 1);
  text = text.substr(0, text.find_first_of("\r\n"));
  return std::string(text.substr(std::min(text.find_first_not_of(" \t"), text.size())));
}

}  // namespace

std::string repairs_text(const domain::RepairPlan& plan) {
  const double asked = plan.before.work_s;
  std::string text;
  for (const std::string& note : plan.notes) text += paragraph("", note);
  text += plan.best.empty()
              ? paragraph("", fmt::format("Nothing to repair: of {} small changes none makes this class "
                                          "better by more than it costs to explain.",
                                          plan.tried))
              : paragraph("", fmt::format("The best of {} small changes, each rehearsed with the same "
                                          "people and the same luck:",
                                          plan.tried));
  text += fmt::format("\n  {:<12} {:>10} {:>11} {:>12} {:>11} {:>9}\n", "", "mean wait", "inside cap",
                      "middle end", "slow end", "work");
  text += row("as chalked", plan.before, asked);
  int number = 0;
  for (const domain::Repair& repair : plan.best)
    text += row(fmt::format("repair {}", ++number), repair.after, asked);
  number = 0;
  for (const domain::Repair& repair : plan.best) {
    text += "\n" + paragraph(fmt::format("{}. ", ++number), repair.edit.words);
    text += paragraph(fmt::format("   chalk on line {}: ", repair.edit.line),
                      line_of(repair.edit.text, repair.edit.line));
  }
  return text + "\n" + paragraph("", caution_line());
}

}  // namespace repwright::sheets
