#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "base/quantity.hpp"

/// What a coach does to the clock of a class, as it is kept.
namespace repwright::domain {

/// Undo takes back the act before it, as if it had never been.
enum class ClockDeed : std::uint8_t { Start, Pause, GoOn, Add, Jump, LastCall, Stop, Undo };

/// `start`, `pause`, `go-on`, `add`, `jump`, `last-call`, `stop`, `undo`.
std::string_view name_of(ClockDeed deed);
std::optional<ClockDeed> clock_deed_of(std::string_view name);

struct ClockAct {
  ClockDeed deed = ClockDeed::Start;
  std::int64_t at_ms = 0;  // since 1970, UTC
  std::string cue;         // the id of the cue where Start and Jump land; Start may leave it empty: the first
  base::Duration seconds;  // of Add; negative: less time
  std::string key;         // made by who acted, another one for each act
  std::string who;
  bool operator==(const ClockAct&) const = default;
};

}  // namespace repwright::domain
