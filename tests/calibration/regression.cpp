#include "calibration/regression.hpp"

#include <cmath>
#include <limits>

#include "calibration/fit.hpp"
#include "calibration/least_squares.hpp"

namespace repwright::calibration {

namespace {

constexpr double unknown_log_pull_ups = 3.2;  // about the middle of those who say

double log_of(const domain::Mark& mark) {
  if (const auto* run = std::get_if<domain::TimedDistance>(&mark)) return std::log(run->time.si());
  if (const auto* lift = std::get_if<domain::BestLoad>(&mark)) return std::log(lift->load.si());
  if (const auto* set = std::get_if<domain::BestSet>(&mark)) return std::log(set->reps);
  return 0;
}

Vector features(const domain::Person& person) {
  Vector out{1, std::log(person.mass->si()), std::log(person.height->si()), person.age.value_or(35) / 35,
             std::log1p(person.training_years.value_or(2))};
  for (const domain::Mark& mark : person.marks) out.push_back(log_of(mark));
  constexpr std::size_t all = 11;
  out.resize(all, unknown_log_pull_ups);
  return out;
}

Vector coefficients(const std::vector<Profile>& profiles, std::size_t piece, domain::Sex sex) {
  const std::size_t n = features(profiles.front().person).size();
  Matrix square(n, Vector(n));
  Vector right(n);
  for (const Profile& profile : profiles) {
    if (profile.person.sex != sex || !(profile.score.at(piece) > 0)) continue;
    const Vector x = features(profile.person);
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = 0; j < n; ++j) square[i][j] += x[i] * x[j];
      right[i] += x[i] * std::log(profile.score.at(piece));
    }
  }
  for (std::size_t i = 0; i < n; ++i) square[i][i] *= 1 + 1e-9;
  return solve(std::move(square), std::move(right));
}

void regress(const std::vector<Profile>& profiles, int fold, domain::Sex sex, std::vector<Forecast>& to) {
  const auto others = those_in(profiles, [fold](int part) { return part != fold; });
  for (std::size_t p = 0; p < piece_count; ++p) {
    const Vector b = coefficients(others, p, sex);
    for (std::size_t i = 0; i < profiles.size(); ++i) {
      if (profiles[i].person.sex != sex || part_of(profiles[i].id) != fold) continue;
      const Vector x = features(profiles[i].person);
      double said = 0;
      for (std::size_t k = 0; k < x.size(); ++k) said += b.at(k) * x[k];
      to[i].at(p) = std::exp(said);
    }
  }
}

}  // namespace

std::vector<Forecast> regressed(const std::vector<Profile>& profiles) {
  std::vector<Forecast> out(profiles.size());
  for (int fold = 0; fold <= held_out; ++fold)
    for (const domain::Sex sex : {domain::Sex::Male, domain::Sex::Female}) regress(profiles, fold, sex, out);
  return out;
}

}  // namespace repwright::calibration
