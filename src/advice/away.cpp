#include "advice/away.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

#include "advice/warm_up.hpp"
#include "rehearsal/amounts.hpp"

namespace repwright::advice {
namespace {

using domain::Movement;

/// Free floor on which a lunge or a crawl can go there and back, as one lane of ten metres.
constexpr base::Area lane = 20 * base::metre * base::metre;

template <class T>
long in_common(const std::vector<T>& a, const std::vector<T>& b) {
  return std::ranges::count_if(a, [&](const T& one) { return std::ranges::find(b, one) != b.end(); });
}

bool shares(const Movement& a, const std::string& pattern) {
  return std::ranges::find(a.patterns, pattern) != a.patterns.end();
}

bool there(const domain::EquipmentId& id, const AwayPlace& place, const domain::Catalogue& catalogue) {
  if (place.kit.contains(id) || id.text == "mat" || id.text == "wall" || id.text == "post") return true;
  const domain::Equipment* equipment = catalogue.find(id);
  return equipment != nullptr && equipment->kind == "home";
}

bool at_hand(const domain::EquipmentId& id, const Movement& movement, const AwayPlace& place,
             const domain::Catalogue& catalogue) {
  // To lean on in a row a chair is as good as a box; to step or jump on it is not.
  const bool leans = id.text == "box" && !movement.patterns.empty() && movement.patterns.front() == "pull";
  return leans || there(id, place, catalogue);
}

bool enough_room(const Movement& movement, const AwayPlace& place) {
  if (movement.category == "run" || movement.category == "carry") return place.outside;
  const bool goes_somewhere =
      movement.category != "ergometer" && movement.default_unit == domain::Unit::Metres;
  if (goes_somewhere) return place.outside || place.room >= lane;
  return movement.space <= place.room;
}

/// Whether the form asks nothing of the body that the movement does not, but to hold on to something.
bool asks_no_more(const Movement& form, const Movement& than) {
  return std::ranges::all_of(form.flags, [&](const std::string& flag) {
    return flag == "grip" || std::ranges::find(than.flags, flag) != than.flags.end();
  });
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
  /// What the kit that is there gives for the same first pattern, the most alike first.
  void add_with_kit(const Movement& of) {
    std::vector<const Movement*> with;
    for (const Movement& other : catalogue_.movements) {
      const bool uses = std::ranges::any_of(
          other.equipment, [&](const domain::EquipmentId& id) { return place_.kit.contains(id); });
      const bool alike =
          !of.patterns.empty() && !other.patterns.empty() && other.patterns.front() == of.patterns.front();
      if (uses && alike && asks_no_more(other, of)) with.push_back(&other);
    }
    std::ranges::stable_sort(with, {}, [&](const Movement* other) {
      const long same = in_common(of.patterns, other->patterns);
      return std::pair(-same, static_cast<long>(other->patterns.size()) - same);
    });
    for (const Movement* other : with) add(other);
  }
  /// What the catalogue says to do instead with those limits.
  void add_swaps(const Movement& of) {
    for (const domain::Limit& limit : limits_)
      if (const auto swap = of.swap_for.find(limit.limit); swap != of.swap_for.end())
        add(catalogue_.find(swap->second));
  }
  /// Without kit, of whatever pattern: what has no easier version is easy enough for everybody and goes
  /// first, then what lands softer, then what works more of the same muscles.
  void add_others(const Movement& of) {
    std::vector<const Movement*> others;
    for (const Movement& other : catalogue_.movements)
      if (other.kit_free && !other.patterns.empty()) others.push_back(&other);
    const auto both = [](const Movement& one) {
      std::vector<std::string> muscles = one.primary_muscles;
      muscles.insert(muscles.end(), one.secondary_muscles.begin(), one.secondary_muscles.end());
      return muscles;
    };
    const std::vector<std::string> worked = both(of);
    std::ranges::stable_sort(others, {}, [&](const Movement* other) {
      return std::tuple(!other->easier.empty(), other->impact, -in_common(worked, both(*other)));
    });
    for (const Movement* other : others) add(other);
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
  const bool kit = std::ranges::all_of(movement.equipment, [&](const domain::EquipmentId& id) {
    return at_hand(id, movement, place, catalogue);
  });
  const bool allowed = std::ranges::none_of(
      limits, [&](const domain::Limit& limit) { return domain::forbidden(movement, limit.limit); });
  return kit && allowed && enough_room(movement, place) &&
         (!place.quiet || movement.impact == domain::Impact::None);
}

std::vector<const Movement*> away_forms(const Movement& written, const AwayPlace& place,
                                        const domain::Catalogue& catalogue,
                                        const std::vector<domain::Limit>& limits) {
  Forms forms(place, catalogue, limits);
  forms.add(&written);
  forms.add_with_kit(written);
  forms.add_swaps(written);
  forms.add_home(written, 2);
  for (const std::string& pattern : written.patterns) forms.add_alike(written, pattern);
  return forms.take();
}

std::vector<const Movement*> away_others(const Movement& written, const AwayPlace& place,
                                         const domain::Catalogue& catalogue,
                                         const std::vector<domain::Limit>& limits) {
  Forms forms(place, catalogue, limits);
  forms.add_others(written);
  return forms.take();
}

std::vector<domain::Drill> away_drills(const domain::Catalogue& catalogue, const AwayPlace& place,
                                       const std::vector<domain::Limit>& limits) {
  std::vector<domain::Drill> usable = catalogue.drills;
  std::erase_if(usable, [&](const domain::Drill& drill) {
    const bool kit = std::ranges::all_of(drill.equipment, [&](const std::string& id) {
      return there(domain::EquipmentId{id}, place, catalogue) || (id == "course" && place.outside);
    });
    const bool lands = std::ranges::find(drill.flags, "jump") != drill.flags.end();
    return !kit || limit_against(drill, limits) != nullptr || drill.phase == "recover" ||
           drill.space > place.room || (place.quiet && lands);
  });
  return usable;
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
