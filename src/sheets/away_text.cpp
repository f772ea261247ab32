#include "sheets/away_text.hpp"

#include <fmt/format.h>

#include "sheets/clock.hpp"
#include "sheets/page.hpp"
#include "sheets/rehearsal_text.hpp"
#include "sheets/table.hpp"

namespace repwright::sheets {

std::string away_text(const domain::AwayPlan& plan) {
  std::string text = plan.text;
  text += heading("WHAT STANDS FOR WHAT", "");
  Table lines{{{"here", Align::Left}, {"away", Align::Left}}, {}};
  for (const domain::AwayLine& line : plan.lines)
    lines.rows.push_back({line.written, line.away.empty()           ? "left out"
                                        : line.away == line.written ? "the same"
                                                                    : line.away});
  text += table_text(lines, 2);
  text += heading("WORK BY PATTERN",
                  fmt::format("{} in all here, {} away", clock_text(plan.here_s), clock_text(plan.away_s)));
  Table patterns{{{"", Align::Left}, {"here", Align::Right}, {"away", Align::Right}}, {}};
  for (const domain::PatternSeconds& sum : plan.patterns)
    patterns.rows.push_back({sum.pattern, clock_text(sum.here_s), clock_text(sum.away_s)});
  text += table_text(patterns, 2);
  if (!plan.notes.empty()) text += "\n";
  for (const std::string& note : plan.notes) text += paragraph("", note);
  return text + "\n" + paragraph("", caution_line());
}

}  // namespace repwright::sheets
