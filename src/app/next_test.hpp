#pragma once

#include "app/rehearse_class.hpp"
#include "domain/reasons.hpp"

/// Which cheap test would tell most of a person, for the forecast of one board.
namespace repwright::app {

/// Rehearses the class and computes for each usual test how far its mark would narrow the range: the spread
/// of a normal posterior does not depend on what is measured. Left out are tests of movements that a limit of
/// the person forbids or that need a place which the hall has not got, and what gains less than a fiftieth.
/// Fails as `rehearse_class` does, and with NotFound for somebody who does not come.
base::Result<domain::TestOffers> next_tests(const ClassRequest& request, const domain::PersonId& person);

}  // namespace repwright::app
