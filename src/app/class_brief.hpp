#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/comers.hpp"
#include "app/gym_at_hand.hpp"
#include "base/result.hpp"

/// What a coach wants to know of a class before it begins, beside its rehearsal.
namespace repwright::app {

/// Loose kit of one kind and size that has to lie ready: what the piece that needs most of it needs.
struct SetOut {
  domain::EquipmentId equipment;
  std::string name;
  std::optional<base::Mass> mass;
  std::optional<base::Length> height;
  int needed = 0;
  int available = 0;
};

struct ClassBrief {
  std::vector<Comer> people;    // in the order of the class's list
  std::vector<SetOut> set_out;  // by name, then by size
};

/// The brief of a class of the gym. Fails with NotFound where the class or its board is not there, and as
/// `rehearse_class`; a board without work has people and nothing to set out.
base::Result<ClassBrief> class_brief(const GymAtHand& at_hand, const std::string& class_id,
                                     const std::stop_token& stop);

}  // namespace repwright::app
