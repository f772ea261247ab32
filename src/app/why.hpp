#pragma once

#include "app/gym_learning.hpp"
#include "domain/reasons.hpp"

/// Why a person is forecast what they are.
namespace repwright::app {

/// The person of a rehearsal to tell of.
struct WhyRequest {
  const ClassRequest& request;  // with all that is known
  const ClassRehearsal& rehearsed;
  const GymLearning& learning;  // empty where nothing was learned
  domain::PersonId person;
};

/// Plays the class twice more, the person once as somebody like them and once by marks alone. Fails as
/// `rehearse_class` does, and with NotFound for somebody who does not come.
base::Result<domain::Why> why(const WhyRequest& request);

}  // namespace repwright::app
