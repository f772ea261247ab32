#include "advice/warm_up.hpp"

#include <algorithm>
#include <array>
#include <numeric>
#include <string_view>
#include <utility>

namespace repwright::advice {
namespace {

using domain::Drill;
using domain::LinearRow;
using domain::LinearTerm;
using domain::NeedKind;
using domain::WarmUpNeed;

// What counts how much, in the cost that is minimised.
constexpr double first_touch = 100;  // per weight
constexpr double second_touch = 12;  // per weight
constexpr double floor_visit = 25;
constexpr double left_out = 6;  // each person who does something else
constexpr double each_drill = 2;

constexpr double joint_s = 30;  // that a joint needs (common practice, no source)
constexpr double least_raise_s = 90;
constexpr double most_raise = 2;  // drills
constexpr std::array<std::string_view, 4> phases{"raise", "mobilise", "activate", "rehearse"};

bool has(const std::vector<std::string>& words, std::string_view word) {
  return std::ranges::find(words, word) != words.end();
}
bool on_floor(const Drill& drill) {
  return has(drill.flags, "floor");
}
bool practice_round(const Drill& drill) {
  return has(drill.joints, "whole-body");
}
bool prepares(const Drill& drill, const WarmUpNeed& need) {
  switch (need.kind) {
    case NeedKind::Joint:
      return has(drill.joints, need.id);
    case NeedKind::Pattern:
      return has(drill.patterns, need.id);
    case NeedKind::Muscle:
      return has(drill.muscles, need.id);
  }
  return false;
}

class Model {
 public:
  explicit Model(const WarmUpTask& task) : task_(task) {
    for (const Drill& drill : task.drills) {
      const auto others = std::ranges::count_if(task.people, [&](const WithLimits& person) {
        return limit_against(drill, person.limits) != nullptr;
      });
      model_.add({.cost = each_drill + left_out * static_cast<double>(others)});
    }
    limit_length();
    for (const WarmUpNeed& need : task.needs) touch(need);
    visit_floor();
  }

  void in_phases() {
    const double length = task_.length.si();
    const auto in = [](std::string_view phase) {
      return [phase](const Drill& drill) { return drill.phase == phase; };
    };
    if (length >= 120) {
      at_least_one(in("raise"));
      LinearRow few = row_of(in("raise"), 1);
      few.at_most = most_raise;
      add(std::move(few));
    }
    if (length >= 180) {
      at_least_one(in("mobilise"));
      at_least_one(in("rehearse"));
    }
    if (length >= 300) {
      LinearRow long_enough = row_of(in("raise"), Seconds{});
      const double all =
          std::accumulate(long_enough.terms.begin(), long_enough.terms.end(), 0.0,
                          [](double sum, const LinearTerm& term) { return sum + term.factor; });
      long_enough.at_least = std::min(least_raise_s, all);
      add(std::move(long_enough));
    }
    if (length >= 360) at_least_one(practice_round);
  }

  const domain::WholeModel& model() const { return model_; }

 private:
  struct Seconds {};

  template <class Which>
  LinearRow row_of(Which which, double factor) const {
    LinearRow row;
    for (std::size_t d = 0; d < task_.drills.size(); ++d)
      if (which(task_.drills[d])) row.terms.push_back({static_cast<int>(d), factor});
    return row;
  }
  template <class Which>
  LinearRow row_of(Which which, Seconds /*of the drill*/) const {
    LinearRow row = row_of(which, 1);
    for (LinearTerm& term : row.terms)
      term.factor = task_.drills[static_cast<std::size_t>(term.variable)].length.si();
    return row;
  }
  void add(LinearRow row) {
    if (!row.terms.empty()) model_.rows.push_back(std::move(row));
  }
  template <class Which>
  void at_least_one(Which which) {
    LinearRow row = row_of(which, 1);
    row.at_least = 1;
    add(std::move(row));
  }

  void limit_length() {
    LinearRow row = row_of([](const Drill&) { return true; }, Seconds{});
    row.at_most = task_.length.si();
    add(std::move(row));
  }

  /// A need counts when it is touched, and a little more when it is touched twice.
  void touch(const WarmUpNeed& need) {
    const auto for_it = [&](const Drill& drill) { return prepares(drill, need); };
    const bool joint = need.kind == NeedKind::Joint;
    LinearRow row = joint ? row_of(for_it, Seconds{}) : row_of(for_it, 1);
    if (row.terms.empty()) return;
    const int once = model_.add({.cost = -first_touch * need.weight});
    const int twice = model_.add({.cost = -second_touch * need.weight});
    const double needed = joint ? joint_s : 1;
    row.terms.push_back({once, -needed});
    row.terms.push_back({twice, -needed});
    row.at_least = 0;
    add(std::move(row));
    add({.terms = {{once, 1}, {twice, -1}}, .at_least = 0});
  }

  /// Drills on the floor between raising and rehearsing are done in one go; later ones cost a visit each.
  void visit_floor() {
    const int down = model_.add({.cost = floor_visit});
    for (std::size_t d = 0; d < task_.drills.size(); ++d) {
      if (!on_floor(task_.drills[d])) continue;
      if (task_.drills[d].phase == "rehearse")
        model_.variables[d].cost += floor_visit;
      else
        add({.terms = {{down, 1}, {static_cast<int>(d), -1}}, .at_least = 0});
    }
  }

