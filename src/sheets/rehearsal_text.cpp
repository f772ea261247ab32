#include "sheets/rehearsal_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "domain/rehearsal_names.hpp"
#include "sheets/clock.hpp"
#include "sheets/table.hpp"
#include "sheets/timetable_text.hpp"

namespace repwright::sheets {
namespace {

using domain::FindingSeverity;
using domain::Measure;
using domain::PieceOutcome;
using domain::Rehearsal;

constexpr int page_width = 100;

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

std::string heading(std::string_view words, std::string_view rest) {
  return fmt::format("\n{}{}{}\n", words, rest.empty() ? "" : "  ", rest);
}

std::string findings_text(const Rehearsal& rehearsal) {
  if (rehearsal.findings.empty()) return heading("WHAT TO KNOW", "") + "  Nothing stands out.\n";
  std::string text = heading("WHAT TO KNOW", "");
  for (const domain::Finding& finding : rehearsal.findings) {
    const std::string_view mark = finding.severity == FindingSeverity::Problem   ? "!!"
                                  : finding.severity == FindingSeverity::Warning ? "! "
                                                                                 : "- ";
    const std::string where = finding.line > 0 ? fmt::format("line {}, ", finding.line) : "";
    text += fmt::format(
        "  {} {}\n", mark,
        wrapped(fmt::format("{} [{}{}]", finding.text, where, name_of(finding.kind)), page_width - 5, 5));
  }
  return text;
}

/// Per person, when they are back from each run of one piece.
std::map<std::string, std::string> back_texts(const Rehearsal& rehearsal, int piece) {
  std::map<std::string, std::string> texts;
  std::map<std::string, int> seen;
  for (const domain::RunnerBack& back : rehearsal.runners) {
    if (back.piece != piece) continue;
    const int count = ++seen[back.person.text];
    std::string& text = texts[back.person.text];
    if (count <= 3) text += (text.empty() ? "" : " ") + clock_text(back.back_s.p50);
    if (count == 4) text += " …";
  }
  return texts;
}

std::string piece_text(const Rehearsal& rehearsal, int piece) {
  const auto back = back_texts(rehearsal, piece);
  Table table{{{"", Align::Left}, {"likely", Align::Right}, {"from", Align::Right}, {"to", Align::Right}},
              {}};
  if (!back.empty()) table.columns.push_back({"back from the run", Align::Left});
  table.columns.insert(table.columns.end(),
                       {{"waits", Align::Right}, {"held by", Align::Left}, {"", Align::Left}});
  std::string measure;
  for (const domain::PersonOutcome& person : rehearsal.people) {
    const auto at = std::ranges::find(person.pieces, piece, &PieceOutcome::piece);
    if (at == person.pieces.end()) continue;
    measure = measure_words(*at);
    std::vector<std::string> row{person.name, score_text(*at, at->score.p50), score_text(*at, at->score.p10),
                                 score_text(*at, at->score.p90)};
    if (!back.empty()) {
      const auto text = back.find(person.person.text);
      row.push_back(text == back.end() ? "" : text->second);
    }
    row.push_back(at->wait_s >= 0.5 ? clock_text(at->wait_s) : "");
    row.emplace_back(name_of(at->limiter));
    row.push_back(at->capped >= 0.005 ? fmt::format("capped {:.0f} %", 100 * at->capped) : "");
    table.rows.push_back(std::move(row));
  }
  if (table.rows.empty()) return "";
  return heading(rehearsal.piece_names[static_cast<std::size_t>(piece)],
                 fmt::format("{}, eight times in ten between 'from' and 'to'", measure)) +
         table_text(table, 2);
}

/// The queue over the class as one strip, a character for each step of time; the highest bar is the longest
/// queue.
std::string queue_strip(const domain::PlaceUse& place, double until) {
  static constexpr std::array<std::string_view, 9> bars{" ", "▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"};
  constexpr std::size_t cells = 64;
  std::array<double, cells> highest{};
  for (std::size_t i = 0; i < place.queue.size(); ++i) {
    const double begin = place.queue[i].first;
    const double end = i + 1 < place.queue.size() ? place.queue[i + 1].first : until;
    const auto cell = [&](double t) {
      return std::min(cells - 1, static_cast<std::size_t>(std::max(0.0, t / until * cells)));
    };
    for (std::size_t c = cell(begin); c <= cell(std::max(begin, end - 1e-9)); ++c)
      highest[c] = std::max(highest[c], place.queue[i].second);
  }
  const double top = std::max(1.0, *std::ranges::max_element(highest));
  std::string strip;
  for (const double queue : highest)
    strip += bars[queue < 0.05
                      ? 0
                      : std::clamp<std::size_t>(static_cast<std::size_t>(std::ceil(queue / top * 8)), 1, 8)];
  return strip;
}

std::string places_text(const Rehearsal& rehearsal) {
  std::string text;
  const double until = std::max(60.0, rehearsal.timetable.p90_s);
  for (const domain::PlaceUse& place : rehearsal.places) {
    text += fmt::format("  {} × {}: ", place.place.text, place.count);
    if (place.queue_max_mean < 0.05) {
      text += "nobody waits\n";
      continue;
    }
    const auto peak = std::ranges::max_element(place.queue, {}, [](const auto& at) { return at.second; });
    text += fmt::format(
        "a visit waits {:.0f} s in the mean, one in ten {:.0f} s or more; longest queue {:.1f}, at {}\n",
        place.wait_mean_s, place.wait_p90_s, place.queue_max_mean, clock_text(peak->first));
    text += fmt::format("    0:00 |{}| {}\n", queue_strip(place, until), clock_text(until));
  }
  return text.empty() ? text : heading("WHERE THEY QUEUE", "") + text;
}

}  // namespace

std::string caution_line() {
  return "Forecasts are ranges, never promises. Stop and get medical help for chest pain, dizziness, sudden "
         "severe "
         "pain, or dark urine after hard unfamiliar work. In heat: slower, shorter, shade, water, or not at "
         "all. "
         "Screening by the gym's own form; local rules come first; with minors, pregnancy or return after "
         "illness, "
         "licensed professionals decide.";
}

std::string rehearsal_text(const Rehearsal& rehearsal, const RehearsalHead& head) {
  std::string text = head.title.empty() ? "Rehearsal" : head.title;
  if (!head.when.empty()) text += " · " + head.when;
  text += fmt::format(" · {} {} · {} runs, seed {}\n", head.people, head.people == 1 ? "person" : "people",
                      rehearsal.runs, rehearsal.seed);
  for (const std::string& note : rehearsal.notes) text += "  " + wrapped(note, page_width, 2) + "\n";
  text += heading("THE HOUR", "") + hour_text(rehearsal.timetable);
  text += findings_text(rehearsal);
  for (std::size_t piece = 0; piece < rehearsal.piece_names.size(); ++piece)
    text += piece_text(rehearsal, static_cast<int>(piece));
  text += places_text(rehearsal);
  text += "\n" + wrapped(caution_line(), page_width, 0) + "\n";
  return text;
}

}  // namespace repwright::sheets
