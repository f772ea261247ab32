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

/// The body that one of those who were gathered has in a run: drawn from what is known of them, again while
/// it could not do what they have done before.
body::Body drawn_body(const ClassRequest& request, const Gathered& gathered, std::size_t person, int run);

/// What everybody does without advice.
domain::FittedBoard plain_fit_of(const ClassRequest& request, const Gathered& gathered);

}  // namespace repwright::app
