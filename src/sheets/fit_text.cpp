#include "sheets/fit_text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sheets/page.hpp"
#include "sheets/rehearsal_text.hpp"
#include "sheets/table.hpp"

namespace repwright::sheets {
namespace {

using domain::PersonFit;
using domain::PieceFit;

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

std::string shares_text(const PieceFit& piece) {
  Table table{{{"", Align::Left},
               {"as chalked", Align::Right},
               {"fitted", Align::Right},
               {"expected", Align::Right},
               {"does", Align::Left}},
              {}};
  for (const PersonFit& person : piece.people)
    table.rows.push_back(
        {person.name, percent(person.inside_before), percent(person.inside_after), person.expects,
         person.does.empty() ? "as written" : fmt::format("{}", fmt::join(person.does, ", "))});
  return table_text(table, 2);
}

std::string steps_text(const PieceFit& piece) {
  std::string text;
  for (const PersonFit& person : piece.people) {
    if (person.easier.empty() && person.harder.empty()) continue;
    std::string words;
    if (!person.easier.empty()) words = "easier: " + person.easier;
    if (!person.harder.empty()) words += (words.empty() ? "harder: " : "; harder: ") + person.harder;
    text += paragraph("  ", person.name + ": " + words, 4);
  }
  return text.empty() ? "" : heading("ONE STEP EITHER WAY", "") + text;
}

std::string remarks_text(const PieceFit& piece) {
  std::string text;
  for (const PersonFit& person : piece.people) {
    if (!person.clash.empty()) text += paragraph("  ", person.name + ": " + person.clash, 4);
    if (!person.question.empty()) text += paragraph("  ", person.name + ": " + person.question, 4);
  }
  for (const std::string& kit : piece.short_of) text += paragraph("  ", kit + " for everybody at once", 4);
  return text.empty() ? "" : heading("TO DECIDE", "") + text;
}

std::string piece_text(const PieceFit& piece) {
  if (!piece.window) return heading(piece.piece, "nothing intended, plain versions");
  return heading(piece.piece, fmt::format("{}: {} of all scores inside as chalked, {} fitted", piece.intent,
                                          percent(piece.inside_before), percent(piece.inside_after))) +
         shares_text(piece) + steps_text(piece) + remarks_text(piece);
}

}  // namespace

std::string fit_text(const domain::FitPlan& plan) {
  std::string text =
      paragraph("", "What each does so that the piece is what it is meant to be; limits are kept.");
  for (const std::string& note : plan.notes) text += paragraph("  ", note, 4);
  for (const PieceFit& piece : plan.pieces) text += piece_text(piece);
  return text + "\n" + paragraph("", caution_line());
}

}  // namespace repwright::sheets
