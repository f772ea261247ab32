#include "sheets/rehearsal_text.hpp"

#include <fmt/format.h>

#include "sheets/findings_text.hpp"
#include "sheets/page.hpp"
#include "sheets/queues_text.hpp"
#include "sheets/scores_text.hpp"
#include "sheets/timetable_text.hpp"

namespace repwright::sheets {

std::string caution_line() {
  return "Forecasts are ranges, never promises. Stop and get medical help for chest pain, dizziness, sudden "
         "severe pain, or dark urine after hard unfamiliar work. In heat: slower, shorter, shade, water, or "
         "not at all. Screening by the gym's own form; local rules come first; with minors, pregnancy or "
         "return after illness, licensed professionals decide.";
}

std::string rehearsal_text(const domain::Rehearsal& rehearsal, const RehearsalHead& head) {
  std::string first = head.title.empty() ? "Rehearsal" : head.title;
  if (!head.when.empty()) first += " · " + head.when;
  first += fmt::format(" · {} {} · {} {}, seed {}", head.people, head.people == 1 ? "person" : "people",
                       rehearsal.runs, rehearsal.runs == 1 ? "run" : "runs", rehearsal.seed);
  std::string text = paragraph("", first, 2);
  for (const std::string& note : rehearsal.notes) text += paragraph("  ", note, 4);
  text += findings_text(rehearsal.findings);
  text += heading("THE HOUR", "") + hour_text(rehearsal.timetable);
  text += swaps_text(head.swaps);
  for (std::size_t piece = 0; piece < rehearsal.piece_names.size(); ++piece)
    text += scores_text(rehearsal, static_cast<int>(piece));
  text += queues_text(rehearsal);
  text += "\n" + paragraph("", caution_line());
  return text;
}

}  // namespace repwright::sheets
