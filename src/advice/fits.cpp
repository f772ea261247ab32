#include "advice/fits.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

#include "advice/fit_steps.hpp"
#include "domain/board_search.hpp"
#include "domain/ladder.hpp"
#include "rehearsal/ability.hpp"
#include "rehearsal/amounts.hpp"
#include "rehearsal/intent_window.hpp"
#include "rehearsal/kit_pieces.hpp"
#include "rehearsal/lone_pass.hpp"
#include "rehearsal/write_script.hpp"

namespace repwright::advice {
namespace {

using domain::Block;
using domain::FitMeasure;
using domain::FitWindow;

constexpr double off_the_ends = 0.06;  // of the window's ends, for a bad day
constexpr double per_miss = 300;       // of a window's end, beside the size of a change
constexpr double per_near_miss = 60;
constexpr double per_kit_short = 1000;
constexpr double ready_for = 0.5;     // of a set, in one go, by who may be shown a harder version of it
constexpr std::size_t ways_kept = 8;  // of each person, for the model

/// The people whom an option is tried with.
struct Some {
  rehearsal::Cast cast;
  std::vector<domain::Person> people;
  std::vector<int> places;  // in the class
};

Some some_of(const FitTask& task, const std::vector<int>& places) {
  Some some;
  some.places = places;
  some.cast.conditions = task.cast.conditions;
  for (const int place : places) {
    const auto p = static_cast<std::size_t>(place);
    some.people.push_back(task.plain.people[p]);
    some.cast.ids.push_back(task.cast.ids[p]);
    some.cast.names.push_back(task.cast.names[p]);
    some.cast.median.push_back(task.cast.median[p]);
  }
  if (task.cast.stretch)
    some.cast.stretch = [&all = task.cast.stretch, places](domain::BlockId piece, int person, int run) {
      return all(piece, places[static_cast<std::size_t>(person)], run);
    };
  return some;
}

/// The piece as a board of its own, without the cap, so that a slow way shows how slow it is.
domain::Board board_of(const FitTask& task, const FitChange& change) {
  Block own = changed(task.piece, change, task.plain.catalogue);
  own.cap.reset();
  own.heats.reset();
  own.start.reset();
  return {.title = {}, .blocks = {std::move(own)}};
}

domain::FittedBoard fitted_board(const FitTask& task, const Some& some, const domain::Board& board) {
  const rehearsal::PlainFitRequest plain{.board = board,
                                         .catalogue = task.plain.catalogue,
                                         .house = task.plain.house,
                                         .people = some.people,
                                         .bodies = some.cast.median,
                                         .constants = task.plain.constants,
                                         .date = task.plain.date,
                                         .rule = task.plain.rule,
                                         .hall = task.plain.hall,
                                         .gone = task.plain.gone};
  return rehearsal::plain_fit(plain);
}

double expected_of(const FitTask& task, const rehearsal::LonePart& part) {
  const FitMeasure measure = task.window           ? task.window->measure
                             : task.piece.duration ? FitMeasure::Rounds
                                                   : FitMeasure::Seconds;
  switch (measure) {
    case FitMeasure::Seconds:
      return part.seconds;
    case FitMeasure::Rounds:
      return part.rounds;
    case FitMeasure::SpareSeconds:
      return task.piece.every.value_or(base::Duration{}).si() - part.longest_lap_s;
  }
  return 0;
}

/// What these people make of the changed piece, each alone.
std::vector<FitOption> tried(const FitTask& task, const Some& some, const FitChange& change) {
  const domain::Board board = board_of(task, change);
  domain::FittedBoard fitted = fitted_board(task, some, board);
  const timetable::Timetable timetable = timetable::lay_out(board, {});
  const std::optional<int> rounds = board.blocks.front().rounds;
  std::vector<FitOption> options;
  if (timetable.pieces.empty()) return options;
  rehearsal::WrittenFloor floor = rehearsal::write_scripts({.fitted = fitted,
                                                            .timetable = timetable,
                                                            .catalogue = task.plain.catalogue,
                                                            .hall = task.hall,
                                                            .house = task.plain.house,
                                                            .gym_class = task.gym_class,
                                                            .people = some.people,
                                                            .bodies = some.cast.median,
                                                            .constants = task.plain.constants});
  // The piece alone begins at once: who comes late to the class has come long since.
  std::ranges::fill(floor.plan.late, 0.0);
  const auto parts = rehearsal::lone_pass(floor.plan, timetable, task.plain.constants, some.cast);
  for (std::size_t p = 0; p < some.people.size(); ++p) {
    FitOption& option = options.emplace_back();
    option.change = change;
    option.fitted = std::move(fitted.people[p]);
    if (rounds && rounds != task.piece.rounds) option.fitted.rounds[task.piece.id] = *rounds;
    option.expected = expected_of(task, parts[0][p]);
  }
  return options;
}

/// [person][way], without ways that come to the same.
using Ways = std::vector<std::vector<FitOption>>;

void add_ways(const FitTask& task, const std::vector<int>& places, const std::vector<FitChange>& changes,
              Ways& ways, const rehearsal::ForEach& for_each) {
  const Some some = some_of(task, places);
  std::vector<std::vector<FitOption>> found(changes.size());
  for_each(static_cast<int>(changes.size()), [&](int c) {
    const auto at = static_cast<std::size_t>(c);
    found[at] = tried(task, some, changes[at]);
  });
  for (std::vector<FitOption>& options : found)
    for (std::size_t p = 0; p < options.size(); ++p) {
      std::vector<FitOption>& own = ways[static_cast<std::size_t>(places[p])];
      const bool known =
          std::ranges::any_of(own, [&](const FitOption& one) { return one.fitted == options[p].fitted; });
      if (!known) own.push_back(std::move(options[p]));
    }
}

/// The window without its outermost part.
FitWindow inner(FitWindow window) {
  window.min *= 1 + off_the_ends;
  if (window.max) window.max = std::max(window.min, *window.max * (1 - off_the_ends));
  return window;
}

double cost_of(const FitTask& task, const FitOption& option) {
  double cost = size_of(option.change);
  if (task.window)
    cost += per_miss * rehearsal::miss(*task.window, option.expected) +
            per_near_miss * rehearsal::miss(inner(*task.window), option.expected);
  return cost;
}

bool meets(const FitTask& task, const std::vector<FitOption>& ways) {
  return !task.window || std::ranges::any_of(ways, [&](const FitOption& way) {
    return rehearsal::miss(*task.window, way.expected) <= 0;
  });
}

/// A kind and size of kit, and how much of it one way takes.
using KitKey = std::tuple<domain::EquipmentId, double, double>;
struct KitUse {
  KitKey key;
  double pieces = 0;
  int available = 0;
};

std::vector<KitUse> kit_of(const FitTask& task, const FitOption& way, int place) {
  const auto p = static_cast<std::size_t>(place);
  const domain::Board board = board_of(task, {});
  const domain::FittedBoard fitted{board, {way.fitted}};
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

/// Who takes which way, so that the shelf goes round: as little changed and missed as can be.
class Sharing {
 public:
  Sharing(const FitTask& task, const Ways& ways) : task_(task), ways_(ways) {
    for (std::size_t p = 0; p < ways.size(); ++p) {
      domain::LinearRow one{.terms = {}, .at_least = 1, .at_most = 1};
      first_.push_back(static_cast<int>(model_.variables.size()));
      for (const FitOption& way : ways[p]) {
        const int variable = model_.add({.cost = cost_of(task, way)});
        one.terms.push_back({variable});
        for (const KitUse& use : kit_of(task, way, static_cast<int>(p))) take(use, variable);
      }
      model_.rows.push_back(std::move(one));
    }
    for (auto& [key, row] : kit_) {
      const int lacking = model_.add({.cost = per_kit_short, .lower = 0, .upper = 2000});
      row.terms.push_back({lacking, -1});
      lacking_.emplace_back(key, lacking);
      model_.rows.push_back(row);
    }
  }

  const domain::WholeModel& model() const { return model_; }

  /// The place of the chosen way.
  std::size_t way_of(std::size_t person, const domain::WholeSolution& solution) const {
    for (std::size_t w = 0; w < ways_[person].size(); ++w)
      if (solution.values[static_cast<std::size_t>(first_[person]) + w] > 0.5) return w;
    return 0;
  }

  std::vector<std::string> short_of(const domain::WholeSolution& solution) const {
    std::vector<std::string> words;
    for (const auto& [key, variable] : lacking_) {
      const double count = solution.values[static_cast<std::size_t>(variable)];
      if (count < 0.5) continue;
      const domain::Equipment* equipment = task_.plain.catalogue.find(std::get<0>(key));
      std::string name = equipment != nullptr ? equipment->name : std::get<0>(key).text;
      if (std::get<1>(key) > 0) name += " " + number(std::get<1>(key)) + " kg";
      if (std::get<2>(key) > 0) name += " " + number(100 * std::get<2>(key)) + " cm";
      words.push_back(name + ": " + number(count) + " too few");
    }
    return words;
  }

 private:
  static std::string number(double value) {
    std::string text = std::to_string(std::round(value * 10) / 10);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return text;
  }
  void take(const KitUse& use, int variable) {
    domain::LinearRow& row = kit_[use.key];
    row.at_most = use.available;
    row.terms.push_back({variable, use.pieces});
  }

  const FitTask& task_;
  const Ways& ways_;
  domain::WholeModel model_;
  std::vector<int> first_;  // variable of each person's first way
  std::map<KitKey, domain::LinearRow> kit_;
  std::vector<std::pair<KitKey, int>> lacking_;
};

/// The cheapest ways, and of every load the cheapest, so that the shelf can go round.
std::vector<FitOption> kept(const FitTask& task, std::vector<FitOption> ways) {
  std::ranges::stable_sort(ways, {}, [&](const FitOption& way) { return cost_of(task, way); });
  std::vector<FitOption> kept;
  std::vector<std::map<domain::StepId, base::Mass>> loads;
  for (FitOption& way : ways) {
    std::map<domain::StepId, base::Mass> own;
    for (const domain::FittedItem& item : way.fitted.items)
      if (item.load) own[item.step] = *item.load;
    const bool other_loads = std::ranges::find(loads, own) == loads.end();
    if (kept.size() >= ways_kept && !other_loads) continue;
    loads.push_back(std::move(own));
    kept.push_back(std::move(way));
  }
  return kept;
}

/// The rounds said, also where they are as written, so that two ways compare.
domain::FittedPerson with_rounds(const FitTask& task, domain::FittedPerson person) {
  if (task.piece.rounds) person.rounds.try_emplace(task.piece.id, *task.piece.rounds);
  return person;
}

/// Whether the person has, in one go, a fair part of every set that the step makes another: who would do it
/// in ones and twos is not ready for it.
bool within_reach(const FitTask& task, int place, const domain::FittedPerson& own,
                  const domain::FittedPerson& step) {
  const auto p = static_cast<std::size_t>(place);
  const rehearsal::Ability ability{task.plain, task.plain.people[p], task.plain.bodies[p], {}};
  for (std::size_t i = 0; i < std::min(own.items.size(), step.items.size()); ++i) {
    const domain::FittedItem& item = step.items[i];
    const domain::Movement* movement = task.plain.catalogue.find(item.movement);
    if (movement == nullptr || (item.movement == own.items[i].movement && item.load == own.items[i].load))
      continue;
    const double load = item.load ? item.load->si() * item.implements : 0;
    const double best = rehearsal::best_set(ability, *movement, item.unit, load);
    if (best < ready_for * rehearsal::largest_set(item.amount)) return false;
  }
  return true;
}

/// Whether a line becomes a harder version than the board's.
bool beyond_the_board(const FitTask& task, const domain::Board& board, const FitChange& change) {
  return std::ranges::any_of(change.versions, [&](const auto& version) {
    const domain::Item* written = domain::find_item(board, version.first);
    return written != nullptr && written->movement &&
           domain::steps_down(task.plain.catalogue, version.second, *written->movement) > 0;
  });
}

/// Of what is one change away from a person's way the nearest that is easier and the nearest that is harder.
/// People with the same way are tried together.
void add_steps(const FitTask& task, const std::vector<FitChange>& singles, std::vector<ChosenFit>& chosen,
               const rehearsal::ForEach& for_each) {
  std::vector<std::pair<FitChange, std::vector<int>>> groups;
  for (std::size_t p = 0; p < chosen.size(); ++p) {
    const auto known =
        std::ranges::find(groups, chosen[p].own.change, [](const auto& one) { return one.first; });
    if (known != groups.end())
      known->second.push_back(static_cast<int>(p));
    else
      groups.emplace_back(chosen[p].own.change, std::vector<int>{static_cast<int>(p)});
  }
  const domain::Board as_written = board_of(task, {});
  for_each(static_cast<int>(groups.size()), [&](int g) {
    const auto& [own_change, places] = groups[static_cast<std::size_t>(g)];
    const Some some = some_of(task, places);
    for (const FitChange& change : changes_beside(own_change, singles)) {
      // Who does less than the board asks goes back to the board first.
      if (own_change != FitChange{} && beyond_the_board(task, as_written, change)) continue;
      const domain::Board board = board_of(task, change);
      domain::FittedBoard fitted = fitted_board(task, some, board);
      for (std::size_t i = 0; i < places.size(); ++i) {
        ChosenFit& fit = chosen[static_cast<std::size_t>(places[i])];
        domain::FittedPerson& other = fitted.people[i];
        if (board.blocks.front().rounds != task.piece.rounds)
          other.rounds[task.piece.id] = board.blocks.front().rounds.value_or(1);
        const auto by =
            harder_by(task.plain.catalogue, with_rounds(task, fit.own.fitted), with_rounds(task, other));
        if (!by || (*by > 0 && !within_reach(task, places[i], fit.own.fitted, other))) continue;
        NextStep& step = *by > 0 ? fit.harder : fit.easier;
        if (step.by > 0 && std::abs(*by) >= step.by) continue;
        step = {std::abs(*by), std::move(other)};
      }
    }
  });
}

}  // namespace

std::optional<FitWindow> window_of(const Block& piece) {
  if (const auto window = rehearsal::intended(piece)) return window;
  if (piece.cap && piece.kind == domain::BlockKind::ForTime)
    return FitWindow{FitMeasure::Seconds, 0, piece.cap->si()};
  return std::nullopt;
}

base::Result<FittedPiece> fit_piece(const FitTask& task, domain::Solver& solver,
                                    const rehearsal::ForEach& for_each) {
  std::vector<int> everybody(task.plain.people.size());
  std::iota(everybody.begin(), everybody.end(), 0);
  const std::vector<FitChange> singles =
      single_changes(task.piece, {task.plain.catalogue, task.hall, task.plain.house});
  Ways ways(everybody.size());
  add_ways(task, everybody, singles, ways, for_each);
  std::vector<int> unmet;
  unmet.reserve(everybody.size());
  for (const int p : everybody)
    if (!meets(task, ways[static_cast<std::size_t>(p)])) unmet.push_back(p);
  if (!unmet.empty() && !task.solve.stop.stop_requested())
    add_ways(task, unmet, double_changes(singles), ways, for_each);
  for (std::vector<FitOption>& own : ways) own = kept(task, std::move(own));

  const Sharing sharing(task, ways);
  domain::SolveLimits limits = task.solve;
  if (limits.stop.stop_requested()) limits.stop = {};  // what was tried till then is shared out all the same
  const auto solution = solver.solve(sharing.model(), limits);
  if (!solution) return tl::unexpected(solution.error());
  FittedPiece piece;
  for (std::size_t p = 0; p < ways.size(); ++p) {
    ChosenFit& chosen = piece.people.emplace_back();
    chosen.own = ways[p][sharing.way_of(p, *solution)];
    chosen.inside = !task.window || rehearsal::miss(*task.window, chosen.own.expected) <= 0;
  }
  add_steps(task, singles, piece.people, for_each);
  piece.short_of = sharing.short_of(*solution);
  return piece;
}

}  // namespace repwright::advice
