#include "app/done_pieces.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <vector>

namespace repwright::app {
namespace {

void forget_numbers(std::vector<domain::Item>& items) {
  for (domain::Item& item : items) item.step = {};
}

}  // namespace

std::string versions_done(const domain::FittedPerson& fitted) {
  std::vector<std::string> seen;
  for (const domain::FittedItem& item : fitted.items)
    if (!item.movement.empty() && std::ranges::find(seen, item.movement.text) == seen.end())
      seen.push_back(item.movement.text);
  return fmt::format("{}", fmt::join(seen, " / "));
}

domain::Block work_of(domain::Block piece) {
  piece.id = {};
  piece.title.clear();
  piece.intent.reset();
  forget_numbers(piece.items);
  forget_numbers(piece.penalty);
  forget_numbers(piece.after_fail);
  for (std::vector<domain::Item>& slot : piece.slots) forget_numbers(slot);
  for (domain::Block& child : piece.children) child = work_of(std::move(child));
  if (piece.interrupt) forget_numbers(piece.interrupt->items);
  return piece;
}

}  // namespace repwright::app
