#include "advice/edit_parts.hpp"

#include <algorithm>
#include <utility>
#include <variant>

namespace repwright::advice {
namespace {

using domain::Block;
using domain::BlockKind;

void collect(const Block& block, std::vector<Lines>& into) {
  if (!block.items.empty()) into.push_back({block.id, &block.items});
  for (const std::vector<domain::Item>& slot : block.slots) into.push_back({block.id, &slot, true});
  for (const Block& child : block.children)
    if (child.kind != BlockKind::Optional && child.kind != BlockKind::Note) collect(child, into);
}

}  // namespace

std::vector<Lines> lines_of(const Block& piece) {
  std::vector<Lines> lines;
  collect(piece, lines);
  return lines;
}

bool has_like_rounds(const Block& block) {
  if (block.rounds.value_or(0) < 1) return false;
  const std::vector<Lines> parts = lines_of(block);
  return std::ranges::none_of(parts, [](const Lines& part) {
    return std::ranges::any_of(*part.items, [](const domain::Item& item) {
      return std::holds_alternative<domain::PerSet>(item.amount) ||
             std::holds_alternative<domain::Climb>(item.amount);
    });
  });
}

const double* plain_amount(const domain::Item& item) {
  return std::get_if<double>(&item.amount);
}

const domain::Movement* movement_of(const domain::Item& item, const domain::Catalogue& catalogue) {
  return item.movement ? catalogue.find(*item.movement) : nullptr;
}

domain::Edit edit_of(const domain::Board& board, domain::RepairKind kind, domain::BlockId piece,
                     std::vector<domain::StepId> steps, Told told) {
  return {.kind = kind,
          .block = piece,
          .steps = std::move(steps),
          .words = std::move(told.words),
          .change = told.size,
          .board = board,
          .text = {}};
}

std::string whole_number(double amount) {
  return std::to_string(static_cast<long long>(amount));
}

}  // namespace repwright::advice
