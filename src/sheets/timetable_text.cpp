#include "sheets/timetable_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheets/clock.hpp"
#include "sheets/page.hpp"
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

namespace {

std::string share_text(double share) {
  const double of_100 = std::round(100 * share);
  return of_100 >= 1 ? fmt::format("too long in {:.0f} of 100 runs", of_100)
                     : "too long in fewer than 1 of 100 runs";
}

std::string verdict(const domain::ClassOutcome& hour) {
  std::string words = fmt::format("Likely over at {}, nine times in ten by {}", clock_text(hour.p50_s),
                                  clock_text(hour.p90_s));
  if (!hour.planned_s) return words + ".";
  const double slack = *hour.planned_s - hour.p90_s;
  words += fmt::format("; the class has {}, {} {}", clock_text(*hour.planned_s), clock_text(std::abs(slack)),
                       slack >= 0 ? "to spare" : "too few");
  return words + (hour.over_share > 0 ? "; " + share_text(hour.over_share) : "") + ".";
}

}  // namespace

std::string hour_text(const domain::ClassOutcome& hour) {
  const bool open = std::ranges::any_of(
      hour.boxes, [](const domain::BoxOutcome& box) { return !box.planned_s.has_value(); });
  Table table{{{"from", Align::Right}, {"to", Align::Right}}, {}};
  if (open) table.columns.push_back({"9 in 10 by", Align::Right});
  table.columns.push_back({"what", Align::Left});
  for (const domain::BoxOutcome& box : hour.boxes) {
    auto& row = table.rows.emplace_back();
    row = {clock_text(box.start_p50_s), clock_text(box.end_p50_s)};
    if (open) row.push_back(box.planned_s ? "" : clock_text(box.end_p90_s));
    row.push_back(box.name);
  }
  return paragraph("  ", verdict(hour)) + table_text(table, 2);
}

}  // namespace repwright::sheets
