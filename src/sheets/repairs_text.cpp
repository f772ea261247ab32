#include "sheets/repairs_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

#include "base/clock_text.hpp"
#include "sheets/page.hpp"
#include "sheets/rehearsal_text.hpp"
#include "sheets/targets_text.hpp"

namespace repwright::sheets {
namespace {

using domain::Consequences;

std::string clock(double seconds) {
  return base::format_clock(base::Duration::from_si(std::round(seconds)));
}

// Name, waits, inside the cap, two ends of the class, work, as meant.
constexpr std::string_view columns = "  {:<11} {:>9} {:>10} {:>10} {:>9} {:>6} {:>9}";

std::string trimmed(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

/// One row of the table: what a version of the board does.
std::string row(std::string_view name, const Consequences& told, double asked_work_s) {
  const double kept = asked_work_s > 0 ? told.work_s / asked_work_s : 1;
  const std::string meant = told.off_intent ? percent(1 - *told.off_intent) : "";
  return trimmed(fmt::format(columns, name, clock(told.wait_s), percent(told.finished), clock(told.end_p50_s),
                             clock(told.end_p90_s), percent(kept), meant)) +
         "\n";
}

/// A line of a board text by its number.
std::string line_of(std::string_view text, int number) {
  for (int skipped = 1; skipped < number && !text.empty(); ++skipped)
    text.remove_prefix(std::min(text.find('\n'), text.size() - 1) + 1);
  text = text.substr(0, text.find_first_of("\r\n"));
  return std::string(text.substr(std::min(text.find_first_not_of(" \t"), text.size())));
}

/// What to chalk: the lines that are others now, or the whole board where it is written anew.
std::string chalk_text(const domain::Edit& edit) {
  if (edit.rewritten) {
    std::string text = "   chalk the board anew:\n";
    const auto lines = std::ranges::count(edit.text, '\n') + (edit.text.ends_with('\n') ? 0 : 1);
    for (int number = 1; number <= static_cast<int>(lines); ++number)
      text += "     " + line_of(edit.text, number) + "\n";
    return text;
  }
  std::string text;
  for (const int number : edit.lines)
    text += paragraph(fmt::format("   chalk on line {}: ", number), line_of(edit.text, number));
  return text;
}

/// Where the class is over its end in most runs and nothing shown brings it inside; empty otherwise.
std::string still_over(const domain::RepairPlan& plan) {
  constexpr double most = 0.5;
  if (plan.before.over_share <= most) return "";
  const bool helped = std::ranges::any_of(
      plan.best, [](const domain::Repair& repair) { return repair.after.over_share <= most; });
  if (helped) return "";
  return fmt::format(
      "The class runs over in {} of runs, by {} on a slow day, and no change shown here mends "
      "that: {}",
      percent(plan.before.over_share), clock(plan.before.over_s),
      "`repwright timetable` shows where the time goes.");
}

std::string opening(const domain::RepairPlan& plan) {
  if (plan.tried == 0) return "No small change of this board would help this class.";
  if (plan.best.empty())
    return fmt::format(
        "Nothing to repair: of {} small changes none makes this class better by more than it "
        "costs to explain.",
        plan.tried);
  return fmt::format("The best of {} small changes, each rehearsed with the same people and the same luck:",
                     plan.tried);
}

}  // namespace

std::string repairs_text(const domain::RepairPlan& plan) {
  const double asked = plan.before.work_s;
  std::string text;
  for (const std::string& note : plan.notes) text += paragraph("", note);
  text += paragraph("", opening(plan));
  if (plan.stopped)
    text +=
        paragraph("", fmt::format("Stopped before the end: the best so far, of {} runs each.", plan.runs));
  text += "\n" +
          trimmed(fmt::format(columns, "", "mean wait", "inside cap", "middle end", "slow end", "work",
                              plan.before.off_intent ? "as meant" : "")) +
          "\n";
  text += row("as chalked", plan.before, asked);
  int number = 0;
  for (const domain::Repair& repair : plan.best)
    text += row(fmt::format("repair {}", ++number), repair.after, asked);
  number = 0;
  for (const domain::Repair& repair : plan.best)
    text += "\n" + paragraph(fmt::format("{}. ", ++number), repair.edit.words) + chalk_text(repair.edit);
  if (const std::string over = still_over(plan); !over.empty()) text += "\n" + paragraph("", over);
  text += targets_text(plan.targets);
  return text + "\n" + paragraph("", caution_line());
}

}  // namespace repwright::sheets
