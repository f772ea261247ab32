#pragma once

#include <optional>
#include <stop_token>
#include <string>

#include "app/gym_at_hand.hpp"
#include "base/result.hpp"
#include "domain/rehearsal.hpp"

/// What it does to a class that other people come than had booked.
namespace repwright::app {

/// The few figures of a rehearsal that a coach at the door asks for.
struct AtTheDoor {
  int heads = 0;
  std::optional<double> slack_s;      // of the hour that is left in nine of ten classes; below 0: runs over
  std::string queue_at;               // the place with the longest wait; empty: nobody waits for long
  double queue_s = 0;                 // that wait, in nine of ten classes
  std::optional<double> last_home_s;  // of the class, when the last piece is over in the middle class
};
AtTheDoor at_the_door(const domain::Rehearsal& rehearsal);

struct ListEffect {
  int unbooked = 0;   // who came without having booked
  int away = 0;       // who had booked and does not come
  int late = 0;       // of those who come
  AtTheDoor planned;  // with those who had booked
  AtTheDoor now;      // with the list as it is
};

/// Both rehearsed with the same luck. Fails as `rehearse_what_if`.
base::Result<ListEffect> list_effect(const GymAtHand& at_hand, const std::string& class_id,
                                     const std::stop_token& stop);

/// '19 instead of 12: 4 minutes less slack, up to 2:10 of waiting at the pull-up bar, the last one home 3:20
/// later.'
std::string in_words(const ListEffect& effect);

}  // namespace repwright::app
