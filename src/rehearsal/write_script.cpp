#include "rehearsal/write_script.hpp"
#include "domain/board_search.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include <fmt/format.h>

#include "base/require.hpp"
#include "rehearsal/board_items.hpp"
#include "rehearsal/groups.hpp"
#include "rehearsal/plan_findings.hpp"
#include "rehearsal/script_draft.hpp"
#include "rehearsal/write_piece.hpp"

namespace repwright::rehearsal {

namespace {

using domain::Block;
using domain::BlockKind;

/// From this distance on a carry takes a route instead of a lane in the hall, m.
constexpr double long_carry_m = 100;

/// The blocks that are really played, with their lines.
std::vector<ItemAt> played_lines(const WriteRequest& request) {
  std::vector<ItemAt> lines = items_by_step(request.fitted.board);
  for (ItemAt& line : lines)
    if (line.item && line.block->kind == BlockKind::Optional) line = {};
  return lines;
}

/// The routes of all lines that cover ground, by step.
std::vector<RouteChoice> choose_routes(const WriteRequest& request) {
  const std::vector<ItemAt> lines = played_lines(request);
  std::vector<RouteChoice> routes(lines.size());
  for (std::size_t step = 0; step < lines.size(); ++step) {
    RouteWish wish;
    for (const domain::FittedPerson& person : request.fitted.people) {
      const domain::FittedItem& own = person.items[step];
      const domain::Movement* movement = request.catalogue.find(own.movement);
      if (!lines[step].item || !movement || own.unit != domain::Unit::Metres) continue;
      const auto* metres = std::get_if<double>(&own.amount);
      const bool carry = movement->category == "carry";
      if (movement->category != "run" && !(carry && metres && *metres >= long_carry_m)) continue;
      if (wish.people++ == 0) wish = {base::Length::from_si(metres ? *metres : 400), 1, carry};
    }
    if (wish.people > 0 && !request.hall.routes.empty())
      routes[step] = choose_route(request.hall, request.gym_class, wish);
  }
  return routes;
}

/// How many people use each kind of kit somewhere in the class.
std::map<domain::EquipmentId, int> users_of_kit(const WriteRequest& request) {
  std::map<domain::EquipmentId, int> users;
  for (const domain::FittedPerson& person : request.fitted.people) {
    std::vector<domain::EquipmentId> own;
    for (const domain::FittedItem& line : person.items)
      if (const domain::Movement* movement = request.catalogue.find(line.movement))
        own.insert(own.end(), movement->equipment.begin(), movement->equipment.end());
    std::ranges::sort(own);
    const auto twice = std::ranges::unique(own);
    own.erase(twice.begin(), twice.end());
    for (const domain::EquipmentId& id : own) ++users[id];
  }
  return users;
}

std::vector<double> late_seconds(const WriteRequest& request) {
  std::vector<double> late;
  for (const domain::FittedPerson& person : request.fitted.people) {
    const auto& arrivals = request.gym_class.arrivals;
    const auto at = std::ranges::find(arrivals, person.person, &domain::Arrival::person);
    late.push_back(at == arrivals.end() ? 0 : at->late.si());
  }
  return late;
}

void write_one(ScriptDraft& draft, const Seat& seat, Team* team) {
  const Block& block = draft.context().block;
  if (block.interrupt) {
    Duty duty{block.interrupt->every.si(), block.interrupt->first.si(), {}};
    duty.ops = draft.side_work(block.interrupt->items);
    if (!duty.ops.empty() && duty.every > 0) draft.script().duty = std::move(duty);
  }
  draft.script().penalty = draft.side_work(block.penalty);
  draft.script().step_rounds = std::max(1, block.rounds.value_or(listed_rounds(block.items)));
  switch (block.kind) {
    case BlockKind::Every:
      write_every(draft, seat);
      break;
    case BlockKind::Intervals:
      write_intervals(draft);
      break;
    case BlockKind::Circuit:
      write_circuit(draft, seat);
      break;
    case BlockKind::Sets:
    case BlockKind::Superset:
      write_sets(draft);
      break;
    case BlockKind::Build:
      write_build(draft);
      break;
    case BlockKind::Accumulate:
      write_accumulate(draft);
      break;
    case BlockKind::Partner:
      base::require(team != nullptr, "everybody in a team piece has a team");
      write_partner(draft, seat, *team);
      break;
    case BlockKind::Relay:
      write_relay(draft);
      break;
    default:
      write_rounds(draft, seat);
      break;
  }
  draft.add({.kind = OpKind::End});
}

class PieceWriter {
 public:
  PieceWriter(const PieceContext& context, const std::vector<int>& order) : context_(context), order_(order) {
    out_.heats = context.piece.heats;
    out_.scripts.resize(order.size());
    out_.keep_place_while_resting =
        context.request.house.keep_place_while_resting || context.block.keep_place;
  }

