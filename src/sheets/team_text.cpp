#include "sheets/team_text.hpp"

#include <fmt/format.h>

#include "sheets/clock.hpp"
#include "sheets/page.hpp"
#include "sheets/rehearsal_text.hpp"
#include "sheets/table.hpp"

namespace repwright::sheets {

std::string team_text(const domain::TeamPlan& plan) {
  Table table{{{"", Align::Right}, {"team", Align::Left}}, {}};
  int number = 0;
  for (const domain::WorkTeam& team : plan.teams)
    table.rows.push_back(
        {fmt::format("{}", ++number),
         fmt::format("{}{}", fmt::join(team.names, " + "),
                     team.factor == 1 ? "" : fmt::format(", {:g} times the shared counts", team.factor))});
  std::string text =
      paragraph("", fmt::format("{}: home within {} of each other; as they stand it would be {}.", plan.piece,
                                clock_text(plan.spread_s), clock_text(plan.spread_as_they_stand_s)));
  text += "\n" + table_text(table, 2);
  if (!plan.notes.empty()) text += "\n";
  for (const std::string& note : plan.notes) text += paragraph("", note);
  return text + "\n" + paragraph("", caution_line());
}

}  // namespace repwright::sheets
