#include "app/load_steps.hpp"

#include <algorithm>

namespace repwright::app {
namespace {

constexpr int a_pair = 2;

double total_of(const domain::FittedItem& item) {
  return item.load ? item.load->si() * item.implements : 0;
}

bool uses(const domain::Movement& movement, const domain::EquipmentId& id) {
  return std::ranges::find(movement.equipment, id) != movement.equipment.end();
}

/// The smallest of which one goes on each side of a bar.
std::optional<double> smallest_pair(const domain::Hall& hall) {
  std::optional<double> smallest;
  for (const domain::KitLot& lot : hall.kit)
    if (lot.equipment.text == "plates" && lot.mass && lot.count >= a_pair)
      smallest = std::min(smallest.value_or(lot.mass->si()), lot.mass->si());
  return smallest;
}

}  // namespace

LoadSteps load_steps(const std::vector<domain::FittedItem>& lines, const domain::Catalogue& catalogue,
                     const domain::Hall& hall) {
  const auto heaviest = std::ranges::max_element(lines, {}, total_of);
  if (heaviest == lines.end()) return {};
  const domain::Movement* movement = catalogue.find(heaviest->movement);
  if (movement == nullptr) return {};
  if (uses(*movement, {"barbell"})) {
    const auto plate = smallest_pair(hall);
    return {.lots = {}, .step = plate ? std::optional(a_pair * *plate) : std::nullopt};
  }
  LoadSteps steps;
  for (const domain::KitLot& lot : hall.kit)
    if (lot.mass && uses(*movement, lot.equipment) && lot.count >= heaviest->implements)
      steps.lots.push_back(lot.mass->si() * heaviest->implements);
  std::ranges::sort(steps.lots);
  const auto twice = std::ranges::unique(steps.lots);
  steps.lots.erase(twice.begin(), twice.end());
  return steps;
}

}  // namespace repwright::app
