#pragma once

#include <vector>

#include "app/chalk_edit.hpp"
#include "app/rehearse_class.hpp"
#include "domain/target.hpp"

namespace repwright::app {

/// What to write beside each piece for who comes, from a rehearsal without caps: by when most are home, with
/// the board's text that says so, and what each level may aim at. Fails as `rehearse_class` does.
base::Result<std::vector<domain::PieceTarget>> class_targets(const ClassRequest& request,
                                                             const Gathered& gathered,
                                                             const timetable::Timetable& timetable,
                                                             const Chalkboard& on);

}  // namespace repwright::app
