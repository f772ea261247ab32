#include "advice/fit_steps.hpp"

#include <algorithm>
#include <cmath>

#include "domain/ladder.hpp"
#include "rehearsal/amounts.hpp"

namespace repwright::advice {
namespace {

using domain::FittedItem;
using domain::FittedPerson;

constexpr double steps_of_a_third = 3.5;  // 1 / log(4/3)
constexpr double steps_of_a_run = 4;
constexpr double uneven = 0.06;

/// What was found so far, line by line.
struct Comparison {
  double harder = 0, easier = 0;
  bool apart = false;

  void add(double by) { (by > 0 ? harder : easier) += std::abs(by); }
  /// By how much more of something.
  void add_ratio(double was, double is) {
    if (was == is) return;
    // From nothing or to nothing is as far as a version.
    add(was > 0 && is > 0 ? steps_of_a_third * std::log(is / was) : is - was > 0 ? 1 : -1);
  }
};

double load_of(const FittedItem& item) {
  return item.load ? item.load->si() * item.implements : 0;
}
/// In what counts one on the board: three singles for a double are not more than the double.
double count_of(const FittedItem& item) {
  return rehearsal::largest_set(item.amount) / (item.score_factor > 0 ? item.score_factor : 1);
}

/// A walk for a run is no small step; the next one is looked for among the other lines first.
double size_of_a_step(const domain::Movement* of) {
  return of != nullptr && of->category == "run" ? steps_of_a_run : 1;
}

void compare(const domain::Catalogue& catalogue, const FittedItem& own, const FittedItem& other,
             Comparison& so_far) {
  if (own.load && other.load) so_far.add_ratio(load_of(own), load_of(other));
  if (own.movement == other.movement) {
    if (own.unit == other.unit)
      so_far.add_ratio(rehearsal::largest_set(own.amount), rehearsal::largest_set(other.amount));
    return;
  }
  const int down = domain::steps_down(catalogue, own.movement, other.movement);
  const int up = down > 0 ? 0 : domain::steps_down(catalogue, other.movement, own.movement);
  so_far.apart = so_far.apart || (down == 0 && up == 0);
  so_far.add((up - down) * size_of_a_step(catalogue.find(own.movement)));
  const double was = count_of(own), is = count_of(other);
  // Whole reps and tens of metres do not come out even.
  if (own.unit == other.unit && std::abs(is - was) > uneven * was) so_far.add_ratio(was, is);
}

}  // namespace

std::optional<double> harder_by(const domain::Catalogue& catalogue, const FittedPerson& own,
                                const FittedPerson& other) {
  Comparison found;
  for (std::size_t i = 0; i < std::min(own.items.size(), other.items.size()); ++i)
    compare(catalogue, own.items[i], other.items[i], found);
  for (const auto& [block, rounds] : other.rounds)
    if (const auto was = own.rounds.find(block); was != own.rounds.end())
      found.add_ratio(was->second, rounds);
  if (found.apart || (found.harder > 0) == (found.easier > 0)) return std::nullopt;
  return found.harder - found.easier;
}

}  // namespace repwright::advice
