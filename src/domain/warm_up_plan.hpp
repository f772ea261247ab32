#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/quantity.hpp"

/// What a board asks of bodies before it begins, and the drills that prepare it.
namespace repwright::domain {

enum class NeedKind : std::uint8_t { Joint, Pattern, Muscle };

/// Something that the board loads. `weight` grows with load and speed; `because` is the movement that asks
/// most, in a coach's words.
struct WarmUpNeed {
  NeedKind kind = NeedKind::Joint;
  std::string id;
  std::string name;
  int weight = 1;
  std::string because;
  bool operator==(const WarmUpNeed&) const = default;
};

/// Who leaves a drill out, by their own action words, and what they do meanwhile.
struct OtherDrill {
  std::string person;
  std::string action;
  std::string drill;  // empty: none suits, they repeat the drill before
  bool operator==(const OtherDrill&) const = default;
};
struct WarmUpStep {
  std::string drill;  // its id
  std::string name;
  std::string phase;  // raise, mobilise, activate, rehearse
  base::Duration length;
  std::string how, say;
  bool on_floor = false;
  std::vector<int> prepares;  // indices of needs
  std::vector<OtherDrill> others;
  bool operator==(const WarmUpStep&) const = default;
};

struct WarmUp {
  base::Duration asked, planned;
  std::vector<WarmUpStep> steps;
  std::vector<int> unprepared;  // indices of needs
  double prepared_share = 0;    // of the weights
  int floor_visits = 0;         // how often people get down and up again
  bool proven = false;          // no choice of drills does better
  bool operator==(const WarmUp&) const = default;
};

/// One warm-up for the room, one for whoever comes late, one without room and kit.
struct WarmUpPlan {
  std::vector<WarmUpNeed> needs;  // the weightiest first
  WarmUp together, late, away;
  std::vector<std::string> notes;
  bool operator==(const WarmUpPlan&) const = default;
};

}  // namespace repwright::domain
