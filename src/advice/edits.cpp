#include "advice/edits.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

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

constexpr double queue_s = 5;         // mean wait at a place below which nobody speaks of a queue
constexpr double late_share = 0.1;    // of runs over the class's end, or of people stopped by a cap
constexpr int fewest_for_heats = 6;   // people
constexpr double shortest_run = 100;  // metres; runs are chalked in steps of half of that

/// Where a list of lines stands: in the piece itself, in one of its parts, or in a slot of its clock.
struct Lines {
  domain::BlockId block;
  const std::vector<Item>* items;
  bool slot = false;
};
void collect(const Block& block, std::vector<Lines>& into) {
  if (!block.items.empty()) into.push_back({block.id, &block.items});
  for (const std::vector<Item>& slot : block.slots) into.push_back({block.id, &slot, true});
  for (const Block& child : block.children)
    if (child.kind != BlockKind::Optional && child.kind != BlockKind::Note) collect(child, into);
}

/// A private clock or one that all share; not work and rest by the clock, where nobody chooses the start.
bool goes_round(const timetable::Piece& piece) {
  return piece.clock == timetable::ClockKind::Up || piece.clock == timetable::ClockKind::Down;
}

class Search {
 public:
  explicit Search(const EditRequest& request) : request_(request) {
    for (const domain::PlaceUse& use : request.before.places)
      if (use.wait_mean_s >= queue_s) crowded_.push_back(use.place);
    crowded_course_ = std::ranges::any_of(crowded_, [&](const domain::EquipmentId& place) {
      return request.catalogue.find(place) == nullptr;  // a route of the hall
    });
    double capped = 0;
    int pieces = 0;
    for (const domain::PersonOutcome& person : request.before.people)
      for (const domain::PieceOutcome& piece : person.pieces) {
        capped += piece.capped;
        ++pieces;
      }
    short_of_time_ =
        request.before.timetable.over_share > late_share || (pieces > 0 && capped / pieces > late_share);
  }

  std::vector<Edit> all() {
    for (const timetable::Piece& piece : request_.timetable.pieces) {
      const Block* block = domain::find_block(request_.board, piece.block);
      if (block == nullptr) continue;
      if (!crowded_.empty()) against_queues(*block, piece);
      if (short_of_time_) against_the_clock(*block);
    }
    return std::move(edits_);
  }

 private:
  void against_queues(const Block& block, const timetable::Piece& piece) {
    std::vector<Lines> parts;
    collect(block, parts);
    if (goes_round(piece)) {
      for (const Lines& part : parts) {
        if (part.slot) continue;
        other_starts(block, *part.items);
        swaps(part);
      }
      if (piece.clock == timetable::ClockKind::Up) starts_in_turn(block);
      heats(block, piece);
    }
    // One list in every interval: the clock says when, and everybody where to begin.
    if (block.kind == BlockKind::Every && block.slots.size() == 1) other_starts(block, block.slots.front());
    for (const Lines& part : parts)
      for (const Item& item : *part.items) {
        if (crowded_course_ && item.unit == domain::Unit::Metres) {
          shorter_run(block, item);
          second_on_a_machine(block, item);
        }
        if (!queued_for(item)) continue;
        second_station(block, item);
        fewer_reps(block, item);
      }
  }

  void against_the_clock(const Block& block) {
    std::vector<Lines> parts;
    collect(block, parts);
    for (const Lines& part : parts)
      for (const Item& item : *part.items) shorter_run(block, item);
    fewer_rounds(block, block);
    for (const Block& child : block.children) fewer_rounds(block, child);
  }

  void other_starts(const Block& block, const std::vector<Item>& items) {
    if (block.odd_start) return;
    for (std::size_t i = 1; i < items.size(); ++i) {
      const Movement* movement = known(items[i]);
      if (movement == nullptr || items[i].movement == items.front().movement) continue;
      Edit edit = change(RepairKind::OddStart, block, {items[i].step}, 1,
                         "every second person starts with the " + domain::spoken_many(*movement));
      domain::find_block(edit.board, block.id)->odd_start = movement->id;
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
          change(RepairKind::Swap, *domain::find_block(request_.board, part.block),
                 {items[i].step, items[i + 1].step}, 1,
                 "the " + domain::spoken_many(*second) + " before the " + domain::spoken_many(*first));
      std::vector<Item>& changed = domain::find_block(edit.board, part.block)->items;
      std::swap(changed[i], changed[i + 1]);
      std::swap(changed[i].step, changed[i + 1].step);  // steps are numbered as they are read
      edits_.push_back(std::move(edit));
    }
  }

  void starts_in_turn(const Block& block) {
    if (block.start) return;
    for (const int seconds : {15, 30}) {
      Edit edit = change(RepairKind::Stagger, block, {}, 1,
                         "one starts every " + std::to_string(seconds) + " seconds");
      domain::find_block(edit.board, block.id)->start = domain::Stagger{seconds * base::second, 1};
      edits_.push_back(std::move(edit));
    }
  }

