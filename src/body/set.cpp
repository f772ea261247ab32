#include <cmath>

#include "body/balance.hpp"
#include "body/engine.hpp"

namespace repwright::body {

namespace {

/// What stays the same during one set.
struct Frame {
  double cycle;          // s per unit that the whole body allows
  double brisk, growth;  // s per unit that the muscle needs: brisk (1 + growth f)
  Pools drain;           // per unit
  Pools rate;            // recovery per idle second
  double seconds;        // until the bell
  bool whole;            // units come whole

  double unit_seconds(double f) const { return brisk * (1 + growth * f); }
  double whole_units(double units) const { return whole ? std::floor(units + 1e-9) : units; }
};

/// The own group and the count within the set.
struct Progress {
  Pools pools;
  double units = 0;
  double seconds = 0;
  bool bell = false;

  double fatigue() const { return sum(pools); }
};

/// What recovery leaves of the pools: n times `y` recovery between n equal deposits.
struct Decay {
  Pools kept;       // share of what was there before the first
  Pools deposited;  // sum of e^(-j y), j = 1..n: what is left of n deposits of one

  Pools after(Pools before, Pools drain) const { return before * kept + drain * deposited; }
};

constexpr double no_recovery = 1e-9;

/// (e^y - 1) / y for 0 <= y < 0.03.
Pools growth_over(Pools y) {
  return 1 + y * 0.5 * (1 + y * (1.0 / 3) * (1 + y * 0.25));
}

/// e^y - 1 for y >= 0, by the series where the difference would cancel.
Pools grown(Pools y) {
  const Pools series = y * growth_over(y);
  if (std::max(y[0], y[1]) < 0.03) return series;
  return y < 0.03 ? series : exp(y) - 1;
}

Decay decay(Pools y, double n) {
  const Pools kept = exp(-n * y);
  return {kept, y < no_recovery ? Pools{n, n} : (1 - kept) / grown(y)};
}

/// Fatigue after `units` more, each followed by `idle` seconds of recovery; to within a few per cent, without
/// an exponential: e^x as 1 + x q(x), and n for the y in x = n y, so that no recovery needs no case of its
/// own.
double rough_fatigue(const Frame& frame, const Progress& at, double units, double idle) {
  const Pools y = idle * frame.rate;
  const Pools x = units * y;
  const Pools q = 1 + x * (0.5 + x * (1.0 / 6));
  const Pools g = growth_over(y);
  return sum((at.pools * g + frame.drain * units * q) / ((1 + x * q) * g));
}

/// The pools after `units` more, each followed by `idle` seconds of recovery.
Progress idling(const Frame& frame, Progress at, double units, double idle) {
  at.pools = decay(idle * frame.rate, units).after(at.pools, frame.drain);
  at.units += units;
  at.seconds += units * frame.cycle;
  return at;
}

/// The pools while each unit is followed by the same idle time: fatigue as a smooth function of the units.
class Wearing {
 public:
  Wearing(Pools start, Pools drain, Pools recovery)
      : start_(start),
        drain_(drain),
        recovery_(recovery),
        settles_(std::max(recovery[0], recovery[1]) < no_recovery ? Pools{} : drain / grown(recovery)) {}

  struct Point {
    double fatigue, slope;  // the slope per unit
  };
  Point after(double units) const {
    if (std::max(recovery_[0], recovery_[1]) < no_recovery)
      return {sum(start_ + units * drain_), sum(drain_)};
    const Pools kept = exp(-units * recovery_);
    return {sum(start_ * kept + settles_ * (1 - kept)), sum((settles_ - start_) * recovery_ * kept)};
  }

