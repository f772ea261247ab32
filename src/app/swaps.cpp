#include "app/swaps.hpp"

#include "rehearsal/board_items.hpp"

namespace repwright::app {
namespace {

std::string name_of(const domain::Catalogue& catalogue, const domain::MovementId& id) {
  const domain::Movement* movement = catalogue.find(id);
  return movement != nullptr ? movement->name : id.text;
}

}  // namespace

std::vector<sheets::Swap> swaps_of(const domain::FittedBoard& fitted, const domain::Catalogue& catalogue,
                                   const std::vector<domain::Person>& people) {
  std::vector<sheets::Swap> swaps;
  for (const rehearsal::ItemAt& line : rehearsal::items_by_step(fitted.board)) {
    if (line.item == nullptr || line.block->kind == domain::BlockKind::Optional) continue;
    const std::string written =
        line.item->movement ? name_of(catalogue, *line.item->movement) : line.item->free_text;
    for (std::size_t p = 0; p < people.size(); ++p) {
      const domain::FittedItem& own = fitted.people[p].items[static_cast<std::size_t>(line.item->step.index)];
      if (own.swapped_for.empty()) continue;
      swaps.push_back({.person = people[p].name,
                       .written = written,
                       .version = own.movement.empty() ? "rest" : name_of(catalogue, own.movement),
                       .reason = own.swapped_for});
    }
  }
  return swaps;
}

}  // namespace repwright::app
