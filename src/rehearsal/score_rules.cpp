#include "rehearsal/score_rules.hpp"

#include <algorithm>
#include <variant>

namespace repwright::rehearsal {

namespace {

bool open_line(const domain::Item& item) {
  return std::holds_alternative<domain::Max>(item.amount);
}

bool has_open_line(const domain::Block& block) {
  return std::ranges::any_of(block.items, open_line) ||
         std::ranges::any_of(block.slots,
                             [](const auto& slot) { return std::ranges::any_of(slot, open_line); }) ||
         std::ranges::any_of(block.children, has_open_line);
}

}  // namespace

bool is_counted(const domain::Block& piece, const domain::Item& item, domain::Unit unit) {
  using domain::Score;
  using domain::Unit;
  switch (piece.score.value_or(Score::None)) {
    case Score::Kcal:
    case Score::KcalSum:
      return unit == Unit::Kilocalories && (open_line(item) || !has_open_line(piece));
    case Score::Distance:
    case Score::DistanceSum:
      return unit == Unit::Metres && (open_line(item) || !has_open_line(piece));
    case Score::Reps:
    case Score::RepsSum:
    case Score::MinInterval:
    case Score::MaxInterval:
      return open_line(item) || !has_open_line(piece);
    default:  // a kilocalorie counts as one repetition (common practice, no source)
      return unit == Unit::Reps || unit == Unit::Kilocalories;
  }
}

}  // namespace repwright::rehearsal
