#pragma once

#include <string>
#include <utility>
#include <vector>

#include "domain/board.hpp"

/// Boards made by hand, for tests of what comes after reading.
namespace repwright::test {

inline domain::Item item(std::string movement, domain::Amount amount,
                         domain::Unit unit = domain::Unit::Reps) {
  domain::Item made;
  made.movement = domain::MovementId{std::move(movement)};
  made.amount = std::move(amount);
  made.unit = unit;
  return made;
}

inline domain::Block block(domain::BlockKind kind, std::vector<domain::Item> items = {}) {
  domain::Block made;
  made.kind = kind;
  made.items = std::move(items);
  return made;
}

namespace detail {
inline void number_items(std::vector<domain::Item>& items, int& next) {
  for (domain::Item& one : items) one.step.index = next++;
}
inline void number(std::vector<domain::Block>& blocks, int& next_block, int& next_step) {
  for (domain::Block& one : blocks) {
    one.id.index = next_block++;
    number_items(one.items, next_step);
    for (auto& slot : one.slots) number_items(slot, next_step);
    if (one.interrupt) number_items(one.interrupt->items, next_step);
    number_items(one.penalty, next_step);
    number_items(one.after_fail, next_step);
    number(one.children, next_block, next_step);
  }
}
}  // namespace detail

/// The blocks as a board, lines and blocks numbered as a reader would.
inline domain::Board board(std::vector<domain::Block> blocks) {
  domain::Board made;
  made.blocks = std::move(blocks);
  int next_block = 0;
  int next_step = 0;
  detail::number(made.blocks, next_block, next_step);
  return made;
}

inline base::Duration seconds(double s) {
  return base::Duration::from_si(s);
}
inline base::Duration minutes(double m) {
  return base::Duration::from_si(60 * m);
}

}  // namespace repwright::test
