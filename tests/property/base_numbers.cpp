#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

#include "base/math.hpp"
#include "base/normal.hpp"
#include "base/random.hpp"
#include "base/statistics.hpp"

namespace repwright::base {
namespace {

/// Even in [from, to): rapidcheck's own doubles keep near zero.
double between(double from, double to) {
  const auto steps = *rc::gen::inRange<std::int64_t>(0, std::int64_t{1} << 40);
  return from + (to - from) * std::ldexp(static_cast<double>(steps), -40);
}

std::vector<double> sample(std::size_t size) {
  std::vector<double> values(size);
  for (double& x : values) x = between(-1000, 1000);
  return values;
}

RC_GTEST_PROP(Math, LogUndoesExp, ()) {
  const double x = between(-700, 700);
  RC_ASSERT(std::abs(base::log(base::exp(x)) - x) <= 4e-16 * std::max(1.0, std::abs(x)));
}

RC_GTEST_PROP(Math, ExpTurnsSumsIntoProducts, ()) {
  const double x = between(-20, 20);
  const double y = between(-20, 20);
  const double product = base::exp(x) * base::exp(y);
  // Rounding x + y alone costs half an ulp of up to 40.
  RC_ASSERT(std::abs(base::exp(x + y) - product) <= 6e-15 * product);
}

RC_GTEST_PROP(Math, ExpAndLogRiseOverStepsAboveTheirError, ()) {
  const double x = between(-700, 700);
  RC_ASSERT(base::exp(x) < base::exp(x + std::max(1e-14, std::abs(x) * 1e-14)));
  const double y = base::exp(x);
  RC_ASSERT(base::log(y) < base::log(y * (1 + 1e-11)));
}

RC_GTEST_PROP(Normal, CdfUndoesTheQuantile, ()) {
  const double p = between(1e-9, 1 - 1e-9);
  RC_ASSERT(std::abs(normal_cdf(normal_quantile(p)) - p) <= 1e-14);
}

RC_GTEST_PROP(Stream, HoldsEveryDrawAtItsOwnPlace,
              (std::uint64_t seed, std::uint64_t run, std::uint64_t person)) {
  const auto purpose = *rc::gen::element(Purpose::Body, Purpose::Step, Purpose::Judge, Purpose::Search);
  const auto draw = *rc::gen::inRange<std::uint64_t>(0, 300);
  Stream stream({seed}, run, person, purpose);
  for (std::uint64_t i = 0; i < draw; ++i) stream.bits();
  const double uniform = stream.uniform();
  RC_ASSERT(uniform == uniform_at({seed}, run, person, purpose, draw));
  RC_ASSERT(uniform > 0 && uniform < 1);
}

RC_GTEST_PROP(Statistics, FollowAShiftAndAScale, ()) {
  const auto x = sample(*rc::gen::inRange<std::size_t>(2, 40));
  const double shift = between(-100, 100);
  std::vector<double> moved;
  for (const double v : x) moved.push_back(3 * v + shift);
  const Summary before = summarise(x);
  const Summary after = summarise(moved);
  const auto close = [](double a, double b) { return std::abs(a - b) <= 1e-9; };
  RC_ASSERT(close(after.mean, 3 * before.mean + shift));
  RC_ASSERT(close(after.sd, 3 * before.sd));
  RC_ASSERT(close(after.p10, 3 * before.p10 + shift));
  RC_ASSERT(close(after.p90, 3 * before.p90 + shift));
}

RC_GTEST_PROP(Statistics, PutQuantilesInOrderBetweenTheEnds, ()) {
  const auto x = sample(*rc::gen::inRange<std::size_t>(1, 40));
  const Summary s = summarise(x);
  RC_ASSERT(std::ranges::min(x) <= s.p10);
  RC_ASSERT(s.p10 <= s.p50);
  RC_ASSERT(s.p50 <= s.p90);
  RC_ASSERT(s.p90 <= std::ranges::max(x));
}

RC_GTEST_PROP(Correlation, IsSymmetricBoundedAndOneWithItself, ()) {
  const auto size = *rc::gen::inRange<std::size_t>(2, 30);
  const auto x = sample(size);
  const auto y = sample(size);
  RC_PRE(std::ranges::min(x) < std::ranges::max(x));
  RC_ASSERT(std::abs(pearson(x, y) - pearson(y, x)) <= 1e-15);
  RC_ASSERT(std::abs(spearman(x, y)) <= 1);
  RC_ASSERT(std::abs(pearson(x, x) - 1) <= 1e-15);
}

RC_GTEST_PROP(Spearman, SeesTheOrderOnly, ()) {
  const auto size = *rc::gen::inRange<std::size_t>(2, 30);
  const auto x = sample(size);
  const auto y = sample(size);
  std::vector<double> bent;
  for (const double v : x) bent.push_back(v * v * v);
  RC_ASSERT(spearman(bent, y) == spearman(x, y));
}

}  // namespace
}  // namespace repwright::base
