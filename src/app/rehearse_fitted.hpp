#pragma once

#include "app/rehearse_class.hpp"
#include "rehearsal/cast.hpp"

namespace repwright::app {

/// As `rehearse_class`, with what everybody does given instead of the plain fit; in the order of those who
/// were gathered.
base::Result<ClassRehearsal> rehearse_fitted(const ClassRequest& request, const Gathered& gathered,
                                             domain::FittedBoard fitted);

/// The bodies of those who were gathered, as a rehearsal asks for them; both must outlive the answer.
rehearsal::Cast cast_of(const ClassRequest& request, const Gathered& gathered);

/// What everybody does without advice.
domain::FittedBoard plain_fit_of(const ClassRequest& request, const Gathered& gathered);

}  // namespace repwright::app
