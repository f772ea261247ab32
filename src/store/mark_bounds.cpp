#include "store/mark_bounds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "domain/written_values.hpp"

namespace repwright::store {
namespace {

using base::kilogram;
using base::second;
using domain::Movement;
using domain::Unit;

constexpr double fastest_share_of_brisk = 0.35;
constexpr double slowest_times_sustained = 12;
constexpr double most_times_strong = 10;
constexpr double most_times_heavy = 5;
constexpr double fewest_largest_set = 100;
constexpr base::Duration longest_hold = 3600 * second;
constexpr base::Mass heaviest_without_typical_load = 300 * kilogram;

/// Whether it lies inside; a NaN does not.
bool inside(double value, double min, double max) {
  return value >= min && value <= max;
}

double rounded_up(double value) {
  return std::ceil(value - 1e-9);
}

struct Bounds {
  const domain::Catalogue& catalogue;

  std::optional<std::string> operator()(const domain::TimedDistance& mark) const {
    const Movement* movement = catalogue.find(mark.movement);
    if (movement == nullptr || !movement->pace.contains(Unit::Metres)) return "a movement measured in metres";
    const domain::Pace pace = movement->pace.at(Unit::Metres);
    const double least = rounded_up(mark.distance.si() * pace.brisk * fastest_share_of_brisk);
    const double most = rounded_up(mark.distance.si() * pace.sustained * slowest_times_sustained);
    if (inside(mark.time.si(), least, most)) return std::nullopt;
    return fmt::format("{} to {}", domain::write_clock(least * second), domain::write_clock(most * second));
  }
  std::optional<std::string> operator()(const domain::BestSet& mark) const {
    const Movement* movement = catalogue.find(mark.movement);
    const double strong = movement != nullptr && movement->unbroken ? movement->unbroken->strong : 0;
    return count(mark.reps, std::max(fewest_largest_set, strong * most_times_strong));
  }
  std::optional<std::string> operator()(const domain::TimedReps& mark) const {
    const Movement* movement = catalogue.find(mark.movement);
    if (movement == nullptr || !movement->pace.contains(Unit::Reps)) return "a movement that is counted";
    const double quickest = movement->pace.at(Unit::Reps).brisk * fastest_share_of_brisk;
    return count(mark.reps, std::floor(mark.window.si() / quickest));
  }
  std::optional<std::string> operator()(const domain::BestHold& mark) const {
    if (inside(mark.time.si(), 0, longest_hold.si())) return std::nullopt;
    return fmt::format("0:00 to {}", domain::write_clock(longest_hold));
  }
  std::optional<std::string> operator()(const domain::BestLoad& mark) const {
    const Movement* movement = catalogue.find(mark.movement);
    const base::Mass most = movement != nullptr && movement->typical_load
                                ? movement->typical_load->heavy * most_times_heavy
                                : heaviest_without_typical_load;
    if (inside(mark.load.si(), 1, most.si())) return std::nullopt;
    return fmt::format("1 to {} kg", domain::write_number(most.si()));
  }
  std::optional<std::string> operator()(const domain::AerobicPeak& mark) const {
    if (inside(mark.ml_kg_min, 10, 100)) return std::nullopt;
    return "10 to 100";
  }

 private:
  static std::optional<std::string> count(double reps, double most) {
    if (inside(reps, 0, most)) return std::nullopt;
    return fmt::format("0 to {}", domain::write_number(most));
  }
};

}  // namespace

std::optional<std::string> why_out_of_bounds(const domain::Mark& mark, const domain::Catalogue& catalogue) {
  return std::visit(Bounds{catalogue}, mark);
}

}  // namespace repwright::store