  ScriptedPiece write() {
    const bool teams = context_.block.kind == BlockKind::Partner || context_.block.kind == BlockKind::Relay;
    if (teams)
      write_teams();
    else
      for (std::size_t rank = 0; rank < order_.size(); ++rank) write_alone(static_cast<int>(rank));
    out_.heat_change = out_.heats > 1 ? timetable::heat_change.si() : 0;
    return std::move(out_);
  }

 private:
  void write_alone(int rank) {
    Seat seat;
    const Standing standing = standing_of(rank, out_.heats);
    seat.in_heat = standing.place;
    write_script(order_[static_cast<std::size_t>(rank)], seat, standing.heat, -1);
  }

  void write_teams() {
    out_.teams = make_teams(static_cast<int>(order_.size()), context_.block.team_sizes);
    const int count = static_cast<int>(out_.teams.size());
    out_.heats = heats_of(context_.block, out_.heats, count);
    for (int index = 0; index < count; ++index) {
      Team& team = out_.teams[static_cast<std::size_t>(index)];
      for (int& member : team.people) member = order_[static_cast<std::size_t>(member)];
      Seat seat;
      const Standing standing = standing_of(index, out_.heats);
      seat.in_heat = standing.place;
      seat.team_size = static_cast<int>(team.people.size());
      for (const int person : team.people) {
        write_script(person, seat, standing.heat, index);
        ++seat.member;
      }
    }
  }

  void write_script(int person, const Seat& seat, int heat, int team) {
    ScriptDraft draft(context_, person);
    write_one(draft, seat, team < 0 ? nullptr : &out_.teams[static_cast<std::size_t>(team)]);
    Script& script = draft.script();
    script.heat = heat;
    script.team = team;
    if (context_.piece.stagger) {
      const int wave = seat.in_heat / std::max(1, context_.piece.stagger->people);
      script.start = wave * context_.piece.stagger->every.si();
    }
    out_.scripts[static_cast<std::size_t>(person)] = std::move(script);
  }

  const PieceContext& context_;
  const std::vector<int>& order_;
  ScriptedPiece out_;
};

void add_notes(const WriteRequest& request, std::vector<std::string>& notes) {
  const auto tiered = [](const ItemAt& line) {
    return line.item &&
           ((line.item->loads && !line.item->loads->by_level && line.item->loads->masses.size() > 1) ||
            std::holds_alternative<domain::Tiers>(line.item->amount));
  };
  const auto unsaid = std::ranges::count(request.people, domain::Sex::Unsaid, &domain::Person::sex);
  if (unsaid > 0 && request.house.tiers == domain::TierRule::BySex &&
      std::ranges::any_of(played_lines(request), tiered))
    notes.push_back(fmt::format("{} with neither m nor f: the second of a pair of loads or counts.", unsaid));
}

template <class T>
void append(std::vector<T>& all, std::vector<T> more) {
  std::ranges::move(more, std::back_inserter(all));
}

}  // namespace

WrittenFloor write_scripts(const WriteRequest& request) {
  base::require(
      request.people.size() == request.fitted.people.size() && request.bodies.size() == request.people.size(),
      "every person has a fit and a body");
  WrittenFloor written;
  written.plan.late = late_seconds(request);
  const std::vector<int> order = arrival_order(written.plan.late);
  const std::vector<RouteChoice> routes = choose_routes(request);
  PlaceTable places(request.catalogue, request.hall, request.gym_class,
                    displaced_places(request.catalogue, request.hall, users_of_kit(request)));
  for (std::size_t i = 0; i < request.timetable.pieces.size(); ++i) {
    const timetable::Piece& piece = request.timetable.pieces[i];
    const Block* block = domain::find_block(request.fitted.board, piece.block);
    base::require(block != nullptr, "every piece of a timetable stands on its board");
    const PieceContext context{request, *block, piece, places, routes, block->odd_start};
    ScriptedPiece scripted = PieceWriter(context, order).write();
    scripted.piece = static_cast<int>(i);
    written.plan.pieces.push_back(std::move(scripted));
  }
  written.plan.places = places.places();
  append(written.findings, swap_findings(request));
  append(written.findings, free_text_findings(request));
  append(written.findings, kit_findings(request, places.missing()));
  append(written.findings, team_findings(request));
  append(written.findings, route_findings(request, routes));
  add_notes(request, written.notes);
  return written;
}

}  // namespace repwright::rehearsal
