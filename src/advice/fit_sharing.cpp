#include "advice/fit_sharing.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "rehearsal/kit_pieces.hpp"
#include "timetable/timetable.hpp"

namespace repwright::advice {
namespace {

constexpr std::size_t ways_kept = 8;  // of each person, for the model

std::vector<KitUse> kit_of(const FitTask& task, const FitOption& way, std::size_t p) {
  const domain::FittedBoard fitted{board_alone(task, {}), {way.fitted}};
  const std::vector<domain::Person> person{task.plain.people[p]};
  const std::vector<body::Body> body{task.cast.median[p]};
  const timetable::Timetable timetable =
      timetable::lay_out({.title = {}, .blocks = {task.piece}}, task.gym_class);
  std::vector<KitUse> uses;
  for (const rehearsal::KitPieces& one : rehearsal::kit_pieces({.fitted = fitted,
                                                                .timetable = timetable,
                                                                .catalogue = task.plain.catalogue,
                                                                .hall = task.hall,
                                                                .house = task.plain.house,
                                                                .gym_class = task.gym_class,
                                                                .people = person,
                                                                .bodies = body,
                                                                .constants = task.plain.constants}))
    uses.push_back({{one.need.equipment, one.need.mass.value_or(base::Mass{}).si(),
                     one.need.height.value_or(base::Length{}).si()},
                    one.pieces,
                    one.need.available});
  return uses;
}

std::string number(double value) {
  std::string text = std::to_string(std::round(value * 10) / 10);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

/// What tells two ways apart on a shelf and on the floor.
using Outfit = std::pair<std::map<domain::StepId, base::Mass>, std::set<domain::EquipmentId>>;

Outfit outfit_of(const FitOption& way) {
  Outfit outfit;
  for (const domain::FittedItem& item : way.fitted.items)
    if (item.load) outfit.first[item.step] = *item.load;
  for (const rehearsal::AtPlace& at : way.alone.places) outfit.second.insert(at.place);
  return outfit;
}

/// The model: a variable for each way, one of each person's, and a row for each kind of kit.
class Model {
 public:
  Model(const std::vector<std::vector<PricedWay>>& ways, KitBook& kit) : ways_(ways) {
    for (std::size_t p = 0; p < ways.size(); ++p) {
      domain::LinearRow one{.terms = {}, .at_least = 1, .at_most = 1};
      first_.push_back(static_cast<int>(model_.variables.size()));
      for (const PricedWay& priced : ways[p]) {
        const int variable = model_.add({.cost = priced.cost});
        one.terms.push_back({variable});
        for (const KitUse& use : kit.of(p, *priced.way)) take(use, variable);
      }
      model_.rows.push_back(std::move(one));
    }
    for (auto& [key, row] : kit_) {
      row.terms.push_back({model_.add({.cost = per_kit_short, .lower = 0, .upper = 2000}), -1});
      model_.rows.push_back(row);
    }
  }

  const domain::WholeModel& model() const { return model_; }

  std::vector<const FitOption*> choice(const domain::WholeSolution& solution) const {
    std::vector<const FitOption*> choice;
    for (std::size_t p = 0; p < ways_.size(); ++p) {
      std::size_t taken = 0;
      for (std::size_t w = 0; w < ways_[p].size(); ++w)
        if (solution.values[static_cast<std::size_t>(first_[p]) + w] > 0.5) taken = w;
      choice.push_back(ways_[p][taken].way);
    }
    return choice;
  }

 private:
  void take(const KitUse& use, int variable) {
    domain::LinearRow& row = kit_[use.key];
    row.at_most = use.available;
    row.terms.push_back({variable, use.pieces});
  }

  const std::vector<std::vector<PricedWay>>& ways_;
  domain::WholeModel model_;
  std::vector<int> first_;  // variable of each person's first way
  std::map<KitKey, domain::LinearRow> kit_;
};

}  // namespace

const std::vector<KitUse>& KitBook::of(std::size_t person, const FitOption& way) {
  auto& known = uses_[person];
  const auto at = known.find(&way);
  return at != known.end() ? at->second : known.emplace(&way, kit_of(task_, way, person)).first->second;
}

std::map<KitKey, double> KitBook::lacking(const std::vector<const FitOption*>& choice) {
  std::map<KitKey, double> over;
  for (std::size_t p = 0; p < choice.size(); ++p)
    for (const KitUse& use : of(p, *choice[p]))
      over.try_emplace(use.key, -use.available).first->second += use.pieces;
  std::erase_if(over, [](const auto& one) { return one.second <= 1e-9; });
  for (auto& [key, pieces] : over) pieces = std::ceil(pieces - 1e-9);
  return over;
}

std::vector<std::string> short_words(const std::map<KitKey, double>& lacking,
                                     const domain::Catalogue& catalogue) {
  std::vector<std::string> words;
  for (const auto& [key, count] : lacking) {
    const domain::Equipment* equipment = catalogue.find(std::get<0>(key));
    std::string name = equipment != nullptr ? equipment->name : std::get<0>(key).text;
    if (std::get<1>(key) > 0) name += " " + number(std::get<1>(key)) + " kg";
    if (std::get<2>(key) > 0) name += " " + number(100 * std::get<2>(key)) + " cm";
    words.push_back(name + ": " + number(count) + " too few");
  }
  return words;
}

base::Result<std::vector<const FitOption*>> shared_out(const std::vector<std::vector<PricedWay>>& ways,
                                                       KitBook& kit, domain::Solver& solver,
                                                       const domain::SolveLimits& limits) {
  const Model model(ways, kit);
  const auto solution = solver.solve(model.model(), limits);
  if (!solution) return tl::unexpected(solution.error());
  return model.choice(*solution);
}

std::vector<PricedWay> cheapest(const std::vector<FitOption>& ways,
                                const std::function<double(const FitOption&)>& cost) {
  std::vector<PricedWay> priced;
  priced.reserve(ways.size());
  for (const FitOption& way : ways) priced.push_back({&way, cost(way)});
  std::ranges::stable_sort(priced, {}, &PricedWay::cost);
  std::vector<PricedWay> kept;
  std::set<Outfit> outfits;
  for (const PricedWay& one : priced)
    if (outfits.insert(outfit_of(*one.way)).second || kept.size() < ways_kept || one.way == &ways.front())
      kept.push_back(one);
  return kept;
}

}  // namespace repwright::advice
