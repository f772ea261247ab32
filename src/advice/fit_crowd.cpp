#include "advice/fit_crowd.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

#include "timetable/timetable.hpp"

namespace repwright::advice {
namespace {

constexpr double outside = 15;         // beside the size of a change: being nearly inside is no consolation
constexpr double worth_a_look_s = 10;  // of waiting, for the middle of those who use a place
constexpr int choices = 4;             // with the waits seen before
constexpr int sweeps = 2;              // of letting single people do otherwise
constexpr std::size_t other_ways = 4;  // of each person in a sweep
constexpr double least_gain = 0.25;    // a quarter of the smallest change

double cost_of_coming_to(const FitTask& task, double expected) {
  return miss_cost(task, expected) + (is_inside(task, expected) ? 0 : outside);
}

/// Seconds that a line of work at a kind of place waits for it, in the middle of the class.
using Waits = std::map<domain::EquipmentId, double>;

/// What somebody would come to who waits so at every line.
double expected_with(const FitTask& task, const FitOption& way, const Waits& waits) {
  double waited = 0;
  for (const rehearsal::AtPlace& at : way.alone.places)
    if (const auto wait = waits.find(at.place); wait != waits.end()) waited += at.lines * wait->second;
  rehearsal::MiddlingPart part = way.alone;
  if (part.laps > 0) part.longest_lap_s += waited / part.laps;
  part.rounds *= part.seconds / std::max(1.0, part.seconds + waited);
  part.seconds += waited;
  return expected_of(task, part);
}

/// The piece on one floor for the whole class, without luck and cap.
class SharedFloor {
 public:
  explicit SharedFloor(const FitTask& task)
      : task_(task), board_({.title = {}, .blocks = {task.piece}}), some_(everybody(task)) {
    board_.blocks.front().cap.reset();
    timetable_ = timetable::lay_out(board_, {});
  }

  rehearsal::MiddlingParts play(const std::vector<const FitOption*>& ways) const {
    domain::FittedBoard fitted{board_, {}};
    std::vector<std::vector<double>> paces(1);
    for (const FitOption* way : ways) {
      fitted.people.push_back(way->fitted);
      paces.front().push_back(way->alone.active_s);
    }
    return rehearsal::crowd_pass(floor_plan(task_, some_, fitted, timetable_), timetable_,
                                 task_.plain.constants, some_.cast, paces);
  }

 private:
  static Some everybody(const FitTask& task) {
    std::vector<int> places(task.plain.people.size());
    std::iota(places.begin(), places.end(), 0);
    return some_of(task, places);
  }

  const FitTask& task_;
  domain::Board board_;
  Some some_;
  timetable::Timetable timetable_;
};

/// A choice with what it comes to, and the waits seen.
struct Played {
  TogetherChoice choice;
  Waits waits;
};

Played played(const FitTask& task, const SharedFloor& floor, std::vector<const FitOption*> ways,
              double kit_cost) {
  const rehearsal::MiddlingParts parts = floor.play(ways);
  Played result{.choice = {.ways = std::move(ways), .expected = {}, .waited_s = {}, .cost = kit_cost},
                .waits = {}};
  std::map<domain::EquipmentId, int> lines;
  for (std::size_t p = 0; p < result.choice.ways.size(); ++p) {
    const rehearsal::MiddlingPart& part = parts[0][p];
    double& waited = result.choice.waited_s.emplace_back();
    for (const rehearsal::AtPlace& at : part.places) {
      waited += at.waited_s;
      result.waits[at.place] += at.waited_s;
      lines[at.place] += at.lines;
    }
    const double expected = expected_of(task, part);
    result.choice.expected.push_back(expected);
    result.choice.cost += size_of(result.choice.ways[p]->change) + cost_of_coming_to(task, expected);
  }
  for (auto& [place, wait] : result.waits) wait /= std::max(1, lines[place]);
  return result;
}

double kit_cost(KitBook& kit, const std::vector<const FitOption*>& ways) {
  double cost = 0;
  for (const auto& [key, pieces] : kit.lacking(ways)) cost += per_kit_short * pieces;
  return cost;
}

/// One person doing another of their ways.
struct Move {
  std::size_t person = 0;
  const FitOption* way = nullptr;
  double cost = 0;  // of the whole class then
};

class Search {
 public:
  Search(const FitTask& task, KitBook& kit) : task_(task), ways_(kit.ways()), kit_(kit), floor_(task) {}

  Played play(std::vector<const FitOption*> choice) {
    const double cost = kit_cost(kit_, choice);
    return played(task_, floor_, std::move(choice), cost);
  }

