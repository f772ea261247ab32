#include "advice/queue_edits.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <utility>

#include "advice/amount_edits.hpp"
#include "advice/edit_parts.hpp"
#include "domain/board_search.hpp"
#include "domain/proposals.hpp"
#include "domain/spoken.hpp"

namespace repwright::advice {
namespace {

using domain::Block;
using domain::BlockKind;
using domain::Edit;
using domain::Item;
using domain::Movement;
using domain::RepairKind;

constexpr int fewest_for_heats = 6;  // people

/// A private clock or one that all share; not work and rest by the clock, where nobody chooses the start.
bool goes_round(const timetable::Piece& piece) {
  return piece.clock == timetable::ClockKind::Up || piece.clock == timetable::ClockKind::Down;
}

class QueueEdits {
 public:
  QueueEdits(const EditRequest& request, const Troubles& troubles, const Block& block)
      : request_(request), troubles_(troubles), block_(block) {}

  std::vector<Edit> all(const timetable::Piece& piece) {
    const std::vector<Lines> parts = lines_of(block_);
    if (goes_round(piece)) {
      for (const Lines& part : parts) {
        if (part.slot) continue;
        other_starts(*part.items);
        swaps(part);
      }
      if (piece.clock == timetable::ClockKind::Up) starts_in_turn();
      heats(piece);
    }
    // One list in every interval: the clock says when, and everybody where to begin.
    if (block_.kind == BlockKind::Every && block_.slots.size() == 1) other_starts(block_.slots.front());
    for (const Lines& part : parts)
      for (const Item& item : *part.items) of_item(item);
    return std::move(edits_);
  }

 private:
  void of_item(const Item& item) {
    if (troubles_.crowded_course && item.unit == domain::Unit::Metres) {
      std::ranges::move(shorter_runs(request_, block_, item), std::back_inserter(edits_));
      second_on_a_machine(item);
    }
    const Movement* movement = known(item);
    if (movement == nullptr || !troubles_.needs_crowded_place(*movement)) return;
    second_station(item, *movement);
    fewer_reps(item, *movement);
  }

  void other_starts(const std::vector<Item>& items) {
    if (block_.odd_start) return;
    for (std::size_t i = 1; i < items.size(); ++i) {
      const Movement* movement = known(items[i]);
      if (movement == nullptr || items[i].movement == items.front().movement) continue;
      Edit edit = change(RepairKind::OddStart, {items[i].step}, 1,
                         "every second person starts with the " + domain::spoken_many(*movement));
      domain::find_block(edit.board, block_.id)->odd_start = movement->id;
      edits_.push_back(std::move(edit));
    }
  }

  void swaps(const Lines& part) {
    const std::vector<Item>& items = *part.items;
    for (std::size_t i = 0; i + 1 < items.size(); ++i) {
      const Movement* first = known(items[i]);
      const Movement* second = known(items[i + 1]);
      if (first == nullptr || second == nullptr || first == second) continue;
      Edit edit =
          edit_of(request_.board, RepairKind::Swap, part.block, {items[i].step, items[i + 1].step},
                  {1, "the " + domain::spoken_many(*second) + " before the " + domain::spoken_many(*first)});
      std::vector<Item>& changed = domain::find_block(edit.board, part.block)->items;
      std::swap(changed[i], changed[i + 1]);
      std::swap(changed[i].step, changed[i + 1].step);  // steps are numbered as they are read
      edits_.push_back(std::move(edit));
    }
  }

  void starts_in_turn() {
    if (block_.start) return;
    for (const int seconds : {15, 30}) {
      Edit edit =
          change(RepairKind::Stagger, {}, 1, "one starts every " + std::to_string(seconds) + " seconds");
      domain::find_block(edit.board, block_.id)->start = domain::Stagger{seconds * base::second, 1};
      edits_.push_back(std::move(edit));
    }
  }

  void heats(const timetable::Piece& piece) {
    if (piece.heats > 1 || static_cast<int>(request_.before.people.size()) < fewest_for_heats) return;
    Edit edit = change(RepairKind::Heats, {}, 3, "two heats");
    domain::find_block(edit.board, block_.id)->heats = 2;
    edits_.push_back(std::move(edit));
  }

  void second_station(const Item& item, const Movement& movement) {
    if (item.second_station) return;
    for (const domain::MovementId& id : movement.easier) {
      const Movement* other = request_.catalogue.find(id);
      if (other != nullptr && may_stand_beside(*other)) return station(item, *other);
    }
  }

  /// Part of the class covers the distance on a machine of the hall while the course is full.
  void second_on_a_machine(const Item& item) {
    const Movement* run = known(item);
    if (item.second_station || run == nullptr || run->category != "run" || request_.hall.unlimited) return;
    for (const Movement& other : request_.catalogue.movements) {
      const bool machine = other.category == "ergometer" && other.pace.contains(domain::Unit::Metres);
      if (machine && may_stand_beside(other)) station(item, other);
    }
  }

  bool may_stand_beside(const Movement& other) const {
    return !troubles_.needs_crowded_place(other) &&
           domain::may_propose({request_.catalogue, request_.hall, request_.house}, other);
  }

  void station(const Item& item, const Movement& other) {
    Edit edit = change(
        RepairKind::SecondStation, {item.step}, 1.5,
        domain::spoken_many(other) + " as a second station beside the " + domain::spoken_many(*known(item)));
    domain::find_item(edit.board, item.step)->second_station = other.id;
    edits_.push_back(std::move(edit));
  }

  void fewer_reps(const Item& item, const Movement& movement) {
    const double* amount = plain_amount(item);
    if (amount == nullptr || item.unit != domain::Unit::Reps || *amount < 4) return;
    const double fewer = std::floor(*amount * 0.75);
    Edit edit = change(
        RepairKind::FewerReps, {item.step}, 1.5,
        whole_number(fewer) + " " + domain::spoken_many(movement) + " instead of " + whole_number(*amount));
    domain::find_item(edit.board, item.step)->amount = fewer;
    edits_.push_back(std::move(edit));
  }

  Edit change(RepairKind kind, std::vector<domain::StepId> steps, double size, std::string words) const {
    return edit_of(request_.board, kind, block_.id, std::move(steps), {size, std::move(words)});
  }
  const Movement* known(const Item& item) const { return movement_of(item, request_.catalogue); }

  const EditRequest& request_;
  const Troubles& troubles_;
  const Block& block_;
  std::vector<Edit> edits_;
};

}  // namespace

std::vector<Edit> queue_edits(const EditRequest& request, const Troubles& troubles,
                              const timetable::Piece& piece, const Block& block) {
  return QueueEdits(request, troubles, block).all(piece);
}

}  // namespace repwright::advice