  void heats(const Block& block, const timetable::Piece& piece) {
    if (piece.heats > 1 || static_cast<int>(request_.before.people.size()) < fewest_for_heats) return;
    Edit edit = change(RepairKind::Heats, block, {}, 3, "two heats");
    domain::find_block(edit.board, block.id)->heats = 2;
    edits_.push_back(std::move(edit));
  }

  void second_station(const Block& block, const Item& item) {
    if (item.second_station) return;
    const Movement& movement = *known(item);
    for (const domain::MovementId& id : movement.easier) {
      const Movement* other = request_.catalogue.find(id);
      if (other == nullptr || needs_crowded_place(*other) ||
          !domain::may_propose({request_.catalogue, request_.hall, request_.house}, *other))
        continue;
      return station(block, item, *other);
    }
  }

  /// Part of the class covers the distance on a machine of the hall while the course is full.
  void second_on_a_machine(const Block& block, const Item& item) {
    const Movement* run = known(item);
    if (item.second_station || run == nullptr || run->category != "run" || request_.hall.unlimited) return;
    for (const Movement& other : request_.catalogue.movements) {
      const bool machine = other.category == "ergometer" && other.pace.contains(domain::Unit::Metres);
      if (!machine || needs_crowded_place(other) ||
          !domain::may_propose({request_.catalogue, request_.hall, request_.house}, other))
        continue;
      station(block, item, other);
    }
  }

  void station(const Block& block, const Item& item, const Movement& other) {
    Edit edit = change(
        RepairKind::SecondStation, block, {item.step}, 1.5,
        domain::spoken_many(other) + " as a second station beside the " + domain::spoken_many(*known(item)));
    domain::find_item(edit.board, item.step)->second_station = other.id;
    edits_.push_back(std::move(edit));
  }

  void fewer_reps(const Block& block, const Item& item) {
    const auto* amount = std::get_if<double>(&item.amount);
    if (amount == nullptr || item.unit != domain::Unit::Reps || *amount < 4) return;
    const double fewer = std::floor(*amount * 0.75);
    Edit edit =
        change(RepairKind::FewerReps, block, {item.step}, 1.5,
               number(fewer) + " " + domain::spoken_many(*known(item)) + " instead of " + number(*amount));
    domain::find_item(edit.board, item.step)->amount = fewer;
    edits_.push_back(std::move(edit));
  }

  void shorter_run(const Block& block, const Item& item) {
    const auto* amount = std::get_if<double>(&item.amount);
    const Movement* movement = known(item);
    if (amount == nullptr || movement == nullptr || item.unit != domain::Unit::Metres) return;
    for (const double share : {0.75, 0.5}) {
      const double step = shortest_run / 2;
      const double metres = std::round(*amount * share / step) * step;
      if (metres < shortest_run || metres >= *amount) continue;
      Edit edit = change(
          RepairKind::ShorterRun, block, {item.step}, 1.5,
          domain::spoken_one(*movement) + " " + number(metres) + " m instead of " + number(*amount) + " m");
      domain::find_item(edit.board, item.step)->amount = metres;
      edits_.push_back(std::move(edit));
    }
  }

  void fewer_rounds(const Block& piece, const Block& block) {
    if (!block.rounds || *block.rounds < 2) return;
    // One or two less, or half of them: what is far too long needs more than a trim.
    const int half = *block.rounds / 2;
    for (int less = 1; less <= half; ++less) {
      if (less > 2 && less < half) continue;
      const int rounds = *block.rounds - less;
      Edit edit = change(RepairKind::FewerRounds, piece, {}, 1 + less,
                         std::to_string(rounds) + (rounds == 1 ? " round" : " rounds") + " instead of " +
                             std::to_string(*block.rounds));
      domain::find_block(edit.board, block.id)->rounds = rounds;
      edits_.push_back(std::move(edit));
    }
  }

  Edit change(RepairKind kind, const Block& block, std::vector<domain::StepId> steps, double size,
              std::string words) const {
    return {.kind = kind,
            .block = block.id,
            .steps = std::move(steps),
            .words = std::move(words),
            .change = size,
            .board = request_.board,
            .text = {}};
  }

  const Movement* known(const Item& item) const {
    return item.movement ? request_.catalogue.find(*item.movement) : nullptr;
  }
  bool needs_crowded_place(const Movement& movement) const {
    return std::ranges::any_of(movement.equipment, [&](const domain::EquipmentId& id) {
      return std::ranges::find(crowded_, id) != crowded_.end();
    });
  }
  bool queued_for(const Item& item) const {
    const Movement* movement = known(item);
    return movement != nullptr && needs_crowded_place(*movement);
  }
  static std::string number(double amount) { return std::to_string(static_cast<long long>(amount)); }

  const EditRequest& request_;
  std::vector<domain::EquipmentId> crowded_;
  bool crowded_course_ = false;
  bool short_of_time_ = false;
  std::vector<Edit> edits_;
};

}  // namespace

std::vector<domain::Edit> edits_of(const EditRequest& request) {
  return Search(request).all();
}

}  // namespace repwright::advice
