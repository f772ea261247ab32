#include "body/learning.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/require.hpp"
#include "base/statistics.hpp"

namespace repwright::body {

namespace {

double along_line(const Normals& slope, const Normals& point) {
  return std::inner_product(slope.begin(), slope.end(), point.begin(), 0.0);
}

/// The normals behind a draw and the levels of all pieces, in this order, as one normal distribution.
class Joint {
 public:
  explicit Joint(const Knowledge& before) : before_(before), levels_(before.levels.mean.size()) {
    const std::size_t count = parameter_count + levels_;
    mean_.resize(count);
    covariance_.assign(count, std::vector<double>(count));
    for (std::size_t i = 0; i < parameter_count; ++i) covariance_[i][i] = 1;
    for (std::size_t q = 0; q < levels_; ++q) {
      const std::size_t row = parameter_count + q;
      mean_[row] = before.levels.mean[q];
      const Normals shared = whitened(before.body, before.levels.with_body[q]);
      for (std::size_t i = 0; i < parameter_count; ++i)
        covariance_[row][i] = covariance_[i][row] = shared.at(i);
      for (std::size_t other = 0; other < levels_; ++other)
        covariance_[row][parameter_count + other] = before.levels.covariance[q][other];
    }
    slopes_ = before.levels.slope;
    told_ = before.levels.told;
  }

  /// Takes in a piece that was never done; returns its level.
  std::size_t add(const ForecastLine& line, double model_sd) {
    std::vector<double> along(mean_.size());
    for (std::size_t i = 0; i < along.size(); ++i)
      along[i] = std::inner_product(line.slope.begin(), line.slope.end(), covariance_[i].begin(), 0.0);
    const double variance =
        std::inner_product(line.slope.begin(), line.slope.end(), along.begin(), model_sd * model_sd);
    mean_.push_back(std::inner_product(line.slope.begin(), line.slope.end(), mean_.begin(), line.middle));
    for (std::size_t i = 0; i < along.size(); ++i) covariance_[i].push_back(along[i]);
    along.push_back(variance);
    covariance_.push_back(std::move(along));
    slopes_.push_back(by_parameters(before_.body, line.slope));
    told_.push_back(line.middle - along_line(slopes_.back(), before_.body.parameters.mean));
    return levels_++;
  }

  /// What the model says today of a piece done before: by the middle of the bodies, because they are few.
  void retell(std::size_t level, const std::vector<Normals>& drawn, const std::vector<double>& forecasts) {
    std::vector<double> beside;
    beside.reserve(drawn.size());
    const double middle = along_line(slopes_[level], before_.body.parameters.mean);
    const Normals slope = by_normals(before_.body, slopes_[level]);
    for (std::size_t e = 0; e < drawn.size(); ++e)
      beside.push_back(forecasts[e] - along_line(slope, drawn[e]) - middle);
    told_[level] = base::quantile(std::move(beside), .5);
  }

  double mean(std::size_t level) const { return mean_[parameter_count + level]; }
  double variance(std::size_t level) const {
    return covariance_[parameter_count + level][parameter_count + level];
  }

  /// Moves all by a share of the surprise in a level, over the variance of the score.
  void absorb(std::size_t level, double share, double surprise) {
    const std::vector<double> along = covariance_[parameter_count + level];
    for (std::size_t i = 0; i < mean_.size(); ++i) {
      mean_[i] += along[i] * share * surprise;
      for (std::size_t j = 0; j < mean_.size(); ++j) covariance_[i][j] -= along[i] * along[j] * share;
    }
  }

  /// One score that cannot be believed leaves room for a second one that agrees with it.
  void doubt(std::size_t level, double variance) {
    covariance_[parameter_count + level][parameter_count + level] += variance;
  }

  /// The same in parameters.
  Knowledge coloured() const {
    Knowledge out = before_;
    const auto& spread = before_.body.spread;
    for (std::size_t i = 0; i < parameter_count; ++i) {
      Normals half{};  // a row of the triangle times the covariance
      for (std::size_t k = 0; k <= i; ++k) {
        out.body.parameters.mean.at(i) += spread.at(i).at(k) * mean_[k];
        for (std::size_t j = 0; j < parameter_count; ++j)
          half.at(j) += spread.at(i).at(k) * covariance_[k][j];
      }
      for (std::size_t j = 0; j < parameter_count; ++j)
        out.body.parameters.covariance.at(i).at(j) =
            std::inner_product(half.begin(), half.end(), spread.at(j).begin(), 0.0);
    }
    out.body.spread = cholesky<parameter_count>(out.body.parameters.covariance);
    out.levels = levels();
    return out;
  }

