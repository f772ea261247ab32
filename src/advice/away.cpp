#include "advice/away.hpp"

#include <algorithm>

#include "rehearsal/amounts.hpp"

namespace repwright::advice {
namespace {

using domain::Movement;

bool shares(const Movement& a, const std::string& pattern) {
  return std::ranges::find(a.patterns, pattern) != a.patterns.end();
}

bool at_hand(const domain::EquipmentId& id, const AwayPlace& place, const domain::Catalogue& catalogue) {
  if (place.kit.contains(id) || id.text == "mat" || id.text == "wall" || id.text == "post") return true;
  const domain::Equipment* equipment = catalogue.find(id);
  return equipment != nullptr && equipment->kind == "home";
}

class Forms {
 public:
  Forms(const AwayPlace& place, const domain::Catalogue& catalogue, const std::vector<domain::Limit>& limits)
      : place_(place), catalogue_(catalogue), limits_(limits) {}

  void add(const Movement* movement) {
    if (movement == nullptr || std::ranges::find(forms_, movement) != forms_.end()) return;
    if (possible(*movement, place_, catalogue_, limits_)) forms_.push_back(movement);
  }
  /// The catalogue's forms for home, and the forms of what is not possible among them.
  void add_home(const Movement& of, int deep) {
    for (const domain::HomeVersion& home : of.home) {
      const Movement* form = catalogue_.find(home.movement);
      add(form);
      if (form != nullptr && deep > 0) add_home(*form, deep - 1);
    }
  }
  void add_alike(const Movement& of, const std::string& pattern) {
    for (const Movement& other : catalogue_.movements)
      if (other.kit_free && !other.patterns.empty() && other.patterns.front() == pattern) add(&other);
    for (const Movement& other : catalogue_.movements)
      if (&other != &of && shares(other, pattern)) add(&other);
  }
  std::vector<const Movement*> take() { return std::move(forms_); }

 private:
  const AwayPlace& place_;
  const domain::Catalogue& catalogue_;
  const std::vector<domain::Limit>& limits_;
  std::vector<const Movement*> forms_;
};

}  // namespace

bool possible(const Movement& movement, const AwayPlace& place, const domain::Catalogue& catalogue,
              const std::vector<domain::Limit>& limits) {
  const bool kit = std::ranges::all_of(
      movement.equipment, [&](const domain::EquipmentId& id) { return at_hand(id, place, catalogue); });
  const bool allowed = std::ranges::none_of(
      limits, [&](const domain::Limit& limit) { return domain::forbidden(movement, limit.limit); });
  const bool ground = movement.category == "run" || movement.category == "carry";
  const bool room = ground ? place.outside : movement.space <= place.room;
  return kit && allowed && room && (!place.quiet || movement.impact == domain::Impact::None);
}

std::vector<const Movement*> away_forms(const Movement& written, const AwayPlace& place,
                                        const domain::Catalogue& catalogue,
                                        const std::vector<domain::Limit>& limits) {
  Forms forms(place, catalogue, limits);
  forms.add(&written);
  forms.add_home(written, 2);
  for (const std::string& pattern : written.patterns) forms.add_alike(written, pattern);
  return forms.take();
}

domain::Amount scaled(const domain::Item& item, double factor) {
  const double step = item.unit == domain::Unit::Metres ? 10 : item.unit == domain::Unit::Seconds ? 5 : 1;
  return rehearsal::times(item.amount, factor, step);
}

domain::Item as_form(domain::Item item, const Movement& other, double factor) {
  const bool same = item.movement == other.id;
  item.movement = other.id;
  item.scale.reset();
  item.second_station.reset();
  item.share.reset();
  item.mode.reset();
  item.gate.reset();
  item.personal_version = false;
  if (same) return item;
  item.unit = other.default_unit;
  item.amount = scaled(item, factor);
  item.loads.reset();
  item.load_share.reset();
  item.load_step.reset();
  item.heights.clear();
  item.implements = 1;
  item.each_side = false;
  item.pace.clear();
  return item;
}

}  // namespace repwright::advice
