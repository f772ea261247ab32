#pragma once

#include <array>
#include <cstddef>

#include "base/random.hpp"

namespace repwright::rehearsal {

inline constexpr double step_noise = 0.03;  // log-SD of one line of work

/// One person's luck in one run: how late they are off the mark, and how well each line of work goes.
class LineLuck {
 public:
  explicit LineLuck(const base::Stream& draws) : draws_(draws) {}

  /// Evenly distributed in (0, 1).
  double reaction() { return draws_.uniform(); }

  /// So much longer than usual the next line takes: lognormal, median 1.
  double stretch() {
    if (used_ == ahead_.size()) look_ahead();
    return ahead_[used_++];
  }

 private:
  /// Four at once: in pairs, and none waiting for the one before.
  void look_ahead() {
    for (std::size_t i = 0; i < ahead_.size(); i += 2) {
      const double first = draws_.uniform();
      const base::Pair both =
          base::exp(step_noise * base::normal_quantile(base::Pair{first, draws_.uniform()}));
      ahead_[i] = both[0];
      ahead_[i + 1] = both[1];
    }
    used_ = 0;
  }

  base::Stream draws_;
  std::array<double, 4> ahead_{};
  std::size_t used_ = 4;
};

}  // namespace repwright::rehearsal
