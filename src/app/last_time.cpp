#include "app/last_time.hpp"

#include <algorithm>
#include <limits>
#include <utility>

#include "base/overloaded.hpp"

namespace repwright::app {
namespace {

using domain::ScoreEntry;

constexpr double reps_of_a_round = 10'000;  // more than any round has, so that rounds decide first

double work_done(const domain::RoundsScore& score) {
  return score.rounds * reps_of_a_round + score.reps;
}

/// Smaller is better, among scores of one kind; who was stopped by the cap comes last, by what was done.
double rank_of(const domain::ScoreValue& value) {
  constexpr double behind_all = 1e9;
  return std::visit(base::Overloaded{
                        [](std::monostate) { return std::numeric_limits<double>::infinity(); },
                        [](const domain::TimeScore& score) { return score.time.si(); },
                        [](const domain::RoundsScore& score) { return -work_done(score); },
                        [](const domain::RepsScore& score) { return -score.reps; },
                        [](const domain::LoadScore& score) { return -score.load.si(); },
                        [](const domain::DistanceScore& score) { return -score.distance.si(); },
                        [](const domain::KcalScore& score) { return -score.kcal; },
                        [](const domain::CappedScore& score) {
                          return score.done ? behind_all - work_done(*score.done) : behind_all;
                        },
                    },
                    value);
}

bool tells(const ScoreEntry& entry) {
  return !std::holds_alternative<std::monostate>(entry.value);
}

PieceLastTime summed_up(std::string piece, std::vector<const ScoreEntry*> entries) {
  std::ranges::stable_sort(entries, {}, [](const ScoreEntry* each) { return rank_of(each->value); });
  PieceLastTime told{.piece = std::move(piece),
                     .people = static_cast<int>(entries.size()),
                     .best = entries.front()->text,
                     .middle = entries[(entries.size() - 1) / 2]->text,
                     .last = entries.back()->text,
                     .effort = std::nullopt};
  double efforts = 0;
  int said = 0;
  for (const ScoreEntry* each : entries) {
    if (std::holds_alternative<domain::CappedScore>(each->value)) ++told.capped;
    if (!each->effort) continue;
    efforts += *each->effort;
    ++said;
  }
  if (said > 0) told.effort = efforts / said;
  return told;
}

}  // namespace

std::optional<LastTime> last_time(const std::vector<ScoreEntry>& scores, std::string_view board_id) {
  std::optional<LastTime> last;
  for (const ScoreEntry& entry : scores)
    if (entry.board_id == board_id && tells(entry) && (!last || entry.date > last->date))
      last = LastTime{.date = entry.date, .pieces = {}};
  if (!last) return last;
  std::vector<std::pair<std::string, std::vector<const ScoreEntry*>>> pieces;
  for (const ScoreEntry& entry : scores) {
    if (entry.board_id != board_id || entry.date != last->date || !tells(entry)) continue;
    auto piece = std::ranges::find(pieces, entry.piece, [](const auto& each) { return each.first; });
    if (piece == pieces.end()) piece = pieces.insert(pieces.end(), {entry.piece, {}});
    piece->second.push_back(&entry);
  }
  for (auto& [piece, entries] : pieces) last->pieces.push_back(summed_up(piece, std::move(entries)));
  return last;
}

}  // namespace repwright::app
