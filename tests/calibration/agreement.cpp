#include "calibration/agreement.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace repwright::calibration {

namespace {

double mean_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

/// Mean product of the deviations from the means.
double covariance(const std::vector<double>& a, const std::vector<double>& b) {
  const double a_mean = mean_of(a), b_mean = mean_of(b);
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += (a[i] - a_mean) * (b[i] - b_mean);
  return sum / static_cast<double>(a.size());
}

double deviation(const std::vector<double>& values) {
  return std::sqrt(covariance(values, values));
}

/// Ranks from 0, equal values share theirs.
std::vector<double> ranks(const std::vector<double>& values) {
  std::vector<std::size_t> order(values.size());
  std::iota(order.begin(), order.end(), 0);
  std::ranges::sort(order, {}, [&](std::size_t i) { return values[i]; });
  std::vector<double> out(values.size());
  for (std::size_t from = 0; from < order.size();) {
    std::size_t to = from;
    while (to < order.size() && values[order[to]] == values[order[from]]) ++to;
    for (std::size_t i = from; i < to; ++i) out[order[i]] = 0.5 * static_cast<double>(from + to - 1);
    from = to;
  }
  return out;
}

}  // namespace

Agreement agreement(const std::vector<Profile>& profiles, const std::vector<Forecast>& forecasts,
                    std::size_t piece, domain::Sex sex) {
  Agreement out;
  std::vector<double> said, scored, apart;
  for (std::size_t i = 0; i < profiles.size(); ++i) {
    if (profiles[i].person.sex != sex || !(profiles[i].score.at(piece) > 0)) continue;
    if (!can_do(forecasts[i].at(piece))) {
      ++out.cannot;
      continue;
    }
    said.push_back(std::log(forecasts[i].at(piece)));
    scored.push_back(std::log(profiles[i].score.at(piece)));
    apart.push_back(said.back() - scored.back());
  }
  out.people = said.size();
  if (out.people < 3) return out;
  out.bias = std::exp(mean_of(apart));
  out.log_rmse = deviation(apart);
  out.alone = deviation(scored);
  out.spread = deviation(said) / out.alone;
  const std::vector<double> said_rank = ranks(said), scored_rank = ranks(scored);
  out.rank = covariance(said_rank, scored_rank) / (deviation(said_rank) * deviation(scored_rank));
  return out;
}

Coverage coverage(const std::vector<Profile>& profiles, const std::vector<std::vector<Forecast>>& drawn,
                  std::size_t piece, domain::Sex sex) {
  std::vector<double> all, scored;
  double inside = 0;
  for (std::size_t i = 0; i < profiles.size(); ++i) {
    const double score = profiles[i].score.at(piece);
    if (profiles[i].person.sex != sex || !(score > 0)) continue;
    std::vector<double> own;
    for (const Forecast& draw : drawn[i])
      if (can_do(draw.at(piece))) own.push_back(draw.at(piece));
    if (own.size() < drawn[i].size() / 2) continue;
    std::ranges::sort(own);
    const auto at = [&](double share) {
      return own[static_cast<std::size_t>(std::lround(share * static_cast<double>(own.size() - 1)))];
    };
    inside += score >= at(.1) && score <= at(.9) ? 1 : 0;
    scored.push_back(std::log(score));
    for (const double value : own) all.push_back(std::log(value));
  }
  if (scored.empty()) return {};
  return {.held = inside / static_cast<double>(scored.size()), .spread = deviation(all) / deviation(scored)};
}

std::string agreement_table(const std::vector<Profile>& profiles, const std::vector<Forecast>& forecasts) {
  std::string out = fmt::format("{:<5} {:<5} {:>4} {:>6} {:>6} {:>8} {:>10} {:>6} {:>6}\n", "piece", "sex",
                                "n", "cannot", "bias", "log-RMSE", "mean alone", "rank", "spread");
  for (std::size_t piece = 0; piece < piece_count; ++piece)
    for (const domain::Sex sex : {domain::Sex::Male, domain::Sex::Female}) {
      const Agreement at = agreement(profiles, forecasts, piece, sex);
      out += fmt::format("{:<5} {:<5} {:>4} {:>6} {:>6.3f} {:>8.3f} {:>10.3f} {:>6.2f} {:>6.2f}\n", piece + 1,
                         sex == domain::Sex::Male ? "men" : "women", at.people, at.cannot, at.bias,
                         at.log_rmse, at.alone, at.rank, at.spread);
    }
  return out;
}

std::string coverage_table(const std::vector<Profile>& profiles,
                           const std::vector<std::vector<Forecast>>& drawn) {
  std::string out = fmt::format("{:<5} {:<5} {:>9} {:>6}\n", "piece", "sex", "80 % hold", "spread");
  for (std::size_t piece = 0; piece < piece_count; ++piece)
    for (const domain::Sex sex : {domain::Sex::Male, domain::Sex::Female}) {
      const Coverage at = coverage(profiles, drawn, piece, sex);
      out += fmt::format("{:<5} {:<5} {:>9.2f} {:>6.2f}\n", piece + 1,
                         sex == domain::Sex::Male ? "men" : "women", at.held, at.spread);
    }
  return out;
}

}  // namespace repwright::calibration
