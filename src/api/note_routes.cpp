#include "api/note_routes.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "api/class_of_call.hpp"
#include "api/json_response.hpp"
#include "api/number_id.hpp"
#include "api/relief.hpp"
#include "api/request_body.hpp"
#include "base/civil_date.hpp"
#include "base/text.hpp"
#include "domain/people_search.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

constexpr std::size_t longest_note = 500;
constexpr std::size_t longest_date = 10;

ordered_json note_json(const domain::KeptNote& kept) {
  ordered_json json{{"number", kept.number}, {"person", nullptr}, {"text", kept.note.text},
                    {"until", nullptr},      {"by", kept.by.who}, {"at", base::format_instant(kept.by.when)}};
  if (!kept.note.person.empty()) json["person"] = kept.note.person.text;
  if (kept.note.until) json["until"] = base::format_date(*kept.note.until);
  return json;
}

Response told(const ordered_json& json) {
  Response response = json_response(json);
  response.changed = {Topic::People};
  return response;
}

}  // namespace

Answer get_notes(const Call& call) {
  const auto notes = call.services.store.notes_on(call.services.gate.today());
  if (!notes) return refuse(notes.error());
  const auto met = is_relief(call) ? met_by_relief(call) : std::set<domain::PersonId>{};
  ordered_json json = ordered_json::array();
  for (const domain::KeptNote& kept : *notes)
    if (!is_relief(call) || kept.note.person.empty() || met.contains(kept.note.person))
      json.push_back(note_json(kept));
  return json_response(json);
}

Answer post_note(const Call& call) {
  RequestBody body(call.request.body);
  domain::Note note{.person = {body.text("person", longest_name).value_or("")},
                    .text = body.needed_text("text", longest_note),
                    .until = std::nullopt,
                    .key = body.text("key", longest_key).value_or("")};
  const auto until = body.text("until", longest_date);
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  if (base::trim(note.text).empty()) return refuse_field("text", "`text` says nothing");
  if (until) {
    const auto day = base::parse_date(*until);
    if (!day) return refuse_field("until", "`until` is not a day such as 2027-05-31");
    if (*day < call.services.gate.today()) return refuse_field("until", "`until` is over");
    note.until = *day;
  }
  // A person tells the coaches something of themselves.
  if (call.who().role == Role::Person && note.person.empty()) note.person = call.who().person;
  if (call.who().role == Role::Person && note.person != call.who().person) return not_yours();
  if (!note.person.empty() && domain::find_person(call.gym->people, note.person) == nullptr)
    return refuse_field("person", "no person is called `" + note.person.text + "`");
  const auto number = call.services.store.add_note(note, call.stamp());
  if (!number) return refuse(number.error());
  return told({{"number", *number}});
}

Answer delete_note(const Call& call) {
  const auto number = number_in(call.id);
  if (!number) return nothing_called("note", call.id);
  const auto removed = call.services.store.remove_note(*number, call.stamp());
  if (!removed) return refuse(removed.error());
  return told({{"number", *number}});
}

}  // namespace repwright::api
