#include "advice/change_overs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace repwright::advice {
namespace {

using domain::ChangeOver;
using rehearsal::KitNeed;

constexpr double fetch_s = 35;  // one person; and for everybody who goes to the same shelf
constexpr double fetch_each_s = 4;
constexpr double build_s = 70;
constexpr double build_each_s = 10;
constexpr double reload_s = 55;

/// Kind, kilograms, metres: what tells one lot on the shelf from another.
using Lot = std::tuple<domain::EquipmentId, double, double>;
struct Count {
  int lying = 0;  // as many as the hall has, at most
  int short_by = 0;
};
using Floor = std::map<Lot, Count>;

Floor floor_of(const std::vector<KitNeed>& needs, int piece) {
  Floor floor;
  for (const KitNeed& need : needs) {
    if (need.piece != piece) continue;
    const Lot lot{need.equipment, need.mass.value_or(base::Mass{}).si(),
                  need.height.value_or(base::Length{}).si()};
    floor[lot] = {std::min(need.needed, need.available), std::max(0, need.needed - need.available)};
  }
  return floor;
}

std::string name_of(const Lot& lot, const domain::Catalogue& catalogue) {
  const auto& [id, kilograms, metres] = lot;
  const domain::Equipment* equipment = catalogue.find(id);
  std::string name = equipment != nullptr ? equipment->name : id.text;
  if (kilograms > 0) name += fmt::format(" {:g} kg", kilograms);
  if (metres > 0) name += fmt::format(" {:.0f} cm", 100 * metres);
  return name;
}

bool built(const Lot& lot) {
  return std::get<0>(lot).text == "barbell";
}

void add_seconds(ChangeOver& change, const Floor& before, const Floor& after) {
  int fetched = 0, bars = 0;
  const auto count = [&](const Floor& from, const Floor& to, bool building) {
    for (const auto& [lot, own] : to) {
      const auto was = from.find(lot);
      const int more = own.lying - (was == from.end() ? 0 : was->second.lying);
      if (more <= 0) continue;
      if (!built(lot)) fetched = std::max(fetched, more);
      if (built(lot) && building) bars += more;
    }
  };
  count(before, after, true);
  count(after, before, false);
  if (fetched > 0) change.seconds += fetch_s + fetch_each_s * fetched;
  if (bars > 0)
    change.seconds += build_s + build_each_s * bars;
  else if (change.bars_reloaded > 0)
    change.seconds += reload_s;
}

}  // namespace

std::vector<ChangeOver> change_overs(const ChangeTask& task) {
  std::vector<ChangeOver> changes;
  Floor lying;
  for (std::size_t piece = 0; piece < task.pieces.size(); ++piece) {
    const Floor next = floor_of(task.needs, static_cast<int>(piece));
    ChangeOver& change = changes.emplace_back();
    change.from = piece == 0 ? "" : task.pieces[piece - 1];
    change.to = task.pieces[piece];
    change.bars_reloaded = piece == 0 ? 0 : task.bars_reloaded[piece];
    Floor lots = lying;
    lots.insert(next.begin(), next.end());
    for (const auto& [lot, either] : lots) {
      const auto was = lying.find(lot);
      const auto is = next.find(lot);
      const int here = was == lying.end() ? 0 : was->second.lying;
      const int wanted = is == next.end() ? 0 : is->second.lying;
      change.kit.push_back({.name = name_of(lot, task.catalogue),
                            .stays = std::min(here, wanted),
                            .fetched = std::max(0, wanted - here),
                            .put_away = std::max(0, here - wanted),
                            .short_by = is == next.end() ? 0 : is->second.short_by});
    }
    add_seconds(change, lying, next);
    lying = next;
  }
  return changes;
}

}  // namespace repwright::advice
