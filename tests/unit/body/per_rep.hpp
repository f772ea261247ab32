#pragma once

#include <cmath>

#include "body/dynamics.hpp"

/// The description that the closed forms stand for, rep by rep with the exponentials of each: an independent
/// second opinion, slow and plain.
namespace repwright::body {

struct PerRep {
  const Body& body;
  const Constants& constants;
  double reserve, full, critical, clock = 0;
  std::array<double, group_count> fast{}, slow{};

  PerRep(const Body& who, const Constants& with) : body(who), constants(with) {
    full = with.reserve_per_metre * who.reserve_distance;
    reserve = full;
    critical = with.run_rate * who.critical_speed + with.run_base;
  }

  double fatigue(std::size_t g) const { return fast[g] + slow[g]; }
  double drift() const {
    return clock < constants.durability_from
               ? 1
               : std::pow(clock / constants.durability_from, -constants.durability);
  }
  void recover(std::size_t g, double seconds, double share) {
    const double s = 1 + constants.recovery_drag * (1 - std::max(0.0, reserve) / full);
    fast[g] *= std::exp(-share * seconds / (constants.fast_time[g] * s * body.recovery));
    slow[g] *= std::exp(-share * seconds / (constants.slow_time[g] * s * body.recovery));
  }
  void spend(double seconds, double rate, double mode) {
    const double over = rate - critical * mode * drift();
    if (over > 0)
      reserve -= over * seconds / 60;
    else
      reserve =
          full - (full - reserve) * std::exp(-seconds * -over / (constants.reserve_recovery * 60 * full));
  }

  void rest(double seconds) {
    for (double left = seconds; left > 0; left -= 0.25) {
      const double dt = std::min(left, 0.25);
      for (std::size_t g = 0; g < group_count; ++g) recover(g, dt, 1);
      spend(dt, constants.standing_rate, 1);
      clock += dt;
    }
  }

  void rep(const Effort& effort, double end) {
    const auto own = index_of(effort.group);
    const double spare = std::max(0.0, reserve - constants.reserve_kept * full);
    const double target = critical * drift() + 60 * spare / std::max(constants.shortest_spread, end - clock);
    const double muscle =
        effort.brisk * (1 + constants.fade * std::min(1.0, fatigue(own) / (1 - effort.theta)));
    const double cycle =
        std::max(muscle, 60 * effort.cost / (target * effort.mode - constants.standing_rate));
    for (std::size_t g = 0; g < group_count; ++g) {
      fast[g] += effort.fast_share * effort.drain * effort.weight[g];
      slow[g] += (1 - effort.fast_share) * effort.drain * effort.weight[g];
      recover(g, cycle, g == own ? (cycle - muscle) / cycle : constants.other_group_recovery);
    }
    spend(cycle, constants.standing_rate + 60 * effort.cost / cycle, effort.mode);
    clock += cycle;
  }

  /// One unbroken set with the stop rule of `work`; the reps done.
  double set(const Effort& effort, double wanted, double end) {
    const double rir = std::clamp(0.5 * (effort.best - 1), 0.0,
                                  std::max(constants.keep_min, constants.keep_share * effort.best));
    const double within_reach = (1 - effort.theta) * (1 - constants.breathless * (1 - reserve / full));
    double done = 0;
    while (done < wanted) {
      const double can =
          (within_reach - fatigue(index_of(effort.group))) / effort.drain + constants.grind + 1e-6;
      const bool last = wanted - done <= constants.finish_reps;
      if (can < (last ? 1 : 1 + rir)) break;
      rep(effort, end);
      ++done;
    }
    return done;
  }
};

}  // namespace repwright::body
