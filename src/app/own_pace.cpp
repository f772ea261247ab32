#include "app/own_pace.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "app/away_work.hpp"
#include "app/rehearse_fitted.hpp"
#include "domain/board_search.hpp"
#include "rehearsal/lone_pass.hpp"
#include "rehearsal/write_script.hpp"

namespace repwright::app {
namespace {

/// A score of nothing still has a logarithm.
constexpr double least_score = .5;

/// What changes the logarithm of a score by less than this share of the stretch's does not depend on it.
constexpr double least_response = .15;

/// A piece of today's board that the gym has scored, and under which names.
struct KnownPiece {
  std::size_t piece = 0;  // of the timetable
  domain::BlockId block;
  std::vector<std::pair<std::string, int>> scored_as;
};

bool is_for_teams(const domain::Block& piece) {
  return piece.kind == domain::BlockKind::Partner || piece.kind == domain::BlockKind::Relay;
}

std::vector<KnownPiece> known_pieces(const domain::Board& board, const timetable::Timetable& timetable,
                                     const DoneBefore& done) {
  std::vector<KnownPiece> out;
  for (std::size_t i = 0; i < timetable.pieces.size(); ++i) {
    const domain::Block* block = domain::find_block(board, timetable.pieces[i].block);
    if (block == nullptr || is_for_teams(*block)) continue;
    KnownPiece known{.piece = i, .block = block->id, .scored_as = {}};
    const domain::Block work = work_of(*block);
    for (const auto& [name, scored] : done.works)
      if (scored == work) known.scored_as.push_back(name);
    if (!known.scored_as.empty()) out.push_back(std::move(known));
  }
  return out;
}

std::optional<std::size_t> level_of(const DonePieces& done, const KnownPiece& piece,
                                    const std::string& versions) {
  for (const auto& [board, index] : piece.scored_as)
    if (const auto at = done.at.find({board, index, versions}); at != done.at.end()) return at->second;
  return std::nullopt;
}

/// What a piece is for one person: the logarithms of what they score alone at every stretch, and the ways of
/// working that it counts reps of.
struct Response {
  std::array<double, OwnPace::point_count> scores{};
  std::vector<body::EffortSpec> reps{};
};
using Responses = std::vector<std::vector<Response>>;  // [piece][person]

std::vector<body::EffortSpec> reps_of(const rehearsal::Script& script) {
  std::vector<body::EffortSpec> out;
  for (const rehearsal::Task& task : script.tasks)
    if (task.counted && task.effort.kind == body::Effort::Kind::Reps) out.push_back(task.effort);
  return out;
}

Responses responses_of(const ClassRequest& request, const Gathered& gathered,
                       const domain::FittedBoard& fitted, const timetable::Timetable& timetable) {
  rehearsal::Cast cast = cast_of(request, gathered);
  const rehearsal::WrittenFloor floor = rehearsal::write_scripts({.fitted = fitted,
                                                                  .timetable = timetable,
                                                                  .catalogue = request.gym.catalogue,
                                                                  .hall = request.gym.hall,
                                                                  .house = request.gym.house,
                                                                  .gym_class = request.gym_class,
                                                                  .people = gathered.people,
                                                                  .bodies = cast.median,
                                                                  .constants = request.gym.constants});
  Responses out(timetable.pieces.size(), std::vector<Response>(gathered.people.size()));
  for (const rehearsal::ScriptedPiece& piece : floor.plan.pieces)
    for (std::size_t p = 0; p < piece.scripts.size(); ++p)
      out.at(static_cast<std::size_t>(piece.piece)).at(p).reps = reps_of(piece.scripts[p]);
  for (std::size_t k = 0; k < OwnPace::point_count; ++k) {
    const double stretch = std::exp(OwnPace::stretches.at(k));
    cast.stretch = [stretch](domain::BlockId, int, int) { return stretch; };
    const auto parts = rehearsal::lone_pass(floor.plan, timetable, request.gym.constants, cast);
    for (std::size_t i = 0; i < parts.size(); ++i)
      for (std::size_t p = 0; p < parts[i].size(); ++p)
        out.at(static_cast<std::size_t>(floor.plan.pieces[i].piece)).at(p).scores.at(k) =
            std::log(std::max(least_score, parts[i][p].score));
  }
  return out;
}

}  // namespace

double OwnPace::stretch(const body::Normals& normals, double own) const {
  const double whole = scores_.back() - scores_.front();
  if (std::abs(whole) < least_response * (stretches.back() - stretches.front())) return 1;
  const double up = whole > 0 ? 1 : -1;
  const double wanted = up * (scores_.at(point_count / 2) + gap_.at(normals, own));
  std::size_t k = 1;
  while (k + 1 < point_count && up * scores_.at(k) < wanted) ++k;
  const double from = up * scores_.at(k - 1), to = up * scores_.at(k);
  const double share = to > from ? std::clamp((wanted - from) / (to - from), 0.0, 1.0) : .5;
  return std::exp(stretches.at(k - 1) + share * (stretches.at(k) - stretches.at(k - 1)));
}

bool OwnPace::possible_for(const body::Body& body, const body::Constants& constants) const {
  return std::ranges::all_of(
      reps_, [&](const body::EffortSpec& spec) { return body::effort_of(spec, body, constants).best >= 1; });
}

OwnPaces own_paces(const ClassRequest& request, const Gathered& gathered) {
  OwnPaces out;
  if (request.done == nullptr || request.done->people.empty()) return out;
  // Whoever is stopped by a cap does not show how slow they are.
  const domain::Board board = without_caps(request.reading.board);
  const timetable::Timetable timetable =
      timetable::lay_out(board, request.gym_class, {.last_rest_counts = request.gym.house.last_rest_counts});
  const std::vector<KnownPiece> pieces = known_pieces(request.reading.board, timetable, *request.done);
  if (pieces.empty()) return out;
  domain::FittedBoard fitted = plain_fit_of(request, gathered);
  fitted.board = board;
  std::optional<Responses> responses;
  for (std::size_t p = 0; p < gathered.people.size(); ++p) {
    const auto done = request.done->people.find(gathered.people[p].id);
    if (done == request.done->people.end()) continue;
    const std::string versions = versions_done(fitted.people[p]);
    for (const KnownPiece& piece : pieces) {
      const auto level = level_of(done->second, piece, versions);
      if (!level) continue;
      if (!responses) responses = responses_of(request, gathered, fitted, timetable);
      Response& response = (*responses)[piece.piece][p];
      out[done->first].emplace(piece.block,
                               OwnPace(body::gap_of(gathered.estimates[p], done->second.levels, *level),
                                       response.scores, std::move(response.reps)));
    }
  }
  return out;
}

}  // namespace repwright::app
