#include "rehearsal/findings_intent.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "domain/board_search.hpp"
#include "rehearsal/findings.hpp"
#include "rehearsal/intent_window.hpp"

namespace repwright::rehearsal {
namespace {

using domain::Block;
using domain::FindingSeverity;
using domain::FitWindow;

constexpr double a_third = 1.0 / 3;  // of the class

/// Of whom the middle run misses the window, the farthest first.
struct Missing {
  Seen who;
  double value = 0;
  double by = 0;
};
std::vector<Missing> missing(const domain::Rehearsal& rehearsal, std::size_t piece, const FitWindow& window,
                             const Block& block) {
  std::vector<Missing> all;
  for (const Seen& one : outcomes_of(rehearsal, piece)) {
    if (!measures(window, *one.outcome)) continue;
    const double value = middle_of(*one.outcome, window, block);
    const double by = miss(window, value);
    if (by > clearly_off) all.push_back({one, value, by});
  }
  std::ranges::stable_sort(all, std::ranges::greater{}, &Missing::by);
  return all;
}

}  // namespace

void find_missed_intents(const IntentRequest& request, std::vector<domain::Finding>& found) {
  const domain::Rehearsal& rehearsal = request.rehearsal;
  for (std::size_t piece = 0; piece < rehearsal.piece_names.size(); ++piece) {
    const Block* block = domain::find_block(request.board, request.timetable.pieces[piece].block);
    const auto window = block != nullptr ? intended(*block) : std::nullopt;
    if (!window) continue;
    const std::vector<Missing> all = missing(rehearsal, piece, *window, *block);
    if (all.empty()) continue;
    std::vector<std::string> names;
    domain::Finding& finding = found.emplace_back();
    finding.kind = domain::FindingKind::MissesIntent;
    for (const Missing& one : all) {
      names.push_back(fmt::format("{} ({})", one.who.person->name, value_words(*window, one.value)));
      finding.people.push_back(one.who.person->person);
    }
    const auto people = static_cast<double>(rehearsal.people.size());
    const bool many = static_cast<double>(all.size()) > a_third * people;
    finding.severity = many ? FindingSeverity::Warning : FindingSeverity::Note;
    finding.text =
        fmt::format("{} is meant to be {}, and {} of {} miss that: {}.", rehearsal.piece_names[piece],
                    window_words(*window), all.size(), rehearsal.people.size(), some_names(names));
  }
}

}  // namespace repwright::rehearsal
