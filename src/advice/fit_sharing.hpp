#pragma once

#include <map>
#include <string>
#include <tuple>
#include <vector>

#include "advice/fit_ways.hpp"

/// Which of the ways everybody takes, so that the shelf goes round.
namespace repwright::advice {

/// A kind and size of kit: id, kg, m.
using KitKey = std::tuple<domain::EquipmentId, double, double>;
/// How much of it one way takes, and how much there is.
struct KitUse {
  KitKey key;
  double pieces = 0;
  int available = 0;
};

/// What every way takes from the shelf.
class KitBook {
 public:
  /// Both must outlive the book.
  KitBook(const FitTask& task, const Ways& ways) : task_(task), ways_(ways), uses_(ways.size()) {}

  const Ways& ways() const { return ways_; }
  const std::vector<KitUse>& of(std::size_t person, const FitOption& way);
  /// Pieces that are too few when everybody does this.
  std::map<KitKey, double> lacking(const std::vector<const FitOption*>& choice);

 private:
  const FitTask& task_;
  const Ways& ways_;
  std::vector<std::map<const FitOption*, std::vector<KitUse>>> uses_;
};

/// What is lacking, in words.
std::vector<std::string> short_words(const std::map<KitKey, double>& lacking,
                                     const domain::Catalogue& catalogue);

inline constexpr double per_kit_short = 1000;  // beside the size of a change

struct PricedWay {
  const FitOption* way = nullptr;
  double cost = 0;
};

/// One of the ways for everybody, as cheap as can be, with a row for each kind and size of kit that the hall
/// counts; what is still short costs more than any change. Fails as the solver does.
base::Result<std::vector<const FitOption*>> shared_out(const std::vector<std::vector<PricedWay>>& ways,
                                                       KitBook& kit, domain::Solver& solver,
                                                       const domain::SolveLimits& limits);

/// The cheapest ways of one person, and of every load and every kind of place the cheapest, so that the shelf
/// and the places can go round; and always the board as it is, `ways[0]`.
std::vector<PricedWay> cheapest(const std::vector<FitOption>& ways,
                                const std::function<double(const FitOption&)>& cost);

}  // namespace repwright::advice
