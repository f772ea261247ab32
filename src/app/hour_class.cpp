#include "app/hour_class.hpp"

#include <algorithm>
#include <optional>

#include "advice/change_overs.hpp"
#include "advice/consequences.hpp"
#include "advice/cuts.hpp"
#include "app/fit_words.hpp"
#include "app/other_board.hpp"
#include "app/parallel.hpp"
#include "domain/board_search.hpp"

namespace repwright::app {
namespace {

bool is_bar(const domain::FittedItem& item, const domain::Catalogue& catalogue) {
  const domain::Movement* movement = catalogue.find(item.movement);
  return movement != nullptr && item.load &&
         std::ranges::find(movement->equipment, domain::EquipmentId{"barbell"}) != movement->equipment.end();
}

/// The load on a person's bar in each piece, where there is one: kilograms when the piece begins and ends.
struct BarLoad {
  std::optional<base::Mass> first, last;
};
BarLoad bar_load(const domain::FittedPerson& person, const domain::Block& piece,
                 const domain::Catalogue& catalogue) {
  BarLoad load;
  for_each_line(piece, [&](const domain::Item& line) {
    const auto at = static_cast<std::size_t>(line.step.index);
    if (line.step.index < 0 || at >= person.items.size() || !is_bar(person.items[at], catalogue)) return;
    load.last = person.items[at].load;
    if (!load.first) load.first = load.last;
  });
  return load;
}

/// Before each piece, how many people put another load on a bar that stands from the piece before.
std::vector<int> bars_reloaded(const ClassRequest& request, const ClassRehearsal& rehearsed) {
  const std::vector<timetable::Piece>& pieces = rehearsed.timetable.pieces;
  std::vector<int> reloaded(pieces.size());
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    const domain::Block* before = domain::find_block(request.reading.board, pieces[i - 1].block);
    const domain::Block* now = domain::find_block(request.reading.board, pieces[i].block);
    if (before == nullptr || now == nullptr) continue;
    for (const domain::FittedPerson& person : rehearsed.fitted.people) {
      const auto was = bar_load(person, *before, request.gym.catalogue).last;
      const auto is = bar_load(person, *now, request.gym.catalogue).first;
      if (was && is && *was != *is) ++reloaded[i];
    }
  }
  return reloaded;
}

}  // namespace

base::Result<domain::HourPlan> hour_class(const ClassRequest& request, const Gathered& gathered,
                                          const ClassRehearsal& rehearsed) {
  const auto trial = [&](const domain::Board& board, int runs) -> base::Result<domain::Consequences> {
    const board::Reading reading = reading_of(board);
    const auto tried = rehearse_class(with_board(request, reading, request.gym, runs), gathered);
    if (!tried) return tl::unexpected(tried.error());
    return advice::consequences_of(tried->rehearsal);
  };
  auto cuts = advice::cuts_in_order(request.reading.board, trial, {}, in_parallel(request.threads));
  if (!cuts) return tl::unexpected(cuts.error());
  domain::HourPlan plan;
  for (advice::OrderedCut& cut : *cuts) plan.cuts.push_back(std::move(cut.told));
  std::vector<std::string> names;
  names.reserve(rehearsed.timetable.pieces.size());
  for (const timetable::Piece& piece : rehearsed.timetable.pieces) names.push_back(piece.name);
  plan.changes = advice::change_overs({.needs = rehearsed.kit,
                                       .pieces = names,
                                       .bars_reloaded = bars_reloaded(request, rehearsed),
                                       .catalogue = request.gym.catalogue});
  return plan;
}

}  // namespace repwright::app
