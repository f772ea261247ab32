#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <string>

namespace repwright::domain {

enum class MassUnit : std::uint8_t { Kilograms, Pounds };
enum class TierRule : std::uint8_t {
  BySex,
  ByChoice
};  // `24/16`: first for m, second for f; or heavier/lighter
enum class TempoOrder : std::uint8_t { DownPauseUpTop, UpTopDownPause };

/// What a gym sets once: how its chalk is meant and how its floor behaves.
struct House {
  MassUnit mass_unit = MassUnit::Kilograms;
  TierRule tiers = TierRule::BySex;
  TempoOrder tempo = TempoOrder::DownPauseUpTop;
  bool legs_counted_together = true;  // '9 each leg' scores 18
  bool pull_up_may_swing = false;
  bool burpee_has_push_up = true;
  bool minute_one_is_odd = true;
  bool last_rest_counts = true;
  bool keep_place_while_resting = true;
  std::map<std::string, std::string> words;  // own shorthand → movement id
  bool operator==(const House&) const = default;
};

}  // namespace repwright::domain
