#include "app/warm_up_class.hpp"

#include <algorithm>
#include <map>
#include <string>

#include "advice/warm_up.hpp"
#include "advice/warm_up_needs.hpp"
#include "app/hall_notes.hpp"
#include "app/who_comes.hpp"
#include "base/clock_text.hpp"
#include "rehearsal/routes.hpp"

namespace repwright::app {
namespace {

constexpr base::Duration usual_length = 10 * base::minute;
constexpr base::Duration late_length = 90 * base::second;
constexpr int enough = 10'000;  // of what nobody counts

/// Where a lap or a stride is run, as drills name it.
const domain::EquipmentId course{"course"};

std::optional<base::Duration> length_on_board(const ClassRequest& request) {
  const timetable::Timetable planned = timetable::lay_out(
      request.reading.board, request.gym_class, {.last_rest_counts = request.gym.house.last_rest_counts});
  const auto box = std::ranges::find_if(planned.boxes, [](const timetable::Box& one) {
    return one.kind == timetable::BoxKind::WarmUp && one.planned && one.planned->si() > 0;
  });
  return box == planned.boxes.end() ? std::nullopt : box->planned;
}

/// Whether a route out of doors is open: none is promised that the hall does not list.
bool runs_outside(const ClassRequest& request) {
  const auto choice =
      rehearsal::choose_route(request.gym.hall, request.gym_class, {.distance = 100 * base::metre});
  return choice.route != nullptr && !choice.route->indoor;
}

/// How many places of a kind there are today.
int places_today(const domain::EquipmentId& id, const ClassRequest& request) {
  if (request.gym.hall.unlimited) return enough;
  int count = request.gym.hall.places_of(id).value_or(0);
  for (const domain::PlaceFault& fault : request.gym_class.faults)
    if (fault.equipment == id) count -= fault.out;
  return std::max(0, count);
}

/// How many pieces of loose kit the shelf has, whatever their size.
int pieces_on_shelf(const domain::EquipmentId& id, const domain::Hall& hall) {
  int count = 0;
  bool listed = false;
  for (const domain::KitLot& lot : hall.kit)
    if (lot.equipment == id) {
      listed = true;
      count += lot.count;
    }
  return listed && !hall.unlimited ? count : enough;
}

/// The kit that stands in the hall anyway: what is fixed there, what today's lines use, what the coach says.
std::map<domain::EquipmentId, int> kit_out(const ClassRequest& request, const WarmUpWishes& wishes,
                                           const std::vector<const domain::Item*>& lines) {
  std::map<domain::EquipmentId, int> out;
  const auto add = [&](const domain::EquipmentId& id) {
    const domain::Equipment* equipment = request.gym.catalogue.find(id);
    if (equipment == nullptr || equipment->kind == "home") return;
    const int pieces =
        equipment->kind == "loose" ? pieces_on_shelf(id, request.gym.hall) : places_today(id, request);
    out[id] = pieces * std::max(1, equipment->people_per_unit);
  };
  for (const domain::Equipment& equipment : request.gym.catalogue.equipment) {
    if (equipment.kind == "fixed" || equipment.kind == "machine") add(equipment.id);
    if (equipment.kind == "room" && (equipment.id != course || runs_outside(request)))
      out[equipment.id] = enough;
  }
  for (const domain::Item* line : lines)
    if (const domain::Movement* movement =
            line->movement ? request.gym.catalogue.find(*line->movement) : nullptr)
      for (const domain::EquipmentId& id : movement->equipment)
        if (!out.contains(id)) add(id);
  for (const domain::EquipmentId& id : wishes.also_out) add(id);
  return out;
}

base::Result<std::vector<advice::WithLimits>> who_warms_up(const ClassRequest& request) {
  std::vector<advice::WithLimits> people;
  if (request.people.empty() && !request.heads) return people;
  const auto attendance = who_comes(request.people, request.gym_class, request.heads);
  if (!attendance) return tl::unexpected(attendance.error());
  for (const domain::Person& person : attendance->people)
    people.push_back({person.name, domain::limits_on(person, request.gym_class.date)});
  return people;
}

/// What somebody does alone beside a class that is under way: nothing that rehearses at speed.
std::vector<domain::Drill> drills_for_late(std::vector<domain::Drill> drills) {
  std::erase_if(drills, [](const domain::Drill& drill) { return drill.phase == "rehearse"; });
  return drills;
}

std::string shortest_note(const std::vector<domain::Drill>& drills, base::Duration length) {
  if (drills.empty())
    return "with this room and kit no drill of the catalogue is left: say what else is out (--kit mat, --kit "
           "band), or use the one without kit";
  const base::Duration shortest = std::ranges::min_element(drills, {}, &domain::Drill::length)->length;
  return "no drill fits into " + base::format_clock(length) + ": the shortest takes " +
         base::format_clock(shortest);
}

}  // namespace

base::Result<domain::WarmUpPlan> warm_up_class(const ClassRequest& request, const WarmUpWishes& wishes,
                                               domain::Solver& solver) {
  const auto lines = advice::lines_to_prepare(request.reading.board);
  domain::WarmUpPlan plan;
  plan.notes = hall_notes(request.gym.hall);
  plan.needs = advice::warm_up_needs(lines, request.gym.catalogue);
  if (plan.needs.empty())
    return base::failure(
        base::ErrorCode::Invalid,
        "the board has no work that a warm-up could prepare: chalk at least one line such as "
        "`10 push-ups`");
  const auto people = who_warms_up(request);
  if (!people) return tl::unexpected(people.error());

  const std::optional<base::Duration> on_board = length_on_board(request);
  if (!wishes.length && !on_board)
    plan.notes.emplace_back("the board gives the warm-up no minutes: ten are taken");
  const base::Duration length = wishes.length.value_or(on_board.value_or(usual_length));

  const advice::WarmUpRoom room{.out = kit_out(request, wishes, lines),
                                .floor = request.gym.hall.unlimited ? std::nullopt : request.gym.hall.floor,
                                .people = std::max(1, static_cast<int>(people->size()))};
  const std::vector<domain::Drill> here = advice::drills_for(request.gym.catalogue.drills, room);
  const std::vector<domain::Drill> late_here = drills_for_late(here);
  const std::vector<domain::Drill> anywhere = advice::drills_without_kit(request.gym.catalogue.drills);
  const domain::SolveLimits limits{.stop = request.stop};
  const std::vector<advice::WithLimits> nobody;

  auto together = advice::choose_warm_up({plan.needs, here, length, *people, limits}, solver);
  if (!together) return tl::unexpected(together.error());
  auto late = advice::choose_warm_up({plan.needs, late_here, late_length, nobody, limits}, solver);
  if (!late) return tl::unexpected(late.error());
  auto away = advice::choose_warm_up({plan.needs, anywhere, length, nobody, limits}, solver);
  if (!away) return tl::unexpected(away.error());
  plan.together = std::move(*together);
  plan.late = std::move(*late);
  plan.away = std::move(*away);
  if (plan.together.steps.empty()) plan.notes.push_back(shortest_note(here, length));
  return plan;
}

}  // namespace repwright::app
