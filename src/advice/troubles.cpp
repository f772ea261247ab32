#include "advice/troubles.hpp"

#include <algorithm>
#include <optional>

#include "advice/consequences.hpp"
#include "rehearsal/intent_window.hpp"

namespace repwright::advice {
namespace {

constexpr double queue_s = 5;  // mean wait at a place below which nobody speaks of a queue
constexpr double share = 0.1;  // of runs over the class's end, of people stopped by a cap or off the intent

/// Counts people whose middle run is on either side of what a piece intends.
struct Sides {
  int more = 0;
  int less = 0;

  void add(const domain::PieceOutcome& outcome, const domain::FitWindow& window, const domain::Block& block) {
    if (!rehearsal::measures(window, outcome)) return;
    const double middle = rehearsal::middle_of(outcome, window, block);
    if (rehearsal::miss(window, middle) <= rehearsal::clearly_off) return;
    const bool below = middle < window.min;
    // Few rounds and little time to spare come from too much work, a short time from too little.
    (below == (window.measure == domain::FitMeasure::Seconds) ? less : more) += 1;
  }
};

PieceTrouble trouble_of(const domain::Rehearsal& rehearsal, std::size_t at, const domain::Block* block) {
  const auto window = block != nullptr ? rehearsal::intended(*block) : std::nullopt;
  double capped = 0;
  int people = 0;
  Sides sides;
  for (const domain::PersonOutcome& person : rehearsal.people) {
    if (at >= person.pieces.size()) continue;
    ++people;
    capped += person.pieces[at].capped;
    if (window) sides.add(person.pieces[at], *window, *block);
  }
  const double few = share * people;
  return {.capped = capped > few, .too_much = sides.more > few, .too_little = sides.less > few};
}

}  // namespace

bool Troubles::needs_crowded_place(const domain::Movement& movement) const {
  return std::ranges::any_of(movement.equipment, [&](const auto& place) {
    return std::ranges::find(crowded, place) != crowded.end();
  });
}

Troubles troubles_of(const domain::Rehearsal& rehearsal, const domain::Board& board,
                     const timetable::Timetable& timetable, const domain::Catalogue& catalogue) {
  Troubles troubles;
  for (const domain::PlaceUse& use : rehearsal.places)
    if (use.wait_mean_s >= queue_s) troubles.crowded.push_back(use.place);
  troubles.crowded_course = std::ranges::any_of(
      troubles.crowded, [&](const auto& place) { return catalogue.find(place) == nullptr; });
  troubles.class_over = rehearsal.timetable.over_share > share;
  const std::vector<const domain::Block*> blocks = piece_blocks(board, timetable);
  for (std::size_t at = 0; at < blocks.size(); ++at)
    troubles.pieces.push_back(trouble_of(rehearsal, at, blocks[at]));
  return troubles;
}

}  // namespace repwright::advice
