#include "sheets/team_text.hpp"

#include <fmt/format.h>

#include "sheets/clock.hpp"
#include "sheets/page.hpp"
#include "sheets/rehearsal_text.hpp"
#include "sheets/table.hpp"

namespace repwright::sheets {

namespace {

std::string amount(const domain::TeamPlan& plan, double value) {
  return plan.measure == domain::Measure::Seconds ? clock_text(value) : fmt::format("{:.0f}", value);
}

/// What is between the first and the last.
std::string apart(const domain::TeamPlan& plan, double value) {
  return amount(plan, value) + (plan.measure == domain::Measure::Seconds ? "" : " reps");
}

}  // namespace

std::string team_text(const domain::TeamPlan& plan) {
  Table table{{{"", Align::Right},
               {plan.measure == domain::Measure::Seconds ? "home at" : "reps", Align::Right},
               {"team", Align::Left}},
              {}};
  int number = 0;
  for (const domain::WorkTeam& team : plan.teams)
    table.rows.push_back(
        {fmt::format("{}", ++number), amount(plan, team.expected),
         fmt::format("{}{}", fmt::join(team.names, " + "),
                     team.factor == 1 ? "" : fmt::format(", {:g} times the shared counts", team.factor))});
  std::string text =
      plan.teams.size() == 1
          ? paragraph("", plan.piece + ": there is only one team.")
          : paragraph("",
                      fmt::format("{}: {} between the first and the last {}; as they stand it would be {}.",
                                  plan.piece, apart(plan, plan.spread),
                                  plan.rehearsed ? "in the middle of the rehearsal" : "by everybody's pace",
                                  apart(plan, plan.spread_as_they_stand)));
  text += "\n" + table_text(table, 2);
  if (!plan.notes.empty()) text += "\n";
  for (const std::string& note : plan.notes) text += paragraph("", note);
  return text + "\n" + paragraph("", caution_line());
}

}  // namespace repwright::sheets
