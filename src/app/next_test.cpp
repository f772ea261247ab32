#include "app/next_test.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "body/forecast_line.hpp"
#include "body/marks.hpp"
#include "domain/people_search.hpp"
#include "rehearsal/luck.hpp"
#include "store/mark_column.hpp"

namespace repwright::app {
namespace {

using domain::Mark;
using domain::MovementId;
using domain::PieceOutcome;
using domain::TestOffer;

/// A score of nothing still has a logarithm.
constexpr double least_score = .5;
constexpr std::size_t most_tests = 3;
constexpr double least_gain = .02;

/// A test and the minutes that it costs in a class, the way in and the rest after it included: common
/// practice, no source.
struct Candidate {
  Mark mark;
  double minutes = 0;
};

std::vector<Candidate> usual_tests() {
  using base::kilogram, base::metre, base::minute;
  return {{domain::TimedDistance{MovementId{"run"}, 400 * metre, {}}, 4},
          {domain::TimedDistance{MovementId{"run"}, 1600 * metre, {}}, 12},
          {domain::BestSet{MovementId{"push-up"}, 0, false}, 3},
          {domain::BestSet{MovementId{"pull-up"}, 0, false}, 3},
          {domain::BestSet{MovementId{"air-squat"}, 0, false}, 5},
          {domain::BestSet{MovementId{"sit-up"}, 0, false}, 4},
          {domain::TimedReps{MovementId{"push-up"}, 2 * minute, 0}, 4},
          {domain::TimedReps{MovementId{"air-squat"}, 2 * minute, 0}, 4},
          {domain::TimedReps{MovementId{"sit-up"}, 2 * minute, 0}, 4},
          {domain::BestLoad{MovementId{"bb-back-squat"}, 0 * kilogram, 3}, 15},
          {domain::BestLoad{MovementId{"bb-deadlift"}, 0 * kilogram, 3}, 15},
          {domain::BestLoad{MovementId{"bb-press"}, 0 * kilogram, 3}, 12}};
}

const MovementId* movement_of(const Mark& mark) {
  return std::visit(
      [](const auto& each) -> const MovementId* {
        if constexpr (requires { each.movement; }) return &each.movement;
        return nullptr;
      },
      mark);
}

/// The mark with that much seen; only how sure it is depends on it.
Mark with(const Mark& mark, double seen) {
  Mark out = mark;
  if (auto* run = std::get_if<domain::TimedDistance>(&out)) run->time = seen * base::second;
  if (auto* set = std::get_if<domain::BestSet>(&out)) set->reps = std::max(1.0, seen);
  if (auto* reps = std::get_if<domain::TimedReps>(&out)) reps->reps = std::max(1.0, seen);
  if (auto* load = std::get_if<domain::BestLoad>(&out)) load->load = seen * base::kilogram;
  return out;
}

/// Whether the person may do it in this hall on this day.
bool open_to(const domain::Person& person, const ClassRequest& request, const MovementId& id) {
  const domain::Movement* movement = request.gym.catalogue.find(id);
  if (movement == nullptr) return false;
  for (const domain::Limit& limit : domain::limits_on(person, request.gym_class.date))
    if (std::ranges::find(movement->avoid_with, limit.limit) != movement->avoid_with.end()) return false;
  return std::ranges::none_of(movement->equipment, [&](const domain::EquipmentId& needed) {
    return request.gym.hall.places_of(needed).value_or(1) < 1;
  });
}

/// A forecast as a line through the normals behind the drawn bodies.
struct Forecast {
  body::Normals slope{};
  double day_sd = 0;  // of the logarithm

