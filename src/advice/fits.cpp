#include "advice/fits.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

#include "advice/fit_crowd.hpp"
#include "advice/fit_sharing.hpp"
#include "rehearsal/intent_window.hpp"

namespace repwright::advice {
namespace {

using Choice = std::vector<const FitOption*>;

constexpr double less_inside = 0.02;  // of a person's runs: not luck
constexpr double close_call = 0.05;   // of the class

/// All ways worth a look: one change for everybody, two for whom no single one brings inside.
Ways ways_of(const FitTask& task, const std::vector<FitChange>& singles, const rehearsal::ForEach& for_each) {
  std::vector<int> everybody(task.plain.people.size());
  std::iota(everybody.begin(), everybody.end(), 0);
  Ways ways(everybody.size());
  add_ways(task, everybody, singles, ways, for_each);
  std::vector<int> unmet;
  std::ranges::copy_if(everybody, std::back_inserter(unmet), [&](int p) {
    return std::ranges::none_of(ways[static_cast<std::size_t>(p)],
                                [&](const FitOption& way) { return is_inside(task, way.expected); });
  });
  if (!unmet.empty() && !task.solve.stop.stop_requested())
    add_ways(task, unmet, double_changes(singles), ways, for_each);
  return ways;
}

base::Result<Choice> chosen_alone(const FitTask& task, const Ways& ways, KitBook& kit,
                                  domain::Solver& solver) {
  std::vector<std::vector<PricedWay>> priced;
  priced.reserve(ways.size());
  for (const std::vector<FitOption>& own : ways)
    priced.push_back(cheapest(
        own, [&](const FitOption& way) { return size_of(way.change) + miss_cost(task, way.expected); }));
  domain::SolveLimits limits = task.solve;
  if (limits.stop.stop_requested()) limits.stop = {};  // what was tried till then is shared out all the same
  return shared_out(priced, kit, solver, limits);
}

/// A choice and how much of everybody is inside.
struct Judged {
  Choice ways;
  std::vector<double> inside;
  double mean = 0;
};

base::Result<Judged> judged(const FitTask& task, Choice ways, Care care = Care::Rough) {
  std::vector<domain::FittedPerson> people;
  people.reserve(ways.size());
  for (const FitOption* way : ways) people.push_back(way->fitted);
  auto inside = task.inside(people, care);
  if (!inside) return tl::unexpected(inside.error());
  const double mean = std::accumulate(inside->begin(), inside->end(), 0.0) /
                      static_cast<double>(std::max<std::size_t>(1, inside->size()));
  return Judged{std::move(ways), *std::move(inside), mean};
}

Choice as_chalked(const Ways& ways) {
  Choice choice;
  choice.reserve(ways.size());
  for (const std::vector<FitOption>& own : ways) choice.push_back(&own.front());
  return choice;
}

double pieces_short(KitBook& kit, const Choice& ways) {
  double pieces = 0;
  for (const auto& [key, count] : kit.lacking(ways)) pieces += count;
  return pieces;
}

/// The better of a choice and the board as it is where the two are close: with all runs.
base::Result<Choice> surely_better(const FitTask& task, const Choice& choice, const Choice& written) {
  const auto surely = judged(task, choice, Care::Full);
  if (!surely) return tl::unexpected(surely.error());
  const auto written_surely = judged(task, written, Care::Full);
  if (!written_surely) return tl::unexpected(written_surely.error());
  return surely->mean >= written_surely->mean ? choice : written;
}

/// The board as it is for those of whom it brings more inside, as far as the shelf has it.
Choice with_some_back(const Judged& best, const Judged& as_written, KitBook& kit, double lacking) {
  Choice back = best.ways;
  for (std::size_t p = 0; p < back.size(); ++p) {
    if (best.inside[p] > as_written.inside[p] - less_inside) continue;
    Choice one = back;
    one[p] = as_written.ways[p];
    if (pieces_short(kit, one) <= lacking) back = std::move(one);
  }
  return back;
}

/// The best of the choices and of the board as it is, by rehearsal; then the same with the board as it is for
/// those of whom it brings more inside. Nothing that takes more from the shelf than the first choice.
base::Result<Choice> best_by_rehearsal(const FitTask& task, const Choice& written,
                                       std::vector<Choice> choices, KitBook& kit) {
  const double lacking = pieces_short(kit, choices.front());
  const bool may_be_written = pieces_short(kit, written) <= lacking;
  const auto as_written = judged(task, written);
  if (!as_written) return tl::unexpected(as_written.error());
  auto best = judged(task, std::move(choices.front()));
  if (!best) return tl::unexpected(best.error());
  if (may_be_written && as_written->mean > best->mean) best = *as_written;
  for (std::size_t c = 1; c < choices.size(); ++c) {
    auto now = judged(task, std::move(choices[c]));
    if (!now) return tl::unexpected(now.error());
    if (now->mean >= best->mean) best = std::move(now);  // of equals the nearer to the window
  }
  if (Choice back = with_some_back(*best, *as_written, kit, lacking); back != best->ways) {
    auto again = judged(task, std::move(back));
    if (!again) return tl::unexpected(again.error());
    if (again->mean >= best->mean) best = std::move(again);
  }
  const bool clear = best->mean > as_written->mean + close_call;
  if (clear || !may_be_written || best->ways == written) return best->ways;
  return surely_better(task, best->ways, written);
}

}  // namespace

std::optional<domain::FitWindow> window_of(const domain::Block& piece) {
  if (const auto window = rehearsal::intended(piece)) return window;
  if (piece.cap && piece.kind == domain::BlockKind::ForTime)
    return domain::FitWindow{domain::FitMeasure::Seconds, 0, piece.cap->si()};
  return std::nullopt;
}

base::Result<FittedPiece> fit_piece(const FitTask& task, domain::Solver& solver,
                                    const rehearsal::ForEach& for_each) {
  const std::vector<FitChange> singles =
      single_changes(task.piece, {task.plain.catalogue, task.hall, task.plain.house});
  const Ways ways = ways_of(task, singles, for_each);
  KitBook kit(task, ways);
  auto alone = chosen_alone(task, ways, kit, solver);
  if (!alone) return tl::unexpected(alone.error());
  TogetherChoice chosen = together(task, *alone, kit);
  std::vector<Choice> choices{*std::move(alone)};
  if (is_crowded(chosen) && !task.solve.stop.stop_requested()) {
    auto better = best_together(task, std::move(chosen), kit, solver, for_each);
    if (!better) return tl::unexpected(better.error());
    chosen = *std::move(better);
    choices.push_back(chosen.ways);
  }
  if (task.inside && !task.solve.stop.stop_requested()) {
    auto best = best_by_rehearsal(task, as_chalked(ways), std::move(choices), kit);
    // Whoever stopped it meanwhile gets what was best before it was rehearsed.
    if (!best && !task.solve.stop.stop_requested()) return tl::unexpected(best.error());
    if (best && *best != chosen.ways) chosen = together(task, *std::move(best), kit);
  }
  std::vector<EitherWay> steps = either_way(task, singles, chosen.ways, for_each);
  FittedPiece piece;
  for (std::size_t p = 0; p < ways.size(); ++p) {
    ChosenFit& fit = piece.people.emplace_back();
    fit.own = *chosen.ways[p];
    fit.own.expected = chosen.expected[p];
    fit.waited_s = chosen.waited_s[p];
    fit.alone = chosen.ways[p]->expected;
    fit.inside = is_inside(task, fit.own.expected);
    fit.easier = std::move(steps[p].easier);
    fit.harder = std::move(steps[p].harder);
  }
  piece.short_of = short_words(kit.lacking(chosen.ways), task.plain.catalogue);
  piece.written_short_of = short_words(kit.lacking(as_chalked(ways)), task.plain.catalogue);
  return piece;
}

}  // namespace repwright::advice
