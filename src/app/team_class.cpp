#include "app/team_class.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "advice/teams.hpp"
#include "app/other_board.hpp"
#include "app/team_pace.hpp"
#include "base/statistics.hpp"
#include "base/text.hpp"
#include "domain/board_search.hpp"
#include "rehearsal/groups.hpp"

namespace repwright::app {
namespace {

using domain::Block;
using domain::BlockKind;
using domain::Board;

constexpr int team_runs = 40;
constexpr int corrections = 3;  // by what the rehearsal of the chosen teams says

bool for_teams(const Block& block) {
  return block.kind == BlockKind::Partner || block.kind == BlockKind::Relay;
}

/// The piece to make teams for, by its place in the timetable; -1 if the board has none.
int piece_of(const timetable::Timetable& timetable, const Board& board) {
  const auto is_team = [&](const timetable::Piece& piece) {
    const Block* block = domain::find_block(board, piece.block);
    return block != nullptr && for_teams(*block);
  };
  const auto found = std::ranges::find_if(timetable.pieces, is_team);
  return found == timetable.pieces.end() ? static_cast<int>(timetable.pieces.size()) - 1
                                         : static_cast<int>(found - timetable.pieces.begin());
}

bool in_turns(const Block& block) {
  const auto turns = [](const std::vector<domain::Item>& items) {
    return std::ranges::any_of(
        items, [](const domain::Item& item) { return item.mode == domain::PartnerMode::OneWorks; });
  };
  return block.kind == BlockKind::Relay || block.work_mode || turns(block.items) ||
         std::ranges::any_of(block.children, [&](const Block& child) { return turns(child.items); });
}

base::Result<int> place_of(const std::string& who, const std::vector<domain::Person>& people) {
  const auto found = std::ranges::find_if(people, [&](const domain::Person& person) {
    return person.id.text == who || base::lower(person.name) == base::lower(who);
  });
  if (found != people.end()) return static_cast<int>(found - people.begin());
  return base::failure(base::ErrorCode::NotFound,
                       fmt::format("--apart: nobody who comes is called `{}` (name or id)", who));
}

/// What teams are made for.
struct Wanted {
  const ClassRequest& request;
  domain::Solver& solver;
  const Gathered& gathered;
  const Block& block;
  std::size_t piece = 0;  // of the timetable
  int size = 2;
};

/// The people in the order of their teams.
Gathered in_team_order(const Gathered& gathered, const std::vector<advice::Team>& teams) {
  Gathered ordered;
  ordered.paces = gathered.paces;
  for (const advice::Team& team : teams)
    for (const int person : team.people) {
      const auto p = static_cast<std::size_t>(person);
      ordered.people.push_back(gathered.people[p]);
      ordered.late.push_back(gathered.late[p]);
      ordered.estimates.push_back(gathered.estimates[p]);
    }
  return ordered;
}

/// How teams do in a rehearsal.
struct TeamOutcomes {
  std::vector<double> ends;    // as `middle_ends` has them
  std::vector<double> scores;  // the middle ones
  domain::Measure measure = domain::Measure::Seconds;
  double spread = 0;
  int at_the_cap = 0;  // teams that half of the runs stop there
};

double spread_of(const std::vector<double>& ends) {
  const auto [first, last] = std::ranges::minmax(ends);
  return last - first;
}

/// The middle over the runs of what is between the first and the last team.
double spread_of(const std::vector<domain::Draw>& draws, std::size_t piece,
                 const std::vector<std::size_t>& first_of_team) {
  std::map<int, std::vector<double>> runs;
  for (const domain::Draw& draw : draws) {
    const bool counts = std::ranges::binary_search(first_of_team, static_cast<std::size_t>(draw.person));
    if (draw.piece == static_cast<int>(piece) && counts) runs[draw.run].push_back(draw.score);
  }
  std::vector<double> spreads;
  spreads.reserve(runs.size());
  for (const auto& [run, scores] : runs) spreads.push_back(spread_of(scores));
  std::ranges::sort(spreads);
  return spreads.empty() ? 0 : base::quantile_of_sorted(spreads, 0.5);
}

/// Of teams asked to work in that order.
base::Result<TeamOutcomes> outcomes(const Wanted& wanted, const std::vector<advice::Team>& teams) {
  Board board = wanted.request.reading.board;
  const advice::Team& last = teams.back();
  Block& block = *domain::find_block(board, wanted.block.id);
  if (static_cast<int>(last.people.size()) > wanted.size)
    block.odd_team = {static_cast<int>(last.people.size()), last.factor};
  const board::Reading reading = reading_of(std::move(board));
  const Gathered ordered = in_team_order(wanted.gathered, teams);
  ClassRequest request = with_board(wanted.request, reading, wanted.request.gym, team_runs);
  request.threads = wanted.request.threads;  // nothing else runs beside it
  request.keep_draws = true;
  const auto rehearsed = rehearse_class(request, ordered);
  if (!rehearsed) return tl::unexpected(rehearsed.error());
  const std::vector<double> each = middle_ends(rehearsed->rehearsal, wanted.piece, wanted.block);
  TeamOutcomes seen;
  std::vector<std::size_t> firsts;
  std::size_t first = 0;
  for (const advice::Team& team : teams) {
    const domain::PieceOutcome& outcome = rehearsed->rehearsal.people[first].pieces.at(wanted.piece);
    seen.measure = outcome.measure;
    seen.ends.push_back(each[first]);
    seen.scores.push_back(outcome.score.p50);
    if (outcome.capped >= 0.5) ++seen.at_the_cap;
    firsts.push_back(first);
    first += team.people.size();
  }
  seen.spread = spread_of(rehearsed->rehearsal.draws, wanted.piece, firsts);
  return seen;
}

double expected_spread(const std::vector<advice::Team>& teams) {
  std::vector<double> ends;
  ends.reserve(teams.size());
  for (const advice::Team& team : teams) ends.push_back(team.seconds);
  return spread_of(ends);
}

/// Teams of neighbours, as the floor makes them when nobody says otherwise.
std::vector<advice::Team> as_they_stand(const advice::TeamTask& task, const Block& block) {
  std::vector<advice::Team> teams;
  for (const rehearsal::Team& team :
       rehearsal::make_teams(static_cast<int>(task.seconds.size()), {task.size})) {
    const double factor = rehearsal::team_factor(block, static_cast<int>(team.people.size()));
    teams.push_back({team.people, advice::team_seconds(task, team.people, factor), factor});
  }
  return teams;
}

void add_notes(domain::TeamPlan& plan, const Gathered& gathered, const advice::Teams& teams,
               const Block& block) {
  const auto name = [&](int person) { return gathered.people[static_cast<std::size_t>(person)].name; };
  if (!for_teams(block))
    plan.notes.emplace_back(
        "the board has no piece for teams: these are pairs for its last piece, in turns and each with half "
        "of "
        "it, by the pace of each alone and not rehearsed");
  for (const auto& [one, other] : teams.kept_together)
    plan.notes.push_back(
        fmt::format("{} and {} are to be apart, and there is no other way to give everybody a team",
                    name(one), name(other)));
  for (const advice::Team& team : teams.teams) {
    const auto size = static_cast<int>(team.people.size());
    if (size < plan.size)
      plan.notes.push_back(fmt::format(
          "{} for a piece of teams of {}: {:g} of the shared counts, and after each set a rest as "
          "long as the set",
          size == 1 ? "one person" : fmt::format("{} people", size), plan.size, team.factor));
    if (size > plan.size && team.factor != 1)
      plan.notes.push_back(
          fmt::format("the team of {} does {:g} times the shared counts", size, team.factor));
  }
}

base::Result<std::vector<std::pair<int, int>>> places_apart(const std::vector<Apart>& apart,
                                                            const std::vector<domain::Person>& people) {
  std::vector<std::pair<int, int>> places;
  for (const Apart& two : apart) {
    const auto one = place_of(two.first, people);
    if (!one) return tl::unexpected(one.error());
    const auto other = place_of(two.second, people);
    if (!other) return tl::unexpected(other.error());
    places.emplace_back(*one, *other);
  }
  return places;
}

domain::WorkTeam shown(const advice::Team& team, const std::vector<domain::Person>& people) {
  domain::WorkTeam told{.people = {}, .names = {}, .expected = team.seconds, .factor = team.factor};
  for (const int person : team.people) {
    told.people.push_back(people[static_cast<std::size_t>(person)].id);
    told.names.push_back(people[static_cast<std::size_t>(person)].name);
  }
  return told;
}

base::Result<advice::Teams> sorted_teams(const advice::TeamTask& task, domain::Solver& solver,
                                         const std::stop_token& stop) {
  auto teams = advice::choose_teams(task, solver, {.stop = stop});
  if (teams)
    std::ranges::stable_sort(teams->teams, {}, [](const advice::Team& team) { return team.people.size(); });
  return teams;
}

/// Queues, runs and meeting each other change what the paces alone promise: whoever's team came home later
/// than promised counts as slower in the next try. The try whose teams end closest is kept.
base::Result<advice::Teams> teams_by_rehearsal(const Wanted& wanted, advice::TeamTask task,
                                               domain::TeamPlan& plan) {
  const auto before = outcomes(wanted, as_they_stand(task, wanted.block));
  if (!before) return tl::unexpected(before.error());
  plan.measure = before->measure;
  plan.spread_as_they_stand = before->spread;
  advice::Teams best;
  int at_the_cap = 0;
  for (int attempt = 0; attempt <= corrections; ++attempt) {
    auto chosen = sorted_teams(task, wanted.solver, wanted.request.stop);
    if (!chosen) return tl::unexpected(chosen.error());
    advice::Teams teams = std::move(*chosen);
    const auto seen = outcomes(wanted, teams.teams);
    if (!seen) return tl::unexpected(seen.error());
    for (std::size_t t = 0; t < teams.teams.size(); ++t) {
      const double late = seen->ends[t] / teams.teams[t].seconds;
      for (const int person : teams.teams[t].people) {
        task.seconds[static_cast<std::size_t>(person)] *= late;
        task.own[static_cast<std::size_t>(person)] *= late;
      }
      teams.teams[t].seconds = seen->scores[t];
    }
    if (attempt > 0 && seen->spread >= plan.spread) continue;
    plan.spread = seen->spread;
    at_the_cap = seen->at_the_cap;
    best = std::move(teams);
  }
  if (at_the_cap > 0)
    plan.notes.push_back(
        fmt::format("{} of {} teams are more likely than not still at work at the cap: what "
                    "is between the first and the last would be more without it",
                    at_the_cap, best.teams.size()));
  return best;
}

}  // namespace

std::optional<Apart> apart_of(const std::string& text) {
  const std::size_t plus = text.find('+');
  if (plus == std::string::npos || plus == 0 || plus + 1 == text.size()) return std::nullopt;
  return Apart{text.substr(0, plus), text.substr(plus + 1)};
}

base::Result<domain::TeamPlan> team_class(const ClassRequest& request, const std::vector<Apart>& apart,
                                          domain::Solver& solver) {
  auto gathered = gather(request);
  if (!gathered) return tl::unexpected(gathered.error());
  std::ranges::fill(gathered->late, base::Duration{});  // teams are made when all are there
  const timetable::Timetable timetable = timetable::lay_out(request.reading.board, request.gym_class);
  const int at = piece_of(timetable, request.reading.board);
  if (at < 0)
    return base::failure(base::ErrorCode::Invalid, "the board has no piece that teams could be made for");
  const timetable::Piece& piece = timetable.pieces[static_cast<std::size_t>(at)];
  const Block& block = *domain::find_block(request.reading.board, piece.block);

  domain::TeamPlan plan{.piece = piece.name, .teams = {}, .notes = {}};
  if (!block.team_sizes.empty()) plan.size = std::max(2, std::ranges::min(block.team_sizes));
  auto pace = team_pace(request, *gathered, block);
  if (!pace) return tl::unexpected(pace.error());
  auto apart_places = places_apart(apart, gathered->people);
  if (!apart_places) return tl::unexpected(apart_places.error());
  advice::TeamTask task{
      .seconds = std::move(pace->shared),
      .own = std::move(pace->own),
      .work = !for_teams(block) || in_turns(block) ? advice::TeamWork::InTurns : advice::TeamWork::Together,
      .size = plan.size,
      .odd_factor = {},
      .apart = std::move(*apart_places)};
  if (block.odd_team && block.odd_team->size == plan.size + 1) task.odd_factor = block.odd_team->factor;

  auto teams = sorted_teams(task, solver, request.stop);
  if (!teams) return tl::unexpected(teams.error());
  if (for_teams(block)) {
    teams = teams_by_rehearsal({request, solver, *gathered, block, static_cast<std::size_t>(at), plan.size},
                               task, plan);
    if (!teams) return tl::unexpected(teams.error());
  } else {
    plan.rehearsed = false;
    plan.spread = expected_spread(teams->teams);
    plan.spread_as_they_stand = expected_spread(as_they_stand(task, block));
  }
  for (const advice::Team& team : teams->teams) plan.teams.push_back(shown(team, gathered->people));
  add_notes(plan, *gathered, *teams, block);
  return plan;
}

}  // namespace repwright::app
