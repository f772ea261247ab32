#include "api/gym_routes.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "api/item_json.hpp"
#include "api/json_response.hpp"
#include "api/people_json.hpp"
#include "api/relief.hpp"
#include "api/version.hpp"
#include "app/last_time.hpp"
#include "app/next_class.hpp"
#include "base/civil_date.hpp"
#include "domain/people_search.hpp"
#include "store/class_json.hpp"
#include "store/hall_json.hpp"
#include "store/house_json.hpp"
#include "store/people_csv.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

/// A value of the gym folder with the version that a change of it must name.
Response kept(const char* name, const std::string& text) {
  return json_response({{"version", version_of(text)}, {name, ordered_json::parse(text)}});
}

/// Whether all that who asks may see of classes is one: a relief coach theirs, a screen the next.
bool sees_one_class(const Call& call) {
  return is_relief(call) || call.who().role == Role::Screen;
}

/// That class, or null if it is gone.
const domain::GymClass* only_class(const Call& call) {
  if (is_relief(call)) return relief_class(call);
  const auto next = call.gym->classes.find(app::next_class(*call.gym, call.services.gate.today()));
  return next == call.gym->classes.end() ? nullptr : &next->second;
}

/// When the board was saved; null if the store does not know.
ordered_json saved_at(const app::OpenGym& gym, const std::string& board) {
  const auto known = gym.versions.boards.find(board);
  if (known == gym.versions.boards.end()) return nullptr;
  const auto& by = known->second.by;
  return by ? ordered_json(base::format_instant(by->when)) : ordered_json(nullptr);
}

ordered_json class_row(const domain::GymClass& gym_class) {
  ordered_json row{{"id", gym_class.id}, {"date", nullptr}, {"start", nullptr}, {"minutes", nullptr}};
  if (gym_class.date) row["date"] = base::format_date(*gym_class.date);
  if (gym_class.start_minute) row["start"] = base::format_time_of_day(*gym_class.start_minute);
  if (gym_class.length) row["minutes"] = number_json(*gym_class.length / base::minute);
  row["board"] = gym_class.board_id;
  row["booked"] = gym_class.booked.size();
  return row;
}

}  // namespace

Answer get_gym(const Call& call) {
  const auto today = call.services.gate.today();
  const std::string next = is_relief(call) ? call.who().class_id : app::next_class(*call.gym, today);
  ordered_json json{{"name", call.gym->knowledge.hall.name},
                    {"invented", app::is_invented(*call.gym)},
                    {"today", base::format_date(today)},
                    {"role", name_of(call.who().role)},
                    {"next_class", nullptr},
                    {"unread", nullptr}};
  if (!next.empty() && call.who().role != Role::Person) json["next_class"] = next;
  if (call.unread && call.who().role != Role::Person) json["unread"] = call.unread->message;
  return json_response(json);
}

Answer get_boards(const Call& call) {
  ordered_json json = ordered_json::array();
  for (const auto& [id, text] : call.gym->knowledge.boards)
    json.push_back(
        {{"id", id}, {"title", call.at_hand->read(text).board.title}, {"saved_at", saved_at(*call.gym, id)}});
  return json_response(json);
}

Answer get_board(const Call& call) {
  if (sees_one_class(call)) {
    const domain::GymClass* only = only_class(call);
    if (only == nullptr || only->board_id != call.id) return not_yours();
  }
  const auto board = call.gym->knowledge.boards.find(call.id);
  if (board == call.gym->knowledge.boards.end()) return nothing_called("board", call.id);
  return json_response({{"id", call.id}, {"text", board->second}, {"version", version_of(board->second)}});
}

Answer get_board_last(const Call& call) {
  if (!call.gym->knowledge.boards.contains(call.id)) return nothing_called("board", call.id);
  const auto last = app::last_time(call.gym->knowledge.scores, call.id);
  if (!last) return json_response({{"last", nullptr}});
  ordered_json pieces = ordered_json::array();
  for (const app::PieceLastTime& each : last->pieces)
    pieces.push_back({{"piece", each.piece},
                      {"people", each.people},
                      {"capped", each.capped},
                      {"best", each.best},
                      {"middle", each.middle},
                      {"last", each.last},
                      {"effort", each.effort ? number_json(*each.effort) : ordered_json(nullptr)}});
  return json_response({{"last", {{"date", base::format_date(last->date)}, {"pieces", std::move(pieces)}}}});
}

Answer get_classes(const Call& call) {
  ordered_json json = ordered_json::array();
  for (const auto& [id, each] : call.gym->classes)
    if (!sees_one_class(call) || &each == only_class(call)) json.push_back(class_row(each));
  return json_response(json);
}

Answer get_class(const Call& call) {
  if (takes_another_class(call, call.id)) return not_yours();
  const auto found = call.gym->classes.find(call.id);
  if (found == call.gym->classes.end()) return nothing_called("class", call.id);
  return kept("class", store::write_class(found->second));
}

Answer get_people(const Call& call) {
  if (!is_relief(call)) return json_response(people_json(call.gym->people));
  const auto met = met_by_relief(call);
  ordered_json rows = ordered_json::array();
  for (const domain::Person& person : call.gym->people)
    if (met.contains(person.id)) rows.push_back(floor_json(person, call.services.gate.today()));
  return json_response({{"rows", std::move(rows)}});
}

Answer get_person(const Call& call) {
  const domain::PersonId id{call.id};
  if (call.who().role == Role::Person && call.who().person != id) return not_yours();
  if (is_relief(call) && !met_by_relief(call).contains(id)) return not_yours();
  const domain::Person* person = domain::find_person(call.gym->people, id);
  if (person == nullptr) return nothing_called("person", call.id);
  return json_response(is_relief(call) ? floor_json(*person, call.services.gate.today())
                                       : person_json(*person));
}

Answer post_people_preview(const Call& call) {
  const store::PeoplePreview preview =
      store::preview_people(call.request.body, "people.csv", call.gym->knowledge.catalogue);
  ordered_json json = preview.problems.empty() ? people_json(preview.file.people)
                                               : ordered_json{{"columns", nullptr}, {"rows", nullptr}};
  json["notes"] = preview.file.notes;
  json["bad"] = ordered_json::array();
  for (const store::Problem& problem : preview.problems)
    json["bad"].push_back(
        {{"line", problem.line}, {"row", problem.row}, {"column", problem.field}, {"text", problem.text}});
  return json_response(json);
}

Answer get_hall(const Call& call) {
  return kept("hall", store::write_hall(call.gym->knowledge.hall));
}

Answer get_house(const Call& call) {
  return kept("house", store::write_house(call.gym->knowledge.house));
}

}  // namespace repwright::api
