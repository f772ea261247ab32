#pragma once

#include "domain/rehearsal.hpp"
#include "domain/repair.hpp"

namespace repwright::advice {

/// The few figures of a rehearsal by which repairs are compared.
domain::Consequences consequences_of(const domain::Rehearsal& rehearsal);

/// How heavily a version of the board weighs on the class, in minutes per person: waiting, people stopped by
/// the cap, a class that runs over, and work lost against `asked_work_s`. docs/decisions/repairs.md says what
/// counts how much.
double burden(const domain::Consequences& consequences, double asked_work_s);

}  // namespace repwright::advice
