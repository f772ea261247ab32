#include "calibration/fit.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/random.hpp"
#include "body/estimate.hpp"
#include "calibration/agreement.hpp"
#include "calibration/least_squares.hpp"
#include "calibration/tunables.hpp"

namespace repwright::calibration {

namespace {

// What a log error is measured in: about what a regression on the piece itself leaves.
constexpr std::array<double, piece_count> usual_error{.115, .21, .26, .16, .12};
// The errors of one person over pieces go together and the model is never right: an error tells less than an
// independent one would.
constexpr double error_weight = .5;
constexpr double women_weight = 1.5;  // they are a fifth of the profiles and half of a class
constexpr double largest_error = 1.5;

void add_errors(const std::vector<Profile>& profiles, const std::vector<Forecast>& said, Vector& to) {
  for (std::size_t i = 0; i < profiles.size(); ++i)
    for (std::size_t p = 0; p < piece_count; ++p) {
      const double scored = profiles[i].score.at(p);
      if (!(scored > 0)) continue;
      const double forecast = said[i].at(p);
      const double error = forecast > 0 ? std::log(forecast / scored) : largest_error;
      const double weight = profiles[i].person.sex == domain::Sex::Female ? women_weight : 1;
      to.push_back(error_weight * weight * std::clamp(error, -largest_error, largest_error) /
                   usual_error.at(p));
    }
}

/// How far a study is missed: half a band's width outside where it should be counts as `ideal`, outside where
/// it may be as `accept`.
double missed_by(const Measured& measured) {
  constexpr double ideal = 2, accept = 20;
  const auto beyond = [&](const Band& band) {
    const double half = (measured.ideal.high - measured.ideal.low) / 2;
    return std::max({0.0, band.low - measured.value, measured.value - band.high}) / half;
  };
  const double margin = 0.1 * (measured.accept.high - measured.accept.low);
  const Band safe{measured.accept.low + margin, measured.accept.high - margin};
  return ideal * beyond(measured.ideal) + accept * beyond(safe);
}

/// How far the correlations are from no longer being those of a distribution.
double indefinite_by(const domain::BodyConstants& constants) {
  double miss = 0;
  const auto lower = body::cholesky<body::parameter_count>(body::prior_correlation(constants));
  for (std::size_t i = 0; i < body::parameter_count; ++i) miss += std::max(0.0, .3 - lower[i][i]);
  return 100 * miss;
}

}  // namespace

int part_of(int id) {
  const double u = base::unit_interval(
      base::Stream({20261125}, static_cast<std::uint64_t>(id), 0, base::Purpose::Search).bits_at(0));
  constexpr double held_share = .15;
  if (u < held_share) return held_out;
  return std::min(folds - 1, static_cast<int>((u - held_share) / (1 - held_share) * folds));
}

std::vector<Profile> those_in(const std::vector<Profile>& profiles, const std::function<bool(int part)>& in) {
  std::vector<Profile> out;
  std::ranges::copy_if(profiles, std::back_inserter(out),
                       [&](const Profile& profile) { return in(part_of(profile.id)); });
  return out;
}

namespace {

/// What is made small: how far the tunables are from where they were set by hand, the errors of `profiles`,
/// what the studies miss.
std::function<Vector(const Vector&)> residuals_of(const std::vector<Profile>& profiles,
                                                  const domain::Catalogue& catalogue,
                                                  const domain::BodyConstants& start, int threads) {
  return [&profiles, &catalogue, &start, threads](const Vector& deviations) {
    const domain::BodyConstants constants = moved(start, deviations);
    Vector out = deviations;
    add_errors(profiles, forecasts(profiles, catalogue, constants, threads), out);
    for (const Measured& measured : all_studies({catalogue, constants})) out.push_back(missed_by(measured));
    out.push_back(indefinite_by(constants));
    return out;
  };
}

/// Which of so many residuals are errors of that fold.
std::vector<bool> errors_of_fold(const std::vector<Profile>& profiles, int fold, std::size_t residuals) {
  std::vector<bool> out(tunables().size(), false);
  for (const Profile& profile : profiles)
    for (const double score : profile.score)
      if (score > 0) out.push_back(part_of(profile.id) == fold);
  out.resize(residuals, false);
  return out;
}

}  // namespace

domain::BodyConstants fitted(const std::vector<Profile>& profiles, const domain::Catalogue& catalogue,
                             const domain::BodyConstants& start, const FitPlan& plan) {
  const auto residuals = residuals_of(profiles, catalogue, start, plan.threads);
  const Vector best =
      least_squares(residuals, deviations_of(start), {.rounds = plan.rounds, .told = plan.told});
  return moved(start, best);
}

std::vector<std::vector<Forecast>> drawn(const std::vector<Profile>& profiles,
                                         const domain::Catalogue& catalogue,
                                         const domain::BodyConstants& constants, std::uint64_t draws) {
  std::vector<std::vector<Forecast>> out;
  for (std::uint64_t run = 0; run < draws; ++run)
    out.push_back(drawn_forecasts(profiles, catalogue, constants, run));
  return out;
}

domain::BodyConstants ranged(const std::vector<Profile>& profiles, const domain::Catalogue& catalogue,
                             const domain::BodyConstants& constants) {
  const auto off = [&](const domain::BodyConstants& with) {
    const auto draws = drawn(profiles, catalogue, with, 20);
    double sum = 0;
    for (std::size_t piece = 0; piece < piece_count; ++piece)
      for (const domain::Sex sex : {domain::Sex::Male, domain::Sex::Female})
        sum += std::abs(coverage(profiles, draws, piece, sex).held - .8);
    return sum;
  };
  const auto missed = [&](const domain::BodyConstants& with) {
    return std::ranges::count_if(all_studies({catalogue, with}),
                                 [](const Measured& at) { return !at.accept.holds(at.value); });
  };
  const auto allowed = missed(constants);
  domain::BodyConstants best = constants;
  double least = off(constants);
  for (const double factor : {1.25, 1.5, 1.75, 2.0, 2.25, 2.5}) {
    const domain::BodyConstants wider = spread_wider(constants, factor);
    const double reached = off(wider);
    if (reached >= least || missed(wider) > allowed) continue;
    least = reached;
    best = wider;
  }
  return best;
}

std::vector<Forecast> cross_validated(const std::vector<Profile>& profiles,
                                      const domain::Catalogue& catalogue, const domain::BodyConstants& start,
                                      const FitPlan& plan) {
  Forecast none;
  none.fill(std::numeric_limits<double>::quiet_NaN());
  std::vector<Forecast> out(profiles.size(), none);
  for (int fold = 0; fold < folds; ++fold) {
    const auto others = those_in(profiles, [fold](int part) { return part != fold && part != held_out; });
    const domain::BodyConstants constants = fitted(others, catalogue, start, plan);
    const std::vector<Forecast> said = forecasts(profiles, catalogue, constants, plan.threads);
    for (std::size_t i = 0; i < profiles.size(); ++i)
      if (part_of(profiles[i].id) == fold) out[i] = said[i];
  }
  return out;
}

std::vector<Forecast> cross_validated_near(const std::vector<Profile>& profiles,
                                           const domain::Catalogue& catalogue,
                                           const domain::BodyConstants& by_hand,
                                           const domain::BodyConstants& constants, const FitPlan& plan) {
  constexpr double step = .25;
  const auto fitting = those_in(profiles, [](int part) { return part != held_out; });
  const Vector at = deviations_of(constants);
  const Linearised linear = linearised(residuals_of(fitting, catalogue, by_hand, plan.threads), at, step);
  std::vector<Forecast> out = forecasts(profiles, catalogue, constants, plan.threads);
  for (int fold = 0; fold < folds; ++fold) {
    Vector there = move_without(linear, errors_of_fold(fitting, fold, linear.here.size()));
    for (std::size_t i = 0; i < there.size(); ++i) there[i] += at[i];
    const std::vector<Forecast> said = forecasts(profiles, catalogue, moved(by_hand, there), plan.threads);
    for (std::size_t i = 0; i < profiles.size(); ++i)
      if (part_of(profiles[i].id) == fold) out[i] = said[i];
  }
  return out;
}

}  // namespace repwright::calibration
