#pragma once

#include <cstddef>
#include <vector>

#include "body/estimate.hpp"

/// What is known of a person from marks and scores: the body, and the pieces they have done.
namespace repwright::body {

/// The independent standard normals behind a draw of a body, one for each parameter.
using Normals = std::array<double, parameter_count>;

/// What the model is wrong by for one person in one piece, always the same way, before the first score: the
/// standard deviation of the logarithm, a guess. After Kennedy & O'Hagan 2001 (J. R. Stat. Soc. B
/// 63:425-464), with a constant of person and piece in place of a process.
inline constexpr double first_doubt = .08;

/// What a person scores in the pieces they have done, on an even day: natural logarithms, jointly normal with
/// the body. A level is the model's forecast and what it is wrong by together, because a score tells of
/// nothing else; kept from score to score, it makes a second forecast of the piece what an average of the
/// scores is.
struct PieceLevels {
  std::vector<double> mean;
  std::vector<std::vector<double>> covariance;
  std::vector<Normals> with_body;  // covariances with the parameters
  std::vector<Normals> slope;      // how each goes along with the parameters when these change
  /// What the model alone says, when the piece was done last: `told` + `slope` times the parameters.
  std::vector<double> told;
  bool operator==(const PieceLevels&) const = default;
};

struct Knowledge {
  BodyEstimate body;
  PieceLevels levels{};
  bool operator==(const Knowledge&) const = default;
};

/// The same so many days later: the doubt grows (per root of a week .005 of the logarithm of the critical
/// speed, .01 of the others), never beyond that of `unknown`, the same person without marks and scores. After
/// two months without a score the capacities fall by as much a week, by .05 at most (a guess: whether
/// somebody trained elsewhere is not known). The levels of the pieces go along.
Knowledge after_days(const Knowledge& known, const BodyEstimate& unknown, double days);

/// The normals behind the body that `draw` takes for the same numbers.
Normals normals_behind(base::Seed seed, std::uint64_t run, std::uint64_t person);

/// The knack of that body.
std::uint64_t knack_behind(base::Seed seed, std::uint64_t run, std::uint64_t person);

/// The body of the distribution that those normals stand for.
Body body_behind(const Normals& normals, const BodyEstimate& estimate, const Constants& constants);

/// One body of the distribution with the normals behind it; the body is that of `draw` for the same numbers.
struct DrawnBody {
  Normals normals{};
  Body body;
};
DrawnBody draw_told(const BodyEstimate& estimate, base::Seed seed, std::uint64_t run, std::uint64_t person,
                    const Constants& constants);

}  // namespace repwright::body
