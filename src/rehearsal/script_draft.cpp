#include "rehearsal/script_draft.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <variant>

#include "base/require.hpp"
#include "body/effort.hpp"
#include "rehearsal/ability.hpp"
#include "rehearsal/paces.hpp"
#include "rehearsal/score_rules.hpp"

namespace repwright::rehearsal {

namespace {

constexpr double endless_amount = std::numeric_limits<double>::infinity();
/// Getting into and out of most things is in the person's own transition; only more than this is on top.
constexpr double usual_on_off = 4;

bool covers_ground(const domain::Movement& movement) {
  return movement.category == "run";
}

/// The most of the range that leaves one rep, never less than its lower end.
double within(const domain::Range& range, double best) {
  return std::clamp(std::floor(best) - 1, range.min, range.max);
}

struct OneSet {
  double count = 0;
  std::optional<int> short_of;  // a set to failure, so many short
};

OneSet of_list(const domain::PerSet& sets, int round) {
  if (sets.amounts.empty()) return {};
  const auto at = std::min(static_cast<std::size_t>(std::max(0, round)), sets.amounts.size() - 1);
  const domain::SetAmount& set = sets.amounts[at];
  if (const auto* count = std::get_if<double>(&set)) return {*count, std::nullopt};
  if (const auto* open = std::get_if<domain::AtLeast>(&set)) return {open->count, 1};
  return {0, std::get<domain::Max>(set).short_of};
}

OneSet one_set(const domain::Amount& amount, int round, double best) {
  if (const auto* count = std::get_if<double>(&amount)) return {*count, std::nullopt};
  if (const auto* list = std::get_if<domain::PerSet>(&amount)) return of_list(*list, round);
  if (const auto* climb = std::get_if<domain::Climb>(&amount))
    return {std::max(0.0, climb->start + climb->step * round), std::nullopt};
  if (const auto* range = std::get_if<domain::Range>(&amount)) return {within(*range, best), std::nullopt};
  if (const auto* open = std::get_if<domain::AtLeast>(&amount)) return {open->count, 1};
  if (const auto* most = std::get_if<domain::Max>(&amount)) return {0, most->short_of};
  return {};
}

}  // namespace

const domain::Movement& unknown_movement() {
  static const domain::Movement movement = [] {
    domain::Movement made;
    made.patterns = {"squat"};
    made.pace = {{domain::Unit::Reps, {2, 3}},
                 {domain::Unit::Metres, {0.6, 0.8}},
                 {domain::Unit::Kilocalories, {3.5, 5}},
                 {domain::Unit::Seconds, {1, 1}}};
    made.on_off = 4 * base::second;
    return made;
  }();
  return movement;
}

ScriptDraft::ScriptDraft(const PieceContext& context, int person) : context_(context), person_(person) {
  script_.score = context.block.score.value_or(domain::Score::None);
}

const domain::FittedItem& ScriptDraft::fitted(const domain::Item& item) const {
  const auto& items = context_.request.fitted.people[static_cast<std::size_t>(person_)].items;
  const auto at = static_cast<std::size_t>(item.step.index);
  base::require(item.step.index >= 0 && at < items.size(), "every line of the board is fitted");
  return items[at];
}

std::optional<int> ScriptDraft::level() const {
  return context_.request.fitted.people[static_cast<std::size_t>(person_)].level;
}

std::optional<int> ScriptDraft::own_rounds() const {
  const auto& rounds = context_.request.fitted.people[static_cast<std::size_t>(person_)].rounds;
  const auto own = rounds.find(context_.block.id);
  return own == rounds.end() ? std::nullopt : std::optional(own->second);
}

int ScriptDraft::add(Op op) {
  script_.ops.push_back(op);
  return here() - 1;
}

void ScriptDraft::rest(double seconds) {
  if (seconds > 0) add({.kind = OpKind::Rest, .amount = seconds});
}

int ScriptDraft::deadline(std::optional<double> seconds) {
  return seconds ? add({.kind = OpKind::Deadline, .amount = *seconds}) : -1;
}

const domain::Movement& ScriptDraft::movement_of(const domain::FittedItem& fitted) const {
  const domain::Movement* movement = context_.request.catalogue.find(fitted.movement);
  return movement ? *movement : unknown_movement();
}

double ScriptDraft::load_of(const domain::FittedItem& fitted, int set) const {
  if (!fitted.set_loads.empty()) {
    const auto at = std::min(static_cast<std::size_t>(std::max(0, set)), fitted.set_loads.size() - 1);
    return fitted.set_loads[at].si() * fitted.implements;
  }
  return fitted.load ? fitted.load->si() * fitted.implements : 0;
}

bool ScriptDraft::endless(const domain::Item& item) const {
  return std::holds_alternative<domain::Max>(fitted(item).amount);
}

double ScriptDraft::best_on(int task) const {
  const WriteRequest& request = context_.request;
  return body::effort_of(script_.tasks[static_cast<std::size_t>(task)].effort,
                         request.bodies[static_cast<std::size_t>(person_)], request.constants)
      .best;
}

void ScriptDraft::go_outside(Task& task, const domain::Item& item, const domain::Movement& movement) const {
  const auto at = static_cast<std::size_t>(item.step.index);
  const RouteChoice choice = at < context_.routes.size() ? context_.routes[at] : RouteChoice{};
  if (!choice.route) {
    if (!covers_ground(movement)) return;
    task.outdoors = true;
    task.door = usual_door_s;
    return;
  }
  const domain::Route& route = *choice.route;
  task.place = context_.places.place_on(route);
  task.outdoors = !route.indoor;
  task.door = route.door.si() > 0 ? route.door.si() : route.indoor ? 0 : usual_door_s;
  task.effort.climb = route.climb / route.lap;
  if (route.shape == "shuttle") task.turn_cost = turn_s / route.lap.si();
}

Task ScriptDraft::make_task(const domain::Item& item, double load) const {
  const WriteRequest& request = context_.request;
  const domain::FittedItem& line = fitted(item);
  const domain::Movement& movement = movement_of(line);
  Task task;
  task.step = line.step;
  task.movement = line.movement;
  task.unit = work_unit(movement, line.unit);
  task.effort = body::effort_spec(movement, task.unit, load, request.constants);
  task.effort.helped_set = request.helped_set;
  if (line.felt_load)
    task.effort.free_set = body::set_of_load(task.effort, request.bodies[static_cast<std::size_t>(person_)]);
  if (context_.block.vest) task.effort.extra_mass = context_.block.vest->si();
  task.counted = is_counted(context_.block, item, task.unit);
  task.score_factor = line.score_factor;
  task.set_up = std::max(0.0, movement.on_off.si() - usual_on_off);
  task.held_pace = held_pace(item, request.bodies[static_cast<std::size_t>(person_)]);
  if (task.unit == domain::Unit::Metres && (covers_ground(movement) || movement.category == "carry"))
    go_outside(task, item, movement);
  else
    task.place = context_.places.place_of(movement);
  return task;
}

int ScriptDraft::task(const domain::Item& item, double load_share, int set) {
  const domain::FittedItem& line = fitted(item);
  const double load = load_of(line, set) * load_share;
  const std::pair<int, long> key{item.step.index, std::lround(load * 1000)};
  if (const auto known = tasks_.find(key); known != tasks_.end()) return known->second;
  const int index = static_cast<int>(script_.tasks.size());
  tasks_.emplace(key, index);
  script_.tasks.push_back(make_task(item, load));
  script_.load_best = std::max(script_.load_best, load);
  const auto other_task = [&](const domain::MovementId& id, domain::Unit unit) {
    const domain::Movement* movement = context_.request.catalogue.find(id);
    if (!movement) return -1;
    const Task& own = script_.tasks[static_cast<std::size_t>(index)];
    Task other;
    other.step = own.step;
    other.movement = id;
    other.unit = work_unit(*movement, unit);
    other.effort = body::effort_spec(*movement, other.unit, 0, context_.request.constants);
    other.effort.extra_mass = own.effort.extra_mass;
    other.counted = own.counted;
    other.score_factor = own.score_factor;
    other.set_up = std::max(0.0, movement->on_off.si() - usual_on_off);
    other.place = context_.places.place_of(*movement);
    script_.tasks.push_back(other);
    return static_cast<int>(script_.tasks.size()) - 1;
  };
  const domain::Movement* second = context_.request.catalogue.find(line.second_station);
  const domain::Unit own_unit = script_.tasks[static_cast<std::size_t>(index)].unit;
  // So many metres are not so many reps: a second station is for the same count.
  if (second && work_unit(*second, line.unit) == own_unit) {
    const int other = other_task(line.second_station, line.unit);
    script_.tasks[static_cast<std::size_t>(index)].alternative = other;
  }
  if (!line.gate.empty()) {
    const int gate = other_task(line.gate, domain::Unit::Seconds);
    script_.tasks[static_cast<std::size_t>(index)].gate = gate;
    if (gate >= 0) script_.tasks[static_cast<std::size_t>(gate)].counted = false;
  }
  return index;
}

double ScriptDraft::units(const domain::Item& item, const WorkStyle& style) const {
  const domain::FittedItem& line = fitted(item);
  const domain::Movement& movement = movement_of(line);
  if (style.by_the_clock) return endless_amount;
  const OneSet set = one_set(line.amount, style.round, 1e9);
  if (set.short_of) return endless_amount;
  double count = set.count * (line.each_side ? 2 : 1);
  if (line.unit == domain::Unit::Seconds && !movement.pace.contains(line.unit)) {
    const auto pace = movement.pace.find(movement.default_unit);
    if (pace != movement.pace.end() && pace->second.sustained > 0)
      count = std::max(1.0, std::round(count / pace->second.sustained));
  }
  return count;
}

std::vector<Op> ScriptDraft::ops_of(const domain::Item& item, const WorkStyle& style) {
  const domain::FittedItem& line = fitted(item);
  if (const auto* none = std::get_if<double>(&line.amount); none && *none <= 0) return {};
  const int index = task(item, style.load_share, style.round);
  if (style.by_the_clock) return {{.kind = OpKind::Work, .amount = endless_amount, .task = index}};
  const OneSet set = one_set(line.amount, style.round, best_on(index));
  if (set.short_of) {
    const Op once{.kind = OpKind::MaxSet, .amount = static_cast<double>(*set.short_of), .task = index};
    return line.each_side ? std::vector<Op>{once, once} : std::vector<Op>{once};
  }
  double count = units(item, style);
  if (std::holds_alternative<domain::Range>(line.amount)) count = set.count * (line.each_side ? 2 : 1);
  if (count <= 0) return {};
  return {{.kind = OpKind::Work, .amount = count, .task = index}};
}

void ScriptDraft::work(const domain::Item& item, const WorkStyle& style) {
  for (const Op& op : ops_of(item, style)) add(op);
}

std::vector<Op> ScriptDraft::side_work(const std::vector<domain::Item>& items) {
  std::vector<Op> ops;
  for (const domain::Item& item : items)
    for (const Op& op : ops_of(item, {})) {
      script_.tasks[static_cast<std::size_t>(op.task)].counted = false;
      ops.push_back(op);
    }
  return ops;
}

}  // namespace repwright::rehearsal