  double variance() const {
    return std::inner_product(slope.begin(), slope.end(), slope.begin(), day_sd * day_sd);
  }
};

/// How far a measurement would bring the variance of the forecast down.
double variance_told(const Forecast& forecast, const body::BodyEstimate& known,
                     const body::Measurement<body::parameter_count>& measurement) {
  const body::Normals gradient = body::gaussian_detail::gradient(measurement, known.parameters.mean);
  body::Normals by_normals{};  // the same slope, by the normals behind a draw
  for (std::size_t i = 0; i < body::parameter_count; ++i)
    for (std::size_t j = 0; j <= i; ++j) by_normals.at(j) += known.spread.at(i).at(j) * gradient.at(i);
  const double spread = std::inner_product(by_normals.begin(), by_normals.end(), by_normals.begin(),
                                           measurement.sd * measurement.sd);
  const double shared = std::inner_product(by_normals.begin(), by_normals.end(), forecast.slope.begin(), 0.0);
  return shared * shared / spread;
}

std::optional<double> told_by(const Mark& mark, const Forecast& forecast, const body::BodyEstimate& known,
                              const GymKnowledge& gym) {
  const std::array one{with(mark, 1)};
  const auto unsure = body::measurements({one.begin(), one.end()}, known.pull, gym.catalogue, gym.constants);
  if (unsure.empty()) return std::nullopt;
  const double likely = std::exp(unsure.front().predict(known.parameters.mean));
  const auto sure = body::measurements({with(mark, likely)}, known.pull, gym.catalogue, gym.constants);
  return variance_told(forecast, known, sure.front());
}

std::size_t widest(const std::vector<PieceOutcome>& pieces) {
  const auto width = [](const PieceOutcome& piece) {
    return piece.score.sd / std::max(least_score, piece.score.p50);
  };
  return static_cast<std::size_t>(std::ranges::max_element(pieces, {}, width) - pieces.begin());
}

Forecast forecast_of(const ClassRequest& request, const ClassRehearsal& played, std::size_t person,
                     const PieceOutcome& piece, const body::BodyEstimate& known) {
  std::vector<body::Normals> drawn;
  std::vector<double> forecasts;
  for (const domain::Draw& draw : played.rehearsal.draws) {
    if (draw.person != static_cast<int>(person) || draw.piece != piece.piece) continue;
    drawn.push_back(body::draw_told(known, request.seed, static_cast<std::uint64_t>(draw.run),
                                    rehearsal::person_key(played.people[person].id), request.gym.constants)
                        .normals);
    forecasts.push_back(std::log(std::max(least_score, draw.score)));
  }
  const double middle = std::max(least_score, piece.score.p50);
  return {.slope = body::line_near(drawn, forecasts, std::log(middle)).slope,
          .day_sd = piece.sd_day / middle};
}

struct Setting {
  const ClassRequest& request;
  const body::BodyEstimate& known;
};

std::vector<TestOffer> offers_of(const domain::Person& person, const PieceOutcome& piece,
                                 const Forecast& forecast, const Setting& setting) {
  std::vector<TestOffer> offers;
  for (const auto& [mark, minutes] : usual_tests()) {
    if (!open_to(person, setting.request, *movement_of(mark))) continue;
    const auto told = told_by(mark, forecast, setting.known, setting.request.gym);
    if (!told) continue;
    const double left = std::sqrt(std::max(0.0, 1 - *told / forecast.variance()));
    if (1 - left < least_gain) continue;
    const auto nearer = [&](double end) { return piece.score.p50 + left * (end - piece.score.p50); };
    offers.push_back({store::write_mark_header(mark), minutes, 1 - left, nearer(piece.score.p10),
                      nearer(piece.score.p90)});
  }
  std::ranges::stable_sort(offers, std::ranges::greater{}, &TestOffer::narrower);
  offers.resize(std::min(offers.size(), most_tests));
  return offers;
}

}  // namespace

base::Result<domain::TestOffers> next_tests(const ClassRequest& request, const domain::PersonId& person) {
  ClassRequest with_draws = request;
  with_draws.keep_draws = true;
  const auto gathered = gather(with_draws);
  if (!gathered) return tl::unexpected(gathered.error());
  const domain::Person* who = domain::find_person(gathered->people, person);
  if (who == nullptr)
    return base::failure(base::ErrorCode::NotFound, "`" + person.text + "` is not in the class");
  const auto played = rehearse_class(with_draws, *gathered);
  if (!played) return tl::unexpected(played.error());
  const auto at = static_cast<std::size_t>(who - gathered->people.data());
  const auto& pieces = played->rehearsal.people[at].pieces;
  if (pieces.empty()) return base::failure(base::ErrorCode::Invalid, "nothing on the board is scored");
  const PieceOutcome& piece = pieces[widest(pieces)];
  const Forecast forecast = forecast_of(request, *played, at, piece, gathered->estimates[at]);

  domain::TestOffers out;
  out.person = person;
  out.name = who->name;
  out.piece_name = played->rehearsal.piece_names[static_cast<std::size_t>(piece.piece)];
  out.piece = piece;
  out.piece.steps.clear();
  out.day_share = forecast.variance() > 0 ? forecast.day_sd * forecast.day_sd / forecast.variance() : 1;
  out.tests = offers_of(*who, piece, forecast, {request, gathered->estimates[at]});
  return out;
}

}  // namespace repwright::app
