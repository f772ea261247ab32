#include "sheets/scores_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <vector>

#include "domain/rehearsal_names.hpp"
#include "sheets/clock.hpp"
#include "sheets/page.hpp"
#include "sheets/table.hpp"

namespace repwright::sheets {
namespace {

using domain::Measure;
using domain::PieceOutcome;
using domain::Rehearsal;

std::string_view measure_words(const PieceOutcome& piece) {
  switch (piece.measure) {
    case Measure::Seconds:
      return "time";
    case Measure::Reps:
      return piece.rounds && piece.reps_per_round >= 1 ? "rounds + reps" : "reps";
    case Measure::Kilograms:
      return "load";
    case Measure::Metres:
      return "metres";
    case Measure::Kilocalories:
      return "display kilocalories";
  }
  return "";
}

/// One person's line of a piece.
struct Seen {
  const domain::PersonOutcome* person = nullptr;
  const PieceOutcome* outcome = nullptr;
};

std::vector<Seen> seen_in(const Rehearsal& rehearsal, int piece) {
  std::vector<Seen> seen;
  for (const domain::PersonOutcome& person : rehearsal.people) {
    const auto at = std::ranges::find(person.pieces, piece, &PieceOutcome::piece);
    if (at != person.pieces.end()) seen.push_back({&person, &*at});
  }
  return seen;
}

/// Per person, when they are back from each run of one piece.
std::map<std::string, std::string> back_texts(const Rehearsal& rehearsal, int piece) {
  constexpr int most_told = 3;
  std::map<std::string, std::string> texts;
  std::map<std::string, int> seen;
  for (const domain::RunnerBack& back : rehearsal.runners) {
    if (back.piece != piece) continue;
    const int count = ++seen[back.person.text];
    std::string& text = texts[back.person.text];
    if (count <= most_told) text += (text.empty() ? "" : " ") + clock_text(back.back_s.p50);
    if (count == most_told + 1) text += " …";
  }
  return texts;
}

bool is_chosen(const Seen& one) {
  return one.outcome->measure == Measure::Kilograms && one.outcome->score.p10 == one.outcome->score.p90;
}

bool is_capped(const Seen& one) {
  return one.outcome->capped >= 0.01;
}

std::string loads_text(const std::vector<Seen>& seen) {
  std::map<double, std::vector<std::string>> people;
  for (const Seen& one : seen) people[one.outcome->score.p50].push_back(one.person->name);
  std::string text;
  for (const auto& [load, names] : people)
    text += paragraph(
        fmt::format("  {:>7}  ", load > 0 ? fmt::format("{:g} kg", std::round(load * 10) / 10) : "no load"),
        fmt::format("{}", fmt::join(names, ", ")));
  return text;
}

bool all_alike(const std::vector<std::vector<std::string>>& rows) {
  return std::ranges::all_of(rows, [&](const std::vector<std::string>& row) {
    return std::equal(row.begin() + 1, row.end(), rows.front().begin() + 1);
  });
}

Table scores_table(const Rehearsal& rehearsal, int piece, const std::vector<Seen>& seen) {
  const auto back = back_texts(rehearsal, piece);
  const bool some_capped = std::ranges::any_of(seen, is_capped);
  Table table{{{"", Align::Left}, {"likely", Align::Right}, {"from", Align::Right}, {"to", Align::Right}},
              {}};
  if (some_capped) table.columns.push_back({"capped", Align::Right});
  if (!back.empty()) table.columns.push_back({"run back at", Align::Left});
  table.columns.insert(table.columns.end(), {{"waits", Align::Right}, {"held by", Align::Left}});
  for (const auto& [person, outcome] : seen) {
    std::vector<std::string> row{person->name, score_text(*outcome, outcome->score.p50),
                                 score_text(*outcome, outcome->score.p10),
                                 score_text(*outcome, outcome->score.p90)};
    if (some_capped)
      row.push_back(is_capped({person, outcome}) ? fmt::format("{:.0f} %", 100 * outcome->capped) : "");
    if (!back.empty()) {
      const auto text = back.find(person->person.text);
      row.push_back(text == back.end() ? "" : text->second);
    }
    row.push_back(outcome->wait_s >= 0.5 ? clock_text(outcome->wait_s) : "");
    row.emplace_back(name_of(outcome->limiter));
    table.rows.push_back(std::move(row));
  }
  if (table.rows.size() > 1 && all_alike(table.rows)) {
    table.rows.resize(1);
    table.rows.front().front() = "everybody";
  }
  return table;
}

}  // namespace

std::string score_text(const PieceOutcome& piece, double value) {
  const double round = piece.rounds ? piece.reps_per_round : 0;
  switch (piece.measure) {
    case Measure::Seconds:
      return clock_text(value);
    case Measure::Reps:
      if (round >= 1) {
        const double full = std::floor(value / round + 1e-9);
        return fmt::format("{:.0f}+{:.0f}", full, std::floor(value - full * round + 1e-9));
      }
      return fmt::format("{:.0f}", value);
    case Measure::Kilograms:
      return value > 0 ? fmt::format("{:.1f} kg", value) : "no load";
    case Measure::Metres:
      return fmt::format("{:.0f} m", value);
    case Measure::Kilocalories:
      return fmt::format("{:.0f} kcal", value);
  }
  return {};
}

std::string scores_text(const Rehearsal& rehearsal, int piece) {
  const std::vector<Seen> seen = seen_in(rehearsal, piece);
  if (seen.empty()) return "";
  const std::string& name = rehearsal.piece_names[static_cast<std::size_t>(piece)];
  if (std::ranges::all_of(seen, is_chosen))
    return heading(name, "load to begin with; how it feels decides") + loads_text(seen);
  return heading(name, fmt::format("{}, eight times in ten between 'from' and 'to'",
                                   measure_words(*seen.back().outcome))) +
         table_text(scores_table(rehearsal, piece, seen), 2);
}

}  // namespace repwright::sheets
