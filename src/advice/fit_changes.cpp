#include "advice/fit_changes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <string_view>

#include "rehearsal/amounts.hpp"

namespace repwright::advice {
namespace {

using domain::Block;
using domain::Item;
using domain::Movement;

// What a change costs beside another: a judgement of ours.
constexpr double other_version = 2;
constexpr double other_load = 1;
constexpr double other_counts = 1;    // and six for all of them
constexpr double other_metres = 1;    // and four for all of them
constexpr double other_rounds = 0.5;  // one number to say, and six for all of them
constexpr double all_counts = 6;
constexpr double all_metres = 4;
constexpr double all_rounds = 6;

constexpr std::array<double, 7> count_factors{0.9, 0.8, 0.7, 0.6, 0.5, 1.15, 1.3};
constexpr std::array<double, 2> metre_factors{0.75, 0.5};
constexpr std::array<int, 3> more_rounds{-1, -2, 1};
constexpr int steps_down = 2;
constexpr double short_run_m = 100;

void for_each_item(const Block& block, const std::function<void(const Item&)>& one) {
  for (const Item& item : block.items) one(item);
  for (const std::vector<Item>& slot : block.slots)
    for (const Item& item : slot) one(item);
  for (const Block& child : block.children)
    if (child.kind != domain::BlockKind::Optional) for_each_item(child, one);
}

void for_each_item(Block& block, const std::function<void(Item&)>& one) {
  for (Item& item : block.items) one(item);
  for (std::vector<Item>& slot : block.slots)
    for (Item& item : slot) one(item);
  for (Block& child : block.children) for_each_item(child, one);
}

/// Kit whose size is a load.
bool loadable(const domain::EquipmentId& id) {
  static constexpr std::array<std::string_view, 5> kit{"barbell", "kettlebell", "dumbbell", "med-ball",
                                                       "sandbag"};
  return std::ranges::find(kit, id.text) != kit.end();
}
std::vector<domain::EquipmentId> load_kit(const Movement& movement) {
  std::vector<domain::EquipmentId> kit;
  std::ranges::copy_if(movement.equipment, std::back_inserter(kit), loadable);
  return kit;
}

void add_versions(const Item& item, const Movement& movement, const domain::Premises& premises,
                  std::vector<FitChange>& into) {
  const auto add = [&](const domain::MovementId& id) {
    const Movement* version = premises.catalogue.find(id);
    if (version == nullptr || !domain::may_propose(premises, *version)) return false;
    FitChange change;
    change.versions[item.step] = id;
    if (std::ranges::find(into, change) == into.end()) into.push_back(std::move(change));
    return true;
  };
  std::vector<domain::MovementId> ring = movement.easier;
  for (int step = 0; step < steps_down; ++step) {
    std::vector<domain::MovementId> next;
    for (const domain::MovementId& id : ring) {
      add(id);
      if (const Movement* easier = premises.catalogue.find(id))
        next.insert(next.end(), easier->easier.begin(), easier->easier.end());
    }
    ring = std::move(next);
  }
  std::ranges::find_if(movement.harder, add);  // the first that may be proposed
}

/// The loads of the shelf around the written ones: two lighter, one heavier.
void add_loads(const Item& item, const Movement& movement, const domain::Hall& hall,
               std::vector<FitChange>& into) {
  if (!item.loads || item.loads->masses.empty()) return;
  const base::Mass most = std::ranges::max(item.loads->masses);
  const base::Mass least = std::ranges::min(item.loads->masses);
  std::vector<base::Mass> shelf;
  for (const domain::KitLot& lot : hall.kit)
    if (lot.mass && lot.count > 0 && std::ranges::count(load_kit(movement), lot.equipment) > 0)
      shelf.push_back(*lot.mass);
  std::ranges::sort(shelf);
  const auto lighter = std::ranges::lower_bound(shelf, least) - shelf.begin();
  const auto heavier = std::ranges::upper_bound(shelf, most) - shelf.begin();
  const auto last = static_cast<std::ptrdiff_t>(shelf.size());
  for (std::ptrdiff_t at = std::max<std::ptrdiff_t>(0, lighter - 2); at < std::min(last, heavier + 1); ++at) {
    FitChange change;
    change.loads[item.step] = shelf[static_cast<std::size_t>(at)];
    into.push_back(std::move(change));
  }
}

domain::Amount fewer_metres(const domain::Amount& amount, double factor) {
  const auto* metres = std::get_if<double>(&amount);
  const double step = metres != nullptr && *metres >= short_run_m ? short_run_m / 2 : 5;
  return rehearsal::times(amount, factor, step);
}

/// Whether the piece is so many rounds for time, all alike, of which somebody may do one less.
bool has_rounds(const Block& piece) {
  const bool listed = std::ranges::any_of(piece.items, [](const Item& item) {
    return std::get_if<domain::PerSet>(&item.amount) != nullptr ||
           std::get_if<domain::Climb>(&item.amount) != nullptr;
  });
  return piece.kind == domain::BlockKind::ForTime && piece.rounds.value_or(1) > 1 && !piece.duration &&
         piece.levels.empty() && piece.children.empty() && !listed;
}

}  // namespace

double size_of(const FitChange& change) {
  double size = other_version * static_cast<double>(change.versions.size()) +
                other_load * static_cast<double>(change.loads.size());
  if (change.counts != 1) size += other_counts + all_counts * std::abs(1 - change.counts);
  if (change.metres != 1) size += other_metres + all_metres * std::abs(1 - change.metres);
  if (change.rounds != 1) size += other_rounds + all_rounds * std::abs(1 - change.rounds);
  return size;
}

std::vector<FitChange> single_changes(const Block& piece, const domain::Premises& premises) {
  std::vector<FitChange> changes(1);
  bool metres = false;
  for_each_item(piece, [&](const Item& item) {
    metres = metres || item.unit == domain::Unit::Metres;
    const Movement* movement = item.movement ? premises.catalogue.find(*item.movement) : nullptr;
    if (movement == nullptr) return;
    add_versions(item, *movement, premises, changes);
    add_loads(item, *movement, premises.hall, changes);
  });
  for (const double factor : count_factors) changes.emplace_back().counts = factor;
  if (metres)
    for (const double factor : metre_factors) changes.emplace_back().metres = factor;
  if (const auto rounds = piece.rounds; rounds && has_rounds(piece))
    for (const int more : more_rounds)
      if (*rounds + more > 0) changes.emplace_back().rounds = static_cast<double>(*rounds + more) / *rounds;
  return changes;
}

std::vector<FitChange> double_changes(const std::vector<FitChange>& singles) {
  std::vector<FitChange> doubles;
  for (std::size_t a = 0; a < singles.size(); ++a)
    for (std::size_t b = a + 1; b < singles.size(); ++b) {
      FitChange both = singles[a];
      const FitChange& other = singles[b];
      both.versions.insert(other.versions.begin(), other.versions.end());
      both.loads.insert(other.loads.begin(), other.loads.end());
      if (other.counts != 1) both.counts = other.counts;
      if (other.metres != 1) both.metres = other.metres;
      if (other.rounds != 1) both.rounds = other.rounds;
      const double apart = size_of(singles[a]) + size_of(other);
      if (size_of(singles[a]) > 0 && size_of(other) > 0 && std::abs(size_of(both) - apart) < 1e-9)
        doubles.push_back(std::move(both));
    }
  return doubles;
}

std::vector<FitChange> changes_beside(const FitChange& own, const std::vector<FitChange>& singles) {
  std::vector<FitChange> beside;
  const auto add = [&](FitChange change) {
    if (change != own && std::ranges::find(beside, change) == beside.end())
      beside.push_back(std::move(change));
  };
  for (const FitChange& single : singles) {
    FitChange change = own;
    for (const auto& [step, version] : single.versions) change.versions[step] = version;
    for (const auto& [step, load] : single.loads) change.loads[step] = load;
    if (single.counts != 1) change.counts = single.counts;
    if (single.metres != 1) change.metres = single.metres;
    if (single.rounds != 1) change.rounds = single.rounds;
    add(std::move(change));
  }
  const auto without = [&](const auto& drop) {
    FitChange change = own;
    drop(change);
    add(std::move(change));
  };
  for (const auto& [step, version] : own.versions)
    without([&](FitChange& change) { change.versions.erase(step); });
  for (const auto& [step, load] : own.loads) without([&](FitChange& change) { change.loads.erase(step); });
  without([](FitChange& change) { change.counts = 1; });
  without([](FitChange& change) { change.metres = 1; });
  without([](FitChange& change) { change.rounds = 1; });
  return beside;
}

Block changed(Block piece, const FitChange& change, const domain::Catalogue& catalogue) {
  if (change.rounds != 1 && piece.rounds)
    piece.rounds = static_cast<int>(std::lround(*piece.rounds * change.rounds));
  for_each_item(piece, [&](Item& item) {
    const Movement* written = item.movement ? catalogue.find(*item.movement) : nullptr;
    if (change.counts != 1 && (item.unit == domain::Unit::Reps || item.unit == domain::Unit::Kilocalories))
      item.amount = rehearsal::times(item.amount, change.counts, 1);
    if (change.metres != 1 && item.unit == domain::Unit::Metres)
      item.amount = fewer_metres(item.amount, change.metres);
    if (const auto load = change.loads.find(item.step); load != change.loads.end())
      item.loads = domain::Loads{{load->second}, false};
    const auto version = change.versions.find(item.step);
    if (version == change.versions.end()) return;
    const Movement* other = catalogue.find(version->second);
    item.movement = version->second;
    item.scale.reset();
    item.second_station.reset();
    item.personal_version = false;
    if (written != nullptr && other != nullptr && load_kit(*written) != load_kit(*other)) {
      item.loads.reset();
      item.load_share.reset();
      item.load_step.reset();
    }
  });
  return piece;
}

}  // namespace repwright::advice
