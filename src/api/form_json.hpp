#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string_view>

#include "app/score_form.hpp"

namespace repwright::api {

/// "time", "rounds", "reps", "load", "distance", "kcal".
std::string_view name_of(app::ScoreForm form);

/// `{"id", "name", "done_as", "said_as", "with", "forecast", "least", "most", "holds",
/// "capped", "reps_at_cap", "loads", "load_step"}`
nlohmann::ordered_json form_person_json(const app::FormPerson& person);

}  // namespace repwright::api
