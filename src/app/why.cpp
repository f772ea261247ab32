#include "app/why.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "app/known_people.hpp"
#include "app/rehearse_fitted.hpp"
#include "body/effort.hpp"
#include "body/forecast_line.hpp"
#include "domain/people_search.hpp"
#include "domain/spoken.hpp"
#include "rehearsal/luck.hpp"
#include "store/mark_column.hpp"

namespace repwright::app {
namespace {

using domain::Limiter;
using domain::MovingScore;
using domain::PieceOutcome;
using domain::WhyStep;

/// A score of nothing still has a logarithm.
constexpr double least_score = .5;
constexpr std::size_t most_scores = 3;

/// What a muscle group that needs rest, a queue or the work itself takes of a line before it is what limits.
constexpr double long_wait = .10, long_rest = .15;

Limiter limiter_of(body::Group group) {
  constexpr std::array limiters{Limiter::Push, Limiter::Pull, Limiter::Legs, Limiter::Core, Limiter::Grip};
  return limiters.at(body::index_of(group));
}

Limiter limiter_of(const WhyStep& step, const domain::Movement* movement, const GymKnowledge& gym) {
  const double all = step.work_s + step.rest_s + step.wait_s;
  if (step.wait_s > long_wait * all && step.wait_s >= step.rest_s) return Limiter::Queue;
  if (movement == nullptr) return Limiter::Pace;
  const body::EffortSpec spec = body::effort_spec(*movement, movement->default_unit, 0, gym.constants);
  if (step.rest_s > long_rest * all) return limiter_of(spec.group);
  const bool engine = spec.kind == body::Effort::Kind::Run || spec.kind == body::Effort::Kind::Machine;
  return engine ? Limiter::Engine : Limiter::Pace;
}

/// All rounds of one line together.
std::vector<WhyStep> steps_of(const PieceOutcome& piece, const GymKnowledge& gym) {
  std::map<std::pair<int, domain::MovementId>, WhyStep> lines;
  for (const domain::StepTrace& trace : piece.steps) {
    WhyStep& step = lines[{trace.line, trace.version}];
    step.line = trace.line;
    step.work_s += trace.work_s * trace.share_of_runs;
    step.rest_s += trace.rest_s * trace.share_of_runs;
    step.wait_s += trace.wait_s * trace.share_of_runs;
  }
  std::vector<WhyStep> steps;
  for (auto& [key, step] : lines) {
    const domain::Movement* movement = gym.catalogue.find(key.second);
    step.version = movement != nullptr ? domain::spoken_many(*movement) : key.second.text;
    step.limiter = limiter_of(step, movement, gym);
    steps.push_back(step);
  }
  return steps;
}

const domain::PersonOutcome* outcome_of(const domain::Rehearsal& rehearsal, const domain::PersonId& person) {
  const auto at = std::ranges::find(rehearsal.people, person, &domain::PersonOutcome::person);
  return at == rehearsal.people.end() ? nullptr : &*at;
}

/// The class with everybody as known but one, who is drawn from another estimate; everybody does what they
/// were fitted with.
base::Result<ClassRehearsal> played_with(const WhyRequest& of, Gathered gathered,
                                         const body::BodyEstimate& other) {
  gathered.paces.erase(of.person);
  ClassRequest request = of.request;
  request.keep_draws = true;
  request.bodies = [&](const domain::Person& person, int run) {
    const auto at = std::ranges::find(gathered.people, person.id, &domain::Person::id);
    const auto p = static_cast<std::size_t>(at - gathered.people.begin());
    if (person.id != of.person) return drawn_body(request, gathered, p, run);
    return body::draw(other, request.seed, static_cast<std::uint64_t>(run), rehearsal::person_key(person.id),
                      request.gym.constants);
  };
  return rehearse_class(request, gathered);
}

double squared(double x) {
  return x * x;
}

/// The variance of a score's logarithm that comes from not knowing the body.
double doubt_in(const domain::Spread& score, double day_sd) {
  const double middle = std::max(least_score, score.p50);
  return std::max(0.0, squared(score.sd / middle) - squared(day_sd / middle));
}

/// How the logarithm of the first piece's score goes along with the normals behind somebody like them.
body::Normals slope_of(const WhyRequest& of, const ClassRehearsal& stranger_played,
                       const body::BodyEstimate& stranger) {
  const auto& people = stranger_played.people;
  const auto person =
      static_cast<int>(std::ranges::find(people, of.person, &domain::Person::id) - people.begin());
  std::vector<body::Normals> drawn;
  std::vector<double> forecasts;
  for (const domain::Draw& draw : stranger_played.rehearsal.draws) {
    if (draw.person != person || draw.piece != stranger_played.rehearsal.draws.front().piece) continue;
    drawn.push_back(body::draw_told(stranger, of.request.seed, static_cast<std::uint64_t>(draw.run),
                                    rehearsal::person_key(of.person), of.request.gym.constants)
                        .normals);
    forecasts.push_back(std::log(std::max(least_score, draw.score)));
  }
  if (drawn.size() < 2) return {};
  return body::line_near(drawn, forecasts, forecasts.front()).slope;
}

std::vector<MovingScore> strongest(const LearnedPerson& learned, const body::Normals& slope,
                                   const body::BodyEstimate& stranger) {
  std::vector<MovingScore> out;
  for (const TaughtBy& taught : learned.taught_by) {
    const body::Normals moved = body::whitened(stranger, taught.moved);
    out.push_back({taught.date, taught.board, taught.scores,
                   std::inner_product(moved.begin(), moved.end(), slope.begin(), 0.0)});
  }
  std::ranges::stable_sort(out, std::ranges::greater{},
                           [](const MovingScore& score) { return std::abs(score.moved); });
  out.resize(std::min(out.size(), most_scores));
  return out;
}

std::vector<std::string> marks_of(const domain::Person& person) {
  std::vector<std::string> marks;
  marks.reserve(person.marks.size());
  for (const domain::Mark& mark : person.marks)
    marks.push_back(store::write_mark_header(mark) + " " + store::write_mark_cell(mark));
  return marks;
}

std::vector<domain::WhyPiece> pieces_of(const WhyRequest& request, const ClassRehearsal& as_stranger,
                                        const ClassRehearsal& by_marks) {
  std::vector<domain::WhyPiece> out;
  const domain::Rehearsal& rehearsal = request.rehearsed.rehearsal;
  const auto& now = outcome_of(rehearsal, request.person)->pieces;
  const auto& before = outcome_of(as_stranger.rehearsal, request.person)->pieces;
  const auto& marked = outcome_of(by_marks.rehearsal, request.person)->pieces;
  for (std::size_t i = 0; i < now.size(); ++i) {
    const double doubt = doubt_in(before[i].score, before[i].sd_day);
    const double left = doubt_in(now[i].score, now[i].sd_day);
    domain::WhyPiece& piece = out.emplace_back();
    piece.name = rehearsal.piece_names[static_cast<std::size_t>(now[i].piece)];
    piece.now = now[i];
    piece.now.steps.clear();
    piece.like_them = before[i].score;
    piece.by_marks = marked[i].score;
    piece.prior_weight = doubt > 0 ? std::min(1.0, left / doubt) : 1;
    piece.steps = steps_of(now[i], request.request.gym);
  }
  return out;
}

}  // namespace

base::Result<domain::Why> why(const WhyRequest& request) {
  const domain::Person* person = domain::find_person(request.rehearsed.people, request.person);
  const domain::PersonOutcome* now = outcome_of(request.rehearsed.rehearsal, request.person);
  if (person == nullptr || now == nullptr)
    return base::failure(base::ErrorCode::NotFound, "`" + request.person.text + "` is not in the class");
  const GymKnowledge& gym = request.request.gym;
  const auto gathered = gather(request.request);
  if (!gathered) return tl::unexpected(gathered.error());
  const body::BodyEstimate stranger = without_marks(*person, gym);
  const auto as_stranger = played_with(request, *gathered, stranger);
  if (!as_stranger) return tl::unexpected(as_stranger.error());
  const auto by_marks =
      played_with(request, *gathered, body::estimate(*person, gym.catalogue, gym.constants));
  if (!by_marks) return tl::unexpected(by_marks.error());

  domain::Why out{.person = person->id,
                  .name = person->name,
                  .marks = marks_of(*person),
                  .scores = 0,
                  .pieces = pieces_of(request, *as_stranger, *by_marks),
                  .moved_most = {}};
  const auto learned = std::ranges::find(request.learning.people, person->id, &LearnedPerson::person);
  if (learned == request.learning.people.end() || learned->scores == 0) return out;
  out.scores = learned->scores;
  out.moved_most = strongest(*learned, slope_of(request, *as_stranger, stranger), stranger);
  return out;
}

}  // namespace repwright::app