 private:
  Pools start_, drain_, recovery_, settles_;
};

/// Units until fatigue passes `turn` when each is followed by `idle` seconds: Newton's method, from the side
/// that recovery leaves (fatigue rises ever slower, so the steps never pass the root once they are below it).
double units_until(const Frame& frame, const Progress& from, double turn, double idle) {
  const double drain = sum(frame.drain);
  const Wearing wearing(from.pools, frame.drain, idle * frame.rate);
  double units = std::max(0.0, (turn - from.fatigue()) / drain);
  for (int step = 0; step < 4; ++step) {
    const auto [fatigue, slope] = wearing.after(units);
    const double move = (turn - fatigue) / std::max(slope, 0.05 * drain);
    units += move;
    if (std::abs(move) < 1e-4) break;  // the next move would be of its square
  }
  return std::max(0.0, units);
}

/// The fatigue that stands for a stretch from `start` to `end`: the mean weighted by itself, because idle
/// time recovers in proportion to what there is.
double typical_fatigue(double start, double end) {
  const double sum = start + end;
  return sum > 0 ? 2.0 / 3 * (sum - start * end / sum) : 0;
}

/// Work at the pace of the whole body: every unit takes `cycle`, and the muscle rests for what it does not
/// need of it. The idle time at the typical fatigue stands for all; two rounds settle it.
Progress paced(const Frame& frame, const Progress& from, double units, double limit) {
  const double in_time = frame.whole_units((frame.seconds - from.seconds) / frame.cycle);
  const double most = std::min(units, in_time);
  const double start = from.fatigue();
  const auto idle_at = [&](double fatigue) {
    return std::max(0.0, frame.cycle - frame.unit_seconds(fatigue));
  };
  // The idle time after a unit is that of the fatigue before it: of n units, the last but one ends the
  // stretch.
  const auto last_of = [&](double n) { return frame.whole ? 1 / std::max(1.0, n) : 0; };
  const auto idle_to = [&](double end, double last) {
    return idle_at(typical_fatigue(start, end - (end - start) * last));
  };
  const double last = last_of(most);
  double idle = idle_at(start);
  for (int round = 0; round < 2; ++round) idle = idle_to(rough_fatigue(frame, from, most, idle), last);
  Progress end = idling(frame, from, most, idle);
  const double full = frame.growth > 0 ? (frame.cycle / frame.brisk - 1) / frame.growth : limit;
  const double turn = std::min(limit, full);
  double made = most;
  if (end.fatigue() > turn) {
    const double direct = (turn - start) / sum(frame.drain);
    idle = idle_to(turn, last_of(direct));
    const double until = units_until(frame, from, turn, idle);
    made = std::min(most, frame.whole ? std::floor(until + 1e-9) + 1 : until);
    end = idling(frame, from, made, idle);
  }
  end.bell = made >= in_time && in_time < units;
  return end;
}

/// Work as fast as the muscle goes: no idle time, so fatigue grows by the same for each unit and the seconds
/// are an arithmetic sum.
Progress driven(const Frame& frame, Progress at, double units, double limit) {
  const double start = at.fatigue();
  const double drain = sum(frame.drain);
  const double to_limit = (limit - start) / drain;
  double most = std::min(units, frame.whole ? std::floor(to_limit + 1e-9) + 1 : to_limit);
  const double a = 0.5 * frame.brisk * frame.growth * drain;
  const double b = frame.unit_seconds(start) - (frame.whole ? a : 0);
  const double left = frame.seconds - at.seconds;
  if (most * (b + a * most) > left) {
    const double in_time = 2 * left / (b + std::sqrt(b * b + 4 * a * left));
    most = std::min(most, frame.whole_units(in_time));
    at.bell = true;
  }
  at.pools += most * frame.drain;
  at.units += most;
  at.seconds += most * (b + a * most);
  return at;
}

/// Goes on until `wanted` units are done, the bell, or fatigue has passed `limit`.
Progress go_on(const Frame& frame, Progress at, double wanted, double limit) {
  if (at.units < wanted && at.fatigue() <= limit && frame.unit_seconds(at.fatigue()) < frame.cycle)
    at = paced(frame, at, wanted - at.units, limit);
  if (at.units < wanted && at.fatigue() <= limit && !at.bell)
    at = driven(frame, at, wanted - at.units, limit);
  return at;
}

/// The mean target rate over a set of that many seconds. It is even until a minute before the end; from then
/// on the reserve is never spent faster than over a minute, so it fades and the rate with it.
double mean_target(const State& state, const SetPlan& plan, double seconds, double mode,
                   const Constants& constants) {
  const double now = target_rate(state, plan.pacing, constants);
  const double until = plan.pacing.end - state.clock;
  const double even = std::clamp(until - constants.shortest_spread, 0.0, seconds);
  if (even >= seconds) return now;
  const double fading = mode * (seconds - even) / constants.shortest_spread;
  const double left = 1 - even / std::max(constants.shortest_spread, until);
  const double faded = left * (1 - exp(-fading)) * constants.shortest_spread / mode;
  const double critical = state.critical_rate * durability(state.clock, constants);
  const double spread = std::max(constants.shortest_spread, until);
  return critical + (now - critical) * (even + faded * spread / constants.shortest_spread) / seconds;
}

Frame frame_of(const State& state, const Body& body, const Effort& effort, const SetPlan& plan,
               const Constants& constants) {
  const auto group = index_of(effort.group);
  const bool held = effort.kind == Effort::Kind::Hold;
  const double muscle = effort.brisk + (effort.sustained - effort.brisk) * plan.pacing.settled;
  const auto cycle_at = [&](double rate) {
    const double power = std::max(1.0, rate * effort.mode - constants.standing_rate);
    return held ? muscle : std::max(muscle, 60 * effort.cost / power);
  };
  double target = target_rate(state, plan.pacing, constants);
  double cycle = cycle_at(target);
  const double units = std::min(plan.wanted, effort.best);
  double length = std::min(units * cycle, plan.seconds);
  if (state.clock + length > plan.pacing.end - constants.shortest_spread) {
    target = mean_target(state, plan, length, effort.mode, constants);
    cycle = cycle_at(target);
    length = std::min(units * cycle, plan.seconds);
  }
  const double over = effort.mode * (target - state.critical_rate * durability(state.clock, constants));
  const double reserve = state.reserve - over * 0.5 * length / 60;
  const double speed = recovery_speed(state, body, reserve, constants);
  return {.cycle = cycle,
          .brisk = muscle,
          .growth = held ? 0 : constants.fade / (1 - effort.theta),
          .drain = effort.drain * shares(effort),
          .rate = speed / recovery_times(group, constants),
          .seconds = plan.seconds,
          .whole = effort.kind == Effort::Kind::Reps};
}

/// The other groups recover through the set and take their share of its drain, evenly spread over it.
void carry_along(State& state, const Effort& effort, double units, double recovered,
                 const Constants& constants) {
  for (std::size_t g = 0; g < group_count; ++g) {
    if (g == index_of(effort.group)) continue;
    if (effort.weight[g] <= 0 || units <= 0) {
      state.pending[g] += recovered;
      continue;
    }
    settle(state, g, constants);
    const double drain = effort.drain * effort.weight[g];
    const Decay left = decay(recovered / units / recovery_times(g, constants), units);
    state.pools[g] = left.after(state.pools[g], drain * shares(effort));
  }
}

SetDone work_set(State& state, const Body& body, const Effort& effort, const SetPlan& plan,
                 const Constants& constants) {
  const auto group = index_of(effort.group);
  settle(state, group, constants);
  const Frame frame = frame_of(state, body, effort, plan, constants);
  const double unit = frame.whole ? 1 : 0;
  const double full = 1 - effort.theta - out_of_reach(state, effort, constants) +
                      (frame.whole ? constants.grind : 0) * effort.drain + 1e-6 * effort.drain;
  const double keep = plan.to_failure ? 0 : kept(effort, constants);
  Progress at{.pools = state.pools[group]};
  at = go_on(frame, at, plan.wanted, full - (unit + keep) * effort.drain);
  const double left = plan.wanted - at.units;
  const double finish = frame.whole ? constants.finish_reps : 0.1 * effort.best;
  if (left > 0 && left <= finish && !at.bell) at = go_on(frame, at, plan.wanted, full - unit * effort.drain);
  if (at.bell) at.seconds = frame.seconds;
  state.pools[group] = at.pools;
  if (at.seconds > 0) {
    const double rate = constants.standing_rate + 60 * effort.cost * at.units / at.seconds;
    const double reserve =
        spend(state, {.seconds = at.seconds, .rate = rate, .mode = effort.mode}, constants);
    const double speed = recovery_speed(state, body, reserve, constants);
    carry_along(state, effort, at.units, constants.other_group_recovery * at.seconds * speed, constants);
    state.clock += at.seconds;
  }
  return {.units = at.units, .seconds = at.seconds, .bell = at.bell};
}

}  // namespace

SetDone work(State& state, const Body& body, const Effort& effort, const SetPlan& plan,
             const Constants& constants) {
  if (effort.kind == Effort::Kind::Run || effort.kind == Effort::Kind::Machine)
    return work_engine(state, body, effort, plan, constants);
  return work_set(state, body, effort, plan, constants);
}

}  // namespace repwright::body
