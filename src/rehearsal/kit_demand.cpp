#include "rehearsal/kit_demand.hpp"
#include "domain/board_search.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>
#include <tuple>

#include "rehearsal/board_items.hpp"
#include "rehearsal/kit_pieces.hpp"

namespace repwright::rehearsal {

namespace {

using domain::Block;
using domain::BlockKind;
using domain::FittedItem;

/// A kind and size of kit: equipment id, grams, millimetres (-1: any size will do).
using KitSize = std::tuple<domain::EquipmentId, long, long>;

bool sized_by_mass(const domain::EquipmentId& id) {
  return id.text == "kettlebell" || id.text == "dumbbell" || id.text == "med-ball" || id.text == "sandbag";
}

KitSize size_of(const domain::EquipmentId& id, const FittedItem& line) {
  if (sized_by_mass(id) && line.load) return {id, std::lround(line.load->si() * 1000), -1};
  if (id.text == "box" && line.height) return {id, -1, std::lround(line.height->si() * 1000)};
  return {id, -1, -1};
}

bool matches(const domain::KitLot& lot, const KitSize& size) {
  const auto& [id, grams, millimetres] = size;
  if (lot.equipment != id) return false;
  if (grams >= 0 && lot.mass && std::abs(std::lround(lot.mass->si() * 1000) - grams) > 50) return false;
  return millimetres < 0 || !lot.height || std::abs(std::lround(lot.height->si() * 1000) - millimetres) <= 5;
}

std::optional<int> lots_of(const domain::Hall& hall, const KitSize& size) {
  bool listed = false;
  int count = 0;
  for (const domain::KitLot& lot : hall.kit) {
    listed = listed || lot.equipment == std::get<0>(size);
    if (matches(lot, size)) count += lot.count;
  }
  return listed && !hall.unlimited ? std::optional(count) : std::nullopt;
}

/// How many people share one piece of kit because they never use it at once.
int sharing(const Block& piece, int heats, const domain::Item& item) {
  if (piece.kind == BlockKind::Circuit) return std::max<int>(1, static_cast<int>(piece.slots.size()));
  const bool turns = piece.kind == BlockKind::Relay || piece.work_mode.has_value() ||
                     item.mode == domain::PartnerMode::OneWorks;
  const int team = turns && !piece.team_sizes.empty() ? piece.team_sizes.front() : 1;
  return std::max(1, heats * team);
}

struct Use {
  double pieces = 0;  // of kit, before rounding up
  domain::StepId step;
};

class PieceDemand {
 public:
  PieceDemand(const WriteRequest& request, const Block& block, int heats)
      : request_(request), block_(block), heats_(heats) {}

  void add(const domain::Item& item) {
    for (std::size_t person = 0; person < request_.fitted.people.size(); ++person) add(item, person);
  }
  std::map<KitSize, Use> sum() const {
    std::map<KitSize, Use> total;
    for (const auto& [key, use] : uses_) {
      Use& all = total.try_emplace(key.second, Use{0, use.step}).first->second;
      all.pieces += use.pieces;
      all.step = std::min(all.step, use.step);
    }
    return total;
  }

 private:
  /// A person who needs the same thing on two lines keeps it.
  void add(const domain::Item& item, std::size_t person) {
    const FittedItem& line = request_.fitted.people[person].items[static_cast<std::size_t>(item.step.index)];
    const domain::Movement* movement = request_.catalogue.find(line.movement);
    if (!movement) return;
    for (const domain::EquipmentId& id : movement->equipment) {
      const domain::Equipment* equipment = request_.catalogue.find(id);
      if (!equipment || equipment->kind != "loose" || id.text == "plates") continue;
      const KitSize size = size_of(id, line);
      const int pieces = std::get<1>(size) >= 0 ? line.implements : 1;
      const double share = static_cast<double>(pieces) / sharing(block_, heats_, item) /
                           std::max(1, equipment->people_per_unit);
      Use& use = uses_.try_emplace({person, size}, Use{0, item.step}).first->second;
      use.pieces = std::max(use.pieces, share);
    }
  }

  const WriteRequest& request_;
  const Block& block_;
  int heats_;
  std::map<std::pair<std::size_t, KitSize>, Use> uses_;
};

/// Whether the line stands somewhere in the block.
bool inside(const Block& block, const Block* holder) {
  return &block == holder ||
         std::ranges::any_of(block.children, [&](const Block& child) { return inside(child, holder); });
}

}  // namespace

std::vector<KitPieces> kit_pieces(const WriteRequest& request) {
  std::vector<KitPieces> needs;
  const std::vector<ItemAt> lines = items_by_step(request.fitted.board);
  for (std::size_t i = 0; i < request.timetable.pieces.size(); ++i) {
    const timetable::Piece& piece = request.timetable.pieces[i];
    const Block* block = domain::find_block(request.fitted.board, piece.block);
    if (!block) continue;
    PieceDemand demand(request, *block, piece.heats);
    for (const ItemAt& line : lines)
      if (line.item && inside(*block, line.block)) demand.add(*line.item);
    for (const auto& [size, use] : demand.sum()) {
      const std::optional<int> available = lots_of(request.hall, size);
      if (!available) continue;
      KitNeed need;
      need.piece = static_cast<int>(i);
      need.step = use.step;
      need.equipment = std::get<0>(size);
      if (std::get<1>(size) >= 0)
        need.mass = base::Mass::from_si(static_cast<double>(std::get<1>(size)) / 1000);
      if (std::get<2>(size) >= 0)
        need.height = base::Length::from_si(static_cast<double>(std::get<2>(size)) / 1000);
      need.needed = static_cast<int>(std::ceil(use.pieces - 1e-9));
      need.available = *available;
      needs.push_back({need, use.pieces});
    }
  }
  return needs;
}

std::vector<KitNeed> kit_demand(const WriteRequest& request) {
  std::vector<KitNeed> needs;
  for (const KitPieces& one : kit_pieces(request)) needs.push_back(one.need);
  return needs;
}

}  // namespace repwright::rehearsal