  const WarmUpTask& task_;
  domain::WholeModel model_;
};

/// Raise, mobilise, activate, rehearse; within, so that floor drills stand together; the practice round last.
int place_of(const Drill& drill) {
  const auto phase = static_cast<int>(std::ranges::find(phases, drill.phase) - phases.begin());
  const bool floor_first = drill.phase == "activate" || drill.phase == "rehearse";
  const int within = practice_round(drill) ? 2 : on_floor(drill) == floor_first ? 0 : 1;
  return phase * 3 + within;
}

int weight_in_common(const Drill& drill, const std::vector<int>& wanted,
                     const std::vector<WarmUpNeed>& needs) {
  int weight = 0;
  for (const int n : wanted)
    if (prepares(drill, needs[static_cast<std::size_t>(n)]))
      weight += needs[static_cast<std::size_t>(n)].weight;
  return weight;
}

/// What somebody who must leave the step out does meanwhile: what prepares most of the same.
const Drill* other_drill(const domain::WarmUpStep& step, const WithLimits& person, const WarmUpTask& task) {
  const Drill* best = nullptr;
  int best_weight = 0;
  for (const Drill& drill : task.drills) {
    if (drill.id == step.drill || limit_against(drill, person.limits) != nullptr ||
        drill.length > step.length)
      continue;
    const int weight = weight_in_common(drill, step.prepares, task.needs);
    if (weight > best_weight) {
      best = &drill;
      best_weight = weight;
    }
  }
  return best;
}

domain::WarmUpStep step_of(const Drill& drill, const WarmUpTask& task) {
  domain::WarmUpStep step{.drill = drill.id,
                          .name = drill.name,
                          .phase = drill.phase,
                          .length = drill.length,
                          .how = drill.how,
                          .say = drill.coach_line,
                          .on_floor = on_floor(drill),
                          .prepares = {},
                          .others = {}};
  for (std::size_t n = 0; n < task.needs.size(); ++n)
    if (prepares(drill, task.needs[n])) step.prepares.push_back(static_cast<int>(n));
  for (const WithLimits& person : task.people)
    if (const domain::Limit* limit = limit_against(drill, person.limits)) {
      const Drill* other = other_drill(step, person, task);
      step.others.push_back({person.name, limit->action, other != nullptr ? other->name : ""});
    }
  return step;
}

int visits(const std::vector<domain::WarmUpStep>& steps) {
  int count = 0;
  for (std::size_t s = 0; s < steps.size(); ++s)
    if (steps[s].on_floor && (s == 0 || !steps[s - 1].on_floor)) ++count;
  return count;
}

/// What the chosen drills leave, and what they make of the time.
void sum_up(domain::WarmUp& warm_up, const std::vector<const Drill*>& chosen, const WarmUpTask& task) {
  int all = 0;
  int prepared = 0;
  for (std::size_t n = 0; n < task.needs.size(); ++n) {
    const WarmUpNeed& need = task.needs[n];
    double seconds = 0;
    for (const Drill* drill : chosen)
      if (prepares(*drill, need)) seconds += drill->length.si();
    all += need.weight;
    if (need.kind == NeedKind::Joint ? seconds >= joint_s : seconds > 0)
      prepared += need.weight;
    else
      warm_up.unprepared.push_back(static_cast<int>(n));
  }
  warm_up.prepared_share = all > 0 ? static_cast<double>(prepared) / all : 1;
  for (const Drill* drill : chosen) warm_up.planned += drill->length;
  warm_up.floor_visits = visits(warm_up.steps);
}

}  // namespace

const domain::Limit* limit_against(const Drill& drill, const std::vector<domain::Limit>& limits) {
  const auto found = std::ranges::find_if(limits, [&](const domain::Limit& limit) {
    return std::ranges::find(drill.avoid_with, limit.limit) != drill.avoid_with.end();
  });
  return found == limits.end() ? nullptr : &*found;
}

std::vector<Drill> drills_for(const std::vector<Drill>& drills, const WarmUpRoom& room) {
  std::vector<Drill> usable;
  for (const Drill& drill : drills) {
    const bool kit = std::ranges::all_of(drill.equipment, [&](const std::string& id) {
      const auto out = room.out.find(domain::EquipmentId{id});
      return out != room.out.end() && 2 * out->second >= room.people;
    });
    const bool space = !room.floor || drill.space * static_cast<double>(room.people) <= *room.floor;
    if (kit && space && drill.phase != "recover") usable.push_back(drill);
  }
  return usable;
}

std::vector<Drill> drills_without_kit(const std::vector<Drill>& drills) {
  std::vector<Drill> usable;
  for (const Drill& drill : drills) {
    if (drill.phase == "recover" || drill.home_kind == "drill") continue;
    Drill& own = usable.emplace_back(drill);
    own.equipment.clear();
    if (drill.home_kind == "text") own.how = drill.home_text;
  }
  return usable;
}

base::Result<domain::WarmUp> choose_warm_up(const WarmUpTask& task, domain::Solver& solver) {
  Model phased(task);
  phased.in_phases();
  auto chosen = solver.solve(phased.model(), task.solve);
  // Short of time or drills the phases give way: something is better than nothing.
  if (!chosen && chosen.error().code == base::ErrorCode::Infeasible)
    chosen = solver.solve(Model(task).model(), task.solve);
  if (!chosen) return tl::unexpected(chosen.error());

  std::vector<const Drill*> drills;
  for (std::size_t d = 0; d < task.drills.size(); ++d)
    if (chosen->values[d] > 0.5) drills.push_back(&task.drills[d]);
  std::ranges::stable_sort(drills, std::ranges::less{}, [](const Drill* drill) { return place_of(*drill); });

  domain::WarmUp warm_up;
  warm_up.asked = task.length;
  warm_up.proven = chosen->proven;
  for (const Drill* drill : drills) warm_up.steps.push_back(step_of(*drill, task));
  sum_up(warm_up, drills, task);
  return warm_up;
}

}  // namespace repwright::advice
