#pragma once

#include <cstdint>
#include <set>
#include <string>
#include <vector>

#include "app/comers.hpp"
#include "app/gym_at_hand.hpp"
#include "base/result.hpp"
#include "domain/board.hpp"
#include "domain/door.hpp"

/// The list at the door: who is here, who is waited for, who does not come, and what each is told.
namespace repwright::app {

/// `Here`: seen at the door. `Expected`: the class counts on them. `Away`: it does not.
enum class ArrivalState : std::uint8_t { Here, Expected, Away };

struct Arriving {
  Comer comer;
  ArrivalState state = ArrivalState::Expected;
  bool walk_in = false;
  std::vector<std::string> told;  // action words, the shortest way to say what is different today
};

/// Who was seen at the door last as having come.
std::set<domain::PersonId> seen_here(const std::vector<domain::KeptDoorLine>& door);

/// Everybody whom the class knows, in the order of its lists. Fails with NotFound for a class that is not
/// there.
base::Result<std::vector<Arriving>> arrivals(const GymAtHand& at_hand, const std::string& class_id,
                                             const std::set<domain::PersonId>& here);

/// One tick of the list.
struct ArrivalTick {
  domain::PersonId person;
  ArrivalState state = ArrivalState::Here;
  base::Duration late;  // after the start; of who is here
};

/// The class after a tick: it counts on whoever is here or expected, and no more on who is away; the same
/// tick again changes nothing. Fails with Invalid where nobody would be left.
base::Result<domain::GymClass> ticked(const OpenGym& gym, domain::GymClass gym_class,
                                      const ArrivalTick& tick);

/// The class when nobody else comes. Fails with Invalid where nobody is here.
base::Result<domain::GymClass> list_closed(const OpenGym& gym, domain::GymClass gym_class,
                                           const std::set<domain::PersonId>& here);

/// What the floor does about how somebody is known: 'first day: half the counts, effort 5 to 6', 'back after
/// 24 days: half the pulls' (common practice, no source); empty for a regular.
std::string standing_action(const Comer& comer, const domain::GymClass& gym_class, const domain::Board& board,
                            const domain::Catalogue& catalogue);

}  // namespace repwright::app
