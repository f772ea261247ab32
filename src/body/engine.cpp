#include "body/engine.hpp"

#include "body/balance.hpp"

namespace repwright::body {

double engine_speed(const Effort& effort, double rate, const Constants& constants) {
  const double above = std::max(1.0, rate - effort.base);
  if (effort.display == Effort::Display::Seconds) return 1;
  if (effort.kind == Effort::Kind::Run) return above / (constants.run_rate * (1 + effort.slope));
  const double watts = effort.gain * above;
  if (effort.display == Effort::Display::Metres) return base::pow(watts / effort.drag, 1.0 / 3);
  // Flywheel display: kcal per hour = 4 x 0.8604 x watts + 300 (trade: 'Useful relations', for 80 kg).
  return (4 * 0.8604 * watts + 300) / 3600;
}

double engine_rate(const State& state, const Body& body, const Pacing& pacing, const Constants& constants) {
  const double spare = std::max(0.0, state.reserve - constants.reserve_kept * state.reserve_full);
  const double start = body.reserve_distance / std::max(0.5, body.top_speed - body.critical_speed);
  const double spread = std::max(1.0, pacing.end - state.clock) + start;
  return state.critical_rate * durability(state.clock, constants) + 60 * spare / spread;
}

namespace {

/// Seconds of fatigue-free running that leg fatigue takes out of `recovered` recovery seconds, per unit of
/// `leg_drag`.
double dragged(const State& state, double recovered, const Constants& constants) {
  const auto legs = index_of(Group::Legs);
  const Pools times = recovery_times(legs, constants);
  return sum(state.pools[legs] * times * (1 - exp(-recovered / times)));
}

}  // namespace

SetDone work_engine(State& state, const Body& body, const Effort& effort, const SetPlan& plan,
                    const Constants& constants) {
  const auto legs = index_of(Group::Legs);
  settle(state, legs, constants);
  const double rate = engine_rate(state, body, plan.pacing, constants) * effort.mode;
  const double speed = engine_speed(effort, rate, constants);
  const bool timed = effort.display == Effort::Display::Seconds;
  const double fatigue_speed =
      recovery_speed(state, body, state.reserve, constants) * std::max(0.01, 1 - effort.weight[legs]);
  // Distance = speed (T - drag * integral of the leg fatigue over T), the integral closed, T by three rounds.
  const double bare = plan.wanted / speed;
  const auto lost = [&](double seconds) {
    if (timed) return 0.0;
    return constants.leg_drag * dragged(state, seconds * fatigue_speed, constants) / fatigue_speed;
  };
  double seconds = std::min(bare, plan.seconds + 1);
  for (int round = 0; round < 3; ++round) seconds = std::min(bare + lost(seconds), plan.seconds + 1);
  SetDone done{.units = plan.wanted, .seconds = seconds};
  if (seconds > plan.seconds)
    done = {.units = speed * (plan.seconds - lost(plan.seconds)), .seconds = plan.seconds, .bell = true};
  const double reserve =
      spend(state, {.seconds = done.seconds, .rate = rate, .mode = effort.mode}, constants);
  const double recovered = done.seconds * recovery_speed(state, body, reserve, constants);
  for (std::size_t g = 0; g < group_count; ++g) state.pending[g] += recovered * (1 - effort.weight[g]);
  state.clock += done.seconds;
  return done;
}

}  // namespace repwright::body
