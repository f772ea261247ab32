#pragma once

#include "api/route_table.hpp"

/// What is to be written down after a class, and what came of it.
namespace repwright::api {

/// `{"pieces": [{"piece", "title", "scheme", "form", "cap_s", "parts", "people": [...]}]}`, its people as
/// `form_person_json` has them; a person sees their own row.
Answer get_score_form(const Call& call);
/// `{"pieces": [{"piece", "people": [{"id", "name", "score", "done_as", "said_as", "own", "before",
/// "luck"}], "rankings": [{"done_as", "said_as", "rows": [{"place", "name", "score"}]}]}]}`; in rankings are
/// those who want to be, and none of fewer than two.
Answer get_results(const Call& call);
/// Whether that person wants to be in rankings: `{"in_rankings"}`.
Answer get_consent(const Call& call);
/// `{"in_rankings": true|false}`, by the person alone.
Answer put_consent(const Call& call);

}  // namespace repwright::api
