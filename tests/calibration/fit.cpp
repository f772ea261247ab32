#include "calibration/fit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

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
constexpr double largest_error = .7;  // one wild person, or one who just cannot, does not steer the fit

// Enough to see the middle of a person's range; pairs on either side of it lose little to chance.
constexpr std::size_t fitting_draws = 24;
// A range, or the mean of a piece, that is off by a tenth weighs like a study that is missed.
constexpr double range_weight = 8, bias_weight = 40;

double error_of(double forecast, double scored) {
  const double error = can_do(forecast) ? std::log(forecast / scored) : largest_error;
  return std::clamp(error, -largest_error, largest_error);
}

void add_errors(const std::vector<Profile>& profiles, const std::vector<Forecast>& said, Vector& to) {
  for (std::size_t i = 0; i < profiles.size(); ++i)
    for (std::size_t p = 0; p < piece_count; ++p) {
      const double scored = profiles[i].score.at(p);
      if (!(scored > 0)) continue;
      const double weight = profiles[i].person.sex == domain::Sex::Female ? women_weight : 1;
      to.push_back(error_weight * weight * error_of(said[i].at(p), scored) / usual_error.at(p));
    }
}

/// Standard deviation of the logarithms of what the drawn bodies of one person score.
double log_spread(const std::vector<Forecast>& draws, std::size_t piece) {
  double count = 0, sum = 0, squares = 0;
  for (const Forecast& draw : draws) {
    if (!can_do(draw.at(piece))) continue;
    const double log = std::log(draw.at(piece));
    count += 1, sum += log, squares += log * log;
  }
  return count > 2 ? std::sqrt(std::max(0.0, squares - sum * sum / count) / (count - 1)) : 0;
}

/// Per piece and sex, how far forecasts are off in the mean, and how far the mean size of an error is from
/// what drawn bodies make of it, both as logarithms. Means of sizes, which a few wild scores move little; of
/// normal errors they are .798 standard deviations.
void add_ranges(const std::vector<Profile>& profiles, const std::vector<std::vector<Forecast>>& drawn,
                const std::vector<Forecast>& said, Vector& to) {
  constexpr double size_of_normal = .798;
  for (std::size_t p = 0; p < piece_count; ++p)
    for (const domain::Sex sex : {domain::Sex::Male, domain::Sex::Female}) {
      double people = 0, sum = 0, errors = 0, spreads = 0;
      for (std::size_t i = 0; i < profiles.size(); ++i) {
        const double scored = profiles[i].score.at(p);
        if (profiles[i].person.sex != sex || !(scored > 0) || !can_do(said[i].at(p))) continue;
        const double error = error_of(said[i].at(p), scored);
        people += 1;
        sum += error;
        errors += std::abs(error);
        spreads += size_of_normal * log_spread(drawn[i], p);
      }
      const bool seen = errors > 0 && spreads > 0;
      to.push_back(people > 0 ? bias_weight * sum / people : 0);
      to.push_back(seen ? range_weight * std::log(spreads / errors) : 0);
    }
}

/// How far a study is missed: half a band's width outside where it should be counts as `ideal`, outside where
/// it may be as `accept`.
double missed_by(const Measured& measured) {
  constexpr double ideal = 4, accept = 20;
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
    const auto drawn = drawn_forecasts(profiles, catalogue, constants, fitting_draws, threads);
    const std::vector<Forecast> said = middles_of(drawn);
    add_errors(profiles, said, out);
    add_ranges(profiles, drawn, said, out);
    for (const Measured& measured : all_studies({catalogue, constants})) out.push_back(missed_by(measured));
    out.push_back(indefinite_by(constants));
    return out;
  };
}

double squares(const Vector& values, std::size_t from, std::size_t to) {
  double sum = 0;
  for (std::size_t i = from; i < to; ++i) sum += values[i] * values[i];
  return sum;
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

std::string misfit(const std::vector<Profile>& profiles, const domain::Catalogue& catalogue,
                   const domain::BodyConstants& constants) {
  const Vector all = residuals_of(profiles, catalogue, constants, 0)(deviations_of(constants));
  const std::size_t errors = tunables().size(), studies = all_studies({catalogue, constants}).size() + 1;
  const std::size_t ranges = all.size() - studies - 4 * piece_count;
  return fmt::format("tunables {:.1f}, errors {:.1f}, ranges {:.1f}, studies {:.1f}\n",
                     squares(all, 0, errors), squares(all, errors, ranges),
                     squares(all, ranges, all.size() - studies),
                     squares(all, all.size() - studies, all.size()));
}

domain::BodyConstants fitted(const std::vector<Profile>& profiles, const domain::Catalogue& catalogue,
                             const domain::BodyConstants& start, const FitPlan& plan) {
  const auto residuals = residuals_of(profiles, catalogue, start, plan.threads);
  const Vector best =
      least_squares(residuals, deviations_of(start), {.rounds = plan.rounds, .told = plan.told});
  return moved(start, best);
}

namespace {

/// Everybody by `constants`, but each fold by its own.
std::vector<Forecast> by_folds(const std::vector<Profile>& profiles, const domain::Catalogue& catalogue,
                               const domain::BodyConstants& constants, int threads,
                               const std::function<domain::BodyConstants(int fold)>& without) {
  std::vector<Forecast> out = forecasts(profiles, catalogue, constants, threads);
  for (int fold = 0; fold < folds; ++fold) {
    const std::vector<Forecast> said = forecasts(profiles, catalogue, without(fold), threads);
    for (std::size_t i = 0; i < profiles.size(); ++i)
      if (part_of(profiles[i].id) == fold) out[i] = said[i];
  }
  return out;
}

}  // namespace

std::vector<Forecast> cross_validated_near(const std::vector<Profile>& profiles,
                                           const domain::Catalogue& catalogue,
                                           const domain::BodyConstants& by_hand,
                                           const domain::BodyConstants& constants, const FitPlan& plan) {
  constexpr double step = .25;
  const auto fitting = those_in(profiles, [](int part) { return part != held_out; });
  const Vector at = deviations_of(constants);
  const Linearised linear = linearised(residuals_of(fitting, catalogue, by_hand, plan.threads), at, step);
  return by_folds(profiles, catalogue, constants, plan.threads, [&](int fold) {
    Vector there = move_without(linear, errors_of_fold(fitting, fold, linear.here.size()));
    for (std::size_t i = 0; i < there.size(); ++i) there[i] += at[i];
    return moved(by_hand, there);
  });
}

std::vector<Forecast> cross_validated(const std::vector<Profile>& profiles,
                                      const domain::Catalogue& catalogue,
                                      const domain::BodyConstants& constants, const FitPlan& plan) {
  return by_folds(profiles, catalogue, constants, plan.threads, [&](int fold) {
    const auto others = those_in(profiles, [&](int part) { return part != held_out && part != fold; });
    return fitted(others, catalogue, constants, plan);
  });
}

}  // namespace repwright::calibration
