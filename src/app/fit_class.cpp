#include "app/fit_class.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "advice/fits.hpp"
#include "app/fit_words.hpp"
#include "app/hall_notes.hpp"
#include "app/parallel.hpp"
#include "app/rehearse_fitted.hpp"
#include "domain/board_search.hpp"
#include "rehearsal/intent_window.hpp"
#include "rehearsal/place_table.hpp"

namespace repwright::app {
namespace {

using domain::FitMeasure;
using domain::FitWindow;

constexpr int trial_runs = 64;  // of a choice; the first of those that are shown

/// The same with every score of every run kept, of at most so many.
ClassRequest with_draws(const ClassRequest& request, int most_runs) {
  return {.reading = request.reading,
          .gym = request.gym,
          .people = request.people,
          .gym_class = request.gym_class,
          .heads = request.heads,
          .rule = request.rule,
          .seed = request.seed,
          .runs = std::min(request.runs, most_runs),
          .threads = request.threads,
          .keep_draws = true,
          .stop = request.stop,
          .bodies = request.bodies};
}

bool inside(const FitWindow& window, double value) {
  return rehearsal::miss(window, value) <= 0;
}

/// Of each person the share of runs inside the window; intervals count one by one.
std::vector<double> inside_shares(const domain::Rehearsal& rehearsal, int piece, const FitWindow& window,
                                  const domain::Block& block) {
  std::vector<double> in(rehearsal.people.size());
  std::vector<int> runs(rehearsal.people.size());
  const auto at = static_cast<std::size_t>(piece);
  for (const domain::Draw& draw : rehearsal.draws) {
    if (draw.piece != piece) continue;
    const auto p = static_cast<std::size_t>(draw.person);
    const domain::PieceOutcome& part = rehearsal.people[p].pieces[at];
    double value = draw.score;
    if (window.measure == FitMeasure::Rounds)
      value = part.reps_per_round > 0 ? draw.score / part.reps_per_round
                                      : part.rounds.value_or(domain::Spread{}).p50;
    const bool capped = window.measure == FitMeasure::Seconds && block.cap && value >= block.cap->si();
    ++runs[p];
    if (inside(window, value) && !capped) ++in[p];
  }
  for (std::size_t p = 0; p < in.size(); ++p) {
    if (window.measure != FitMeasure::SpareSeconds) {
      in[p] /= std::max(1, runs[p]);
      continue;
    }
    const std::vector<double>& laps = rehearsal.people[p].pieces[at].interval_s;
    const auto spare =
        std::ranges::count_if(laps, [&](double lap) { return inside(window, block.every->si() - lap); });
    in[p] = laps.empty() ? 0 : static_cast<double>(spare) / static_cast<double>(laps.size());
  }
  return in;
}

double mean(const std::vector<domain::PersonFit>& people, double domain::PersonFit::* share) {
  double sum = 0;
  for (const domain::PersonFit& person : people) sum += person.*share;
  return people.empty() ? 0 : sum / static_cast<double>(people.size());
}

/// The lines and rounds that are the piece's own.
void take_piece(const domain::FittedPerson& from, const domain::Block& piece, domain::FittedPerson& to) {
  if (const auto own = from.rounds.find(piece.id); own != from.rounds.end()) to.rounds.insert(*own);
  for_each_line(piece, [&](const domain::Item& item) {
    const auto at = static_cast<std::size_t>(item.step.index);
    if (item.step.index >= 0 && at < from.items.size() && at < to.items.size()) to.items[at] = from.items[at];
  });
}

std::string question_for(const domain::Person& person) {
  if (person.unknown) return "new to you: ask what to leave out today, and show the easier version first";
  if (person.marks.empty())
    return "no mark is known: taken as usual for sex and age; start with the easier step and ask after the "
           "first round";
  return "";
}

struct Pieces {
  const ClassRequest& request;
  const Gathered& gathered;
  const rehearsal::Cast& cast;
  const rehearsal::PlainFitRequest& plain;
  const ClassRehearsal& before;
};

struct IntendedPiece {
  const domain::Block& block;
  FitWindow window;
};

/// Of each the share of runs inside when they do the piece so, and everything else as before.
base::Result<std::vector<double>> inside_of(const Pieces& all, domain::FittedBoard fitted,
                                            const IntendedPiece& piece,
                                            const std::vector<domain::FittedPerson>& people, int runs) {
  const auto& [block, window] = piece;
  for (std::size_t p = 0; p < people.size(); ++p) take_piece(people[p], block, fitted.people[p]);
  const auto rehearsed = rehearse_fitted(with_draws(all.request, runs), all.gathered, std::move(fitted));
  if (!rehearsed) return tl::unexpected(rehearsed.error());
  const auto& pieces = rehearsed->timetable.pieces;
  const auto at = std::ranges::find(pieces, block.id, &timetable::Piece::block) - pieces.begin();
  return inside_shares(rehearsed->rehearsal, static_cast<int>(at), window, block);
}

/// The piece for everybody, with what was fitted before it.
base::Result<advice::FittedPiece> fit_block(const Pieces& all, const domain::FittedBoard& so_far,
                                            const IntendedPiece& piece, domain::Solver& solver) {
  const ClassRequest& request = all.request;
  const auto inside_so = [&](const std::vector<domain::FittedPerson>& people, advice::Care care) {
    const int runs = care == advice::Care::Full ? request.runs : trial_runs;
    return inside_of(all, so_far, piece, people, runs);
  };
  const advice::FitTask task{.plain = all.plain,
                             .cast = all.cast,
                             .gym_class = request.gym_class,
                             .hall = request.gym.hall,
                             .piece = piece.block,
                             .window = piece.window,
                             .inside = inside_so,
                             .solve = {.stop = request.stop}};
  return advice::fit_piece(task, solver, in_parallel(request.threads));
}

domain::PieceFit told(const Pieces& all, const IntendedPiece& intended, const std::string& name,
                      const advice::FittedPiece& fitted) {
  const auto& [block, window] = intended;
  domain::PieceFit piece{
      .piece = name, .window = window, .intent = {}, .people = {}, .short_of = fitted.short_of};
  piece.intent = rehearsal::window_words(window);
  for (std::size_t p = 0; p < fitted.people.size(); ++p) {
    const advice::ChosenFit& chosen = fitted.people[p];
    const FitWordsOf words{block, all.before.fitted.people[p], all.request.gym.catalogue};
    domain::PersonFit& person = piece.people.emplace_back();
    person.person = all.gathered.people[p].id;
    person.name = all.gathered.people[p].name;
    person.does = fit_words(words, chosen.own.fitted);
    person.expected = chosen.own.expected;
    person.expects = rehearsal::value_words(window, chosen.own.expected);
    if (chosen.easier.by > 0)
      person.easier = difference_words(words, chosen.own.fitted, chosen.easier.fitted);
    if (chosen.harder.by > 0)
      person.harder = difference_words(words, chosen.own.fitted, chosen.harder.fitted);
    if (!chosen.inside) person.clash = clash_words(words, chosen, window);
    person.question = question_for(all.gathered.people[p]);
  }
  return piece;
}

void add_shares(domain::PieceFit& piece, int at, const domain::Block& block, const domain::Rehearsal& before,
                const domain::Rehearsal& after) {
  if (!piece.window) return;
  const std::vector<double> shares_before = inside_shares(before, at, *piece.window, block);
  const std::vector<double> shares_after = inside_shares(after, at, *piece.window, block);
  for (std::size_t p = 0; p < piece.people.size(); ++p) {
    piece.people[p].inside_before = shares_before[p];
    piece.people[p].inside_after = shares_after[p];
  }
  piece.inside_before = mean(piece.people, &domain::PersonFit::inside_before);
  piece.inside_after = mean(piece.people, &domain::PersonFit::inside_after);
}

/// Why fewer are inside than as chalked, or that the board stays as it is; empty: neither.
std::string outcome_words(const domain::PieceFit& piece, const std::vector<std::string>& written_short_of) {
  constexpr double fewer = 0.005;
  constexpr double enough = 0.8;
  if (piece.inside_after < piece.inside_before - fewer) {
    if (written_short_of.empty())
      return fmt::format("{}: fewer are inside fitted than as chalked; leave the board as it is",
                         piece.piece);
    return fmt::format("{}: more would be inside as chalked, but that takes kit that is not there ({})",
                       piece.piece, fmt::join(written_short_of, ", "));
  }
  const bool all_as_written =
      std::ranges::all_of(piece.people, [](const domain::PersonFit& person) { return person.does.empty(); });
  if (piece.window && all_as_written && piece.inside_after < enough)
    return fmt::format("{}: no change for single people brings more of the class inside", piece.piece);
  return "";
}

void add_notes(domain::FitPlan& plan, const domain::Board& board, const timetable::Timetable& timetable) {
  bool effort = false;
  bool none = true;
  for (std::size_t i = 0; i < plan.pieces.size(); ++i) {
    const domain::Block* block = domain::find_block(board, timetable.pieces[i].block);
    effort = effort || (block->intent && block->intent->effort);
    none = none && !plan.pieces[i].window;
  }
  if (effort)
    plan.notes.emplace_back(
        "an intended RPE is kept for people: a rehearsal knows times and counts, not how hard it feels");
  if (none)
    plan.notes.emplace_back(
        "the board intends nothing that could be fitted to: chalk a line such as `intent 10-14 min` or "
        "`intent 4+ "
        "rounds` below a piece; everybody does the plain version");
}

}  // namespace

base::Result<ClassFit> fit_class(const ClassRequest& request, domain::Solver& solver) {
  const auto gathered = gather(request);
  if (!gathered) return tl::unexpected(gathered.error());
  const auto before = rehearse_class(with_draws(request, request.runs), *gathered);
  if (!before) return tl::unexpected(before.error());
  const rehearsal::Cast cast = cast_of(request, *gathered);
  const rehearsal::PlainFitRequest plain{.board = request.reading.board,
                                         .catalogue = request.gym.catalogue,
                                         .house = request.gym.house,
                                         .people = gathered->people,
                                         .bodies = cast.median,
                                         .constants = request.gym.constants,
                                         .date = request.gym_class.date,
                                         .rule = request.rule,
                                         .hall = &request.gym.hall,
                                         .gone = rehearsal::kinds_gone(request.gym.hall, request.gym_class)};
  ClassFit result;
  result.fitted = before->fitted;
  result.plan.notes = hall_notes(request.gym.hall, before->rehearsal);
  const Pieces all{request, *gathered, cast, plain, *before};
  std::vector<std::vector<std::string>> written_short_of;
  for (const timetable::Piece& piece : before->timetable.pieces) {
    const domain::Block& block = *domain::find_block(request.reading.board, piece.block);
    domain::PieceFit& shown = result.plan.pieces.emplace_back();
    shown.piece = piece.name;
    written_short_of.emplace_back();
    const auto window = advice::window_of(block);
    if (!window) continue;
    const IntendedPiece intended{block, *window};
    const auto fitted = fit_block(all, result.fitted, intended, solver);
    if (!fitted) return tl::unexpected(fitted.error());
    for (std::size_t p = 0; p < fitted->people.size(); ++p)
      take_piece(fitted->people[p].own.fitted, block, result.fitted.people[p]);
    shown = told(all, intended, piece.name, *fitted);
    written_short_of.back() = fitted->written_short_of;
  }
  ClassRequest last = with_draws(request, request.runs);
  last.stop = {};  // whoever stopped the search still sees what its best comes to
  const auto after = rehearse_fitted(last, *gathered, result.fitted);
  if (!after) return tl::unexpected(after.error());
  for (std::size_t i = 0; i < result.plan.pieces.size(); ++i) {
    domain::PieceFit& shown = result.plan.pieces[i];
    const domain::Block& block =
        *domain::find_block(request.reading.board, before->timetable.pieces[i].block);
    add_shares(shown, static_cast<int>(i), block, before->rehearsal, after->rehearsal);
    if (std::string words = outcome_words(shown, written_short_of[i]); !words.empty())
      result.plan.notes.push_back(std::move(words));
  }
  add_notes(result.plan, request.reading.board, before->timetable);
  return result;
}

}  // namespace repwright::app