  std::vector<PricedWay> priced(std::size_t person, const Waits& waits) const {
    return cheapest(ways_[person], [&](const FitOption& way) {
      return size_of(way.change) + cost_of_coming_to(task_, expected_with(task_, way, waits));
    });
  }

  /// Chooses again with the waits seen, averaged so that not all leave a place at once and come back at once.
  base::Result<Played> choose_again(Played best, domain::Solver& solver) {
    Waits waits = best.waits;
    for (int pass = 1; pass <= choices; ++pass) {
      std::vector<std::vector<PricedWay>> all;
      all.reserve(ways_.size());
      for (std::size_t p = 0; p < ways_.size(); ++p) all.push_back(priced(p, waits));
      if (task_.solve.stop.stop_requested()) return best;
      auto choice = shared_out(all, kit_, solver, task_.solve);
      if (!choice && task_.solve.stop.stop_requested()) return best;
      if (!choice) return tl::unexpected(choice.error());
      Played now = play(*std::move(choice));
      for (const auto& [place, wait] : now.waits) waits.try_emplace(place, 0.0);
      for (auto& [place, wait] : waits) {
        const auto seen = now.waits.find(place);
        wait += ((seen == now.waits.end() ? 0 : seen->second) - wait) / (pass + 1);
      }
      if (now.choice.cost < best.choice.cost) best = std::move(now);
    }
    return best;
  }

  /// Lets one after the other do otherwise, whoever gains most first.
  Played improve(Played best, const rehearsal::ForEach& for_each) {
    for (int sweep = 0; sweep < sweeps && !task_.solve.stop.stop_requested(); ++sweep) {
      const std::vector<Move> moves = tried_moves(best, for_each);
      const double before = best.choice.cost;
      for (const Move& move : moves) {
        if (move.cost > before - least_gain) break;
        std::vector<const FitOption*> choice = best.choice.ways;
        choice[move.person] = move.way;
        Played now = play(std::move(choice));
        if (now.choice.cost < best.choice.cost - least_gain) best = std::move(now);
      }
      if (best.choice.cost > before - least_gain) break;
    }
    return best;
  }

 private:
  /// What every single move comes to, the cheapest class first.
  std::vector<Move> tried_moves(const Played& from, const rehearsal::ForEach& for_each) {
    std::vector<Move> moves;
    for (std::size_t p = 0; p < ways_.size(); ++p) {
      std::size_t more = other_ways;
      for (const PricedWay& one : priced(p, from.waits)) {
        if (one.way == from.choice.ways[p]) continue;
        if (more-- == 0) break;
        moves.push_back({p, one.way, 0});
      }
    }
    std::vector<double> kit_costs;
    kit_costs.reserve(moves.size());
    for (const Move& move : moves) {
      std::vector<const FitOption*> choice = from.choice.ways;
      choice[move.person] = move.way;
      kit_costs.push_back(kit_cost(kit_, choice));
    }
    for_each(static_cast<int>(moves.size()), [&](int m) {
      const auto at = static_cast<std::size_t>(m);
      std::vector<const FitOption*> choice = from.choice.ways;
      choice[moves[at].person] = moves[at].way;
      moves[at].cost = played(task_, floor_, std::move(choice), kit_costs[at]).choice.cost;
    });
    std::ranges::stable_sort(moves, {}, &Move::cost);
    return moves;
  }

  const FitTask& task_;
  const Ways& ways_;
  KitBook& kit_;
  SharedFloor floor_;
};

}  // namespace

TogetherChoice together(const FitTask& task, std::vector<const FitOption*> ways, KitBook& kit) {
  const double cost = kit_cost(kit, ways);
  return played(task, SharedFloor(task), std::move(ways), cost).choice;
}

bool is_crowded(const TogetherChoice& choice) {
  return std::ranges::any_of(choice.waited_s, [](double waited) { return waited >= worth_a_look_s; });
}

base::Result<TogetherChoice> best_together(const FitTask& task, TogetherChoice from, KitBook& kit,
                                           domain::Solver& solver, const rehearsal::ForEach& for_each) {
  Search search(task, kit);
  auto best = search.choose_again(search.play(std::move(from.ways)), solver);
  if (!best) return tl::unexpected(best.error());
  std::vector<const FitOption*> written;
  written.reserve(kit.ways().size());
  for (const std::vector<FitOption>& own : kit.ways()) written.push_back(&own.front());
  Played as_written = search.play(std::move(written));
  if (as_written.choice.cost < best->choice.cost) best = std::move(as_written);
  return search.improve(*std::move(best), for_each).choice;
}

}  // namespace repwright::advice
