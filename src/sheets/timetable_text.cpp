#include "sheets/timetable_text.hpp"

#include <fmt/format.h>

#include "sheets/clock.hpp"
#include "sheets/table.hpp"

namespace repwright::sheets {
namespace {

using timetable::Box;
using timetable::ClockKind;
using timetable::Piece;
using timetable::Timetable;

std::string length_text(const Box& box, const Timetable& timetable) {
  if (box.planned) return clock_text(box.planned->si());
  if (box.piece) {
    const Piece& piece = timetable.pieces[static_cast<std::size_t>(*box.piece)];
    if (piece.cap) return fmt::format("up to {}", clock_text(piece.cap->si()));
  }
  return "as long as it takes";
}

std::string clock_words(const Piece& piece) {
  std::string words;
  switch (piece.clock) {
    case ClockKind::Up:
      words = "counts up";
      break;
    case ClockKind::Down:
      words = "counts down";
      break;
    case ClockKind::Edges:
      words = fmt::format("{} stretches by the clock", piece.phases.size());
      break;
    case ClockKind::Own:
      words = "private clocks";
      break;
  }
  if (piece.heats > 1) words += fmt::format(", {} heats", piece.heats);
  if (piece.stagger)
    words += fmt::format(", {} every {} s", piece.stagger->people, piece.stagger->every.si());
  return words;
}

}  // namespace

std::string timetable_text(const Timetable& timetable) {
  Table table{
      {{"from", Align::Right}, {"what", Align::Left}, {"length", Align::Left}, {"clock", Align::Left}}, {}};
  double at = 0;
  bool known = true;  // lost behind the first box whose length people decide
  for (const Box& box : timetable.boxes) {
    if (box.starts_at) at = box.starts_at->si();
    known = known || box.starts_at.has_value();
    table.rows.push_back(
        {known ? clock_text(at) : "…", box.name, length_text(box, timetable),
         box.piece ? clock_words(timetable.pieces[static_cast<std::size_t>(*box.piece)]) : ""});
    known = known && box.planned.has_value();
    if (known) at += box.planned->si();
  }
  std::string text = table_text(table, 0);
  if (!known) return text;
  text += fmt::format("fixed length {}", clock_text(at));
  if (timetable.class_length) text += fmt::format(" of {}", clock_text(timetable.class_length->si()));
  text += "\n";
  return text;
}

std::string hour_text(const domain::ClassOutcome& hour) {
  std::string verdict = fmt::format("Likely over at {}, nine times in ten by {}", clock_text(hour.p50_s),
                                    clock_text(hour.p90_s));
  if (hour.planned_s) {
    const double slack = *hour.planned_s - hour.p90_s;
    verdict += fmt::format("; the class has {}", clock_text(*hour.planned_s));
    verdict += slack >= 0 ? fmt::format(", {} to spare", clock_text(slack))
                          : fmt::format(", {} too few", clock_text(-slack));
    if (hour.over_share > 0)
      verdict += fmt::format("; too long in {:.0f} of 100 runs", 100 * hour.over_share);
  }
  Table table{{{"from", Align::Right}, {"to", Align::Right}, {"what", Align::Left}, {"", Align::Left}}, {}};
  for (const domain::BoxOutcome& box : hour.boxes)
    table.rows.push_back(
        {clock_text(box.start_p50_s), clock_text(box.end_p50_s), box.name,
         box.planned_s ? "" : fmt::format("by {} nine times in ten", clock_text(box.end_p90_s))});
  return "  " + wrapped(verdict + ".", 100, 2) + "\n" + table_text(table, 2);
}

}  // namespace repwright::sheets