 private:
  PieceLevels levels() const {
    PieceLevels out{.mean = {}, .covariance = {}, .with_body = {}, .slope = slopes_, .told = told_};
    for (std::size_t q = 0; q < levels_; ++q) {
      const std::vector<double>& row = covariance_[parameter_count + q];
      out.mean.push_back(mean_[parameter_count + q]);
      out.covariance.emplace_back(row.begin() + parameter_count, row.end());
      Normals& shared = out.with_body.emplace_back();
      for (std::size_t i = 0; i < parameter_count; ++i)
        for (std::size_t k = 0; k <= i; ++k) shared.at(i) += before_.body.spread.at(i).at(k) * row[k];
    }
    return out;
  }

  const Knowledge& before_;
  std::size_t levels_;
  std::vector<double> mean_;
  std::vector<std::vector<double>> covariance_;
  std::vector<Normals> slopes_;
  std::vector<double> told_;
};

/// From where on a score is doubted, in squared standard deviations: four the first time, when the body is
/// little known, three of a piece done before.
constexpr double first_doubtful = 16, again_doubtful = 9;

/// All of it up to there, beyond soon nothing.
double weight_of(double z, double doubtful) {
  const double near = std::min(1.0, doubtful / (z * z));
  return near * near;
}

Lesson forecast(const ForecastSpread& spread, const ScoreSeen& score) {
  Lesson lesson;
  lesson.p10 = spread.quantile(.1);
  lesson.p50 = spread.quantile(.5);
  lesson.p90 = spread.quantile(.9);
  lesson.below = spread.below(score.seen);
  return lesson;
}

/// Bodies on the edge of what they can do come out otherwise every day; people then do something else.
/// Circuits vary by 3.9 to 7.3 % (F. A. Engel et al. 2019, Front Physiol 10:460,
/// doi 10.3389/fphys.2019.00460).
constexpr double widest_day = .10;

double squared(double x) {
  return x * x;
}

/// The forecast of a piece never done, which is taken into `joint`, or of one done before.
Lesson lesson_of(const ScoreSeen& score, const std::vector<Normals>& drawn, Joint& joint) {
  std::optional<ForecastLine> line;
  if (!score.level || score.day_sd <= 0) line = line_near(drawn, score.forecasts, score.seen);
  double day_variance = squared(std::min(widest_day, score.day_sd)), bent = 0;
  if (line && day_variance > 0) bent = std::max(0.0, line->left_variance - day_variance);
  if (line && day_variance <= 0) day_variance = line->left_variance;
  // What is no straight line of the body belongs to the piece alone.
  const std::size_t level =
      score.level ? *score.level : joint.add(*line, std::sqrt(squared(score.model_sd) + bent));
  if (score.level) joint.retell(level, drawn, score.forecasts);
  const double sd = std::sqrt(joint.variance(level) + day_variance);
  constexpr double narrowest = .003;  // smooths over the gaps between the draws
  const ForecastSpread spread = score.level
                                    ? ForecastSpread{{joint.mean(level)}, sd}
                                    : ForecastSpread{score.forecasts, std::max(narrowest, score.model_sd)};
  Lesson lesson = forecast(spread, score);
  lesson.expected = joint.mean(level);
  lesson.sd = sd;
  lesson.level = level;
  return lesson;
}

}  // namespace

Learned learn(const Knowledge& before, const std::vector<Normals>& drawn, std::span<const ScoreSeen> scores) {
  base::require(drawn.size() >= fewest_forecasts, "there are forecasts enough to learn from");
  Joint joint(before);
  Learned out;
  for (const ScoreSeen& score : scores) {
    base::require(drawn.size() == score.forecasts.size(), "each drawn body has a forecast");
    base::require(score.level.value_or(0) <= before.levels.mean.size(), "the level of a piece is known");
    Lesson& lesson = out.lessons.emplace_back(lesson_of(score, drawn, joint));
    const double surprise = score.seen - lesson.expected;
    if (score.beyond && surprise <= 0) continue;
    const double doubtful = score.level ? again_doubtful : first_doubtful;
    lesson.weight = weight_of(surprise / lesson.sd, doubtful);
    const double share = lesson.weight / squared(lesson.sd);
    // The first score of a piece may be off because the model is: its level believes what the body does not.
    if (!score.level) joint.doubt(lesson.level, 1 / share - squared(lesson.sd));
    joint.absorb(lesson.level, share, surprise);
    joint.doubt(lesson.level, (1 - lesson.weight) * squared(surprise) / doubtful);
  }
  out.after = joint.coloured();
  const bool told = std::ranges::any_of(out.lessons, [](const Lesson& lesson) { return lesson.weight > 0; });
  if (!told) out.after.body = before.body;
  return out;
}

}  // namespace repwright::body
