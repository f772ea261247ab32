#include "api/route_table.hpp"

#include <array>
#include <exception>

#include "api/account_routes.hpp"
#include "api/advice_routes.hpp"
#include "api/arrival_routes.hpp"
#include "api/board_routes.hpp"
#include "api/brief_routes.hpp"
#include "api/change_routes.hpp"
#include "api/changed_by_others.hpp"
#include "api/clock_routes.hpp"
#include "api/cookies.hpp"
#include "api/emergency_routes.hpp"
#include "api/gym_routes.hpp"
#include "api/home_routes.hpp"
#include "api/line_up_routes.hpp"
#include "api/note_routes.hpp"
#include "api/own_routes.hpp"
#include "api/relief.hpp"
#include "api/repair_routes.hpp"
#include "api/result_routes.hpp"
#include "api/runner_routes.hpp"
#include "api/score_routes.hpp"
#include "api/sign_in_routes.hpp"

namespace repwright::api {
namespace {

constexpr Access coaches{Role::Owner, Role::Coach, Role::Relief};

constexpr Access own_page{Role::Owner, Role::Coach, Role::Person};
constexpr Access everybody{Role::Owner, Role::Coach, Role::Relief, Role::Person};
constexpr Access all_and_screens{Role::Owner, Role::Coach, Role::Relief, Role::Person, Role::Screen};
constexpr Access coaches_and_screens{Role::Owner, Role::Coach, Role::Relief, Role::Screen};
constexpr Access owner_and_coach{Role::Owner, Role::Coach};
constexpr Access owner{Role::Owner};

constexpr std::array table{
    Route{Method::Get, "/api/me", Access::anyone(), Cost::Quick, get_me},
    Route{Method::Post, "/api/owner", Access::anyone(), Cost::Long, post_owner},
    Route{Method::Post, "/api/sign-in", Access::anyone(), Cost::Long, post_sign_in},
    Route{Method::Post, "/api/sign-out", Access::anyone(), Cost::Change, post_sign_out},
    Route{Method::Get, "/api/accounts", owner_and_coach, Cost::Quick, get_accounts},
    Route{Method::Post, "/api/accounts", owner_and_coach, Cost::Long, post_account},
    Route{Method::Post, "/api/accounts/sign-out", owner, Cost::Change, post_account_sign_out},
    Route{Method::Post, "/api/accounts/remove", owner_and_coach, Cost::Change, post_account_remove},
    Route{Method::Get, "/api/trail", owner, Cost::Quick, get_trail},
    Route{Method::Get, "/api/trail/*", owner, Cost::Quick, get_trail_before},
    Route{Method::Get, "/api/events", all_and_screens, Cost::Quick, get_events},
    Route{Method::Get, "/api/gym", all_and_screens, Cost::Quick, get_gym},
    Route{Method::Get, "/api/boards", owner_and_coach, Cost::Quick, get_boards},
    Route{Method::Get, "/api/boards/*", coaches_and_screens, Cost::Quick, get_board},
    Route{Method::Put, "/api/boards/*", owner_and_coach, Cost::Change, put_board},
    Route{Method::Get, "/api/boards/*/last", owner_and_coach, Cost::Quick, get_board_last},
    Route{Method::Get, "/api/classes", coaches_and_screens, Cost::Quick, get_classes},
    Route{Method::Get, "/api/classes/*", coaches, Cost::Quick, get_class},
    Route{Method::Put, "/api/classes/*", owner_and_coach, Cost::Change, put_class},
    Route{Method::Delete, "/api/classes/*", owner_and_coach, Cost::Change, delete_class},
    Route{Method::Get, "/api/classes/*/brief", coaches, Cost::Long, get_brief},
    Route{Method::Get, "/api/classes/*/arrivals", coaches, Cost::Quick, get_arrivals},
    Route{Method::Post, "/api/classes/*/arrivals", coaches, Cost::Change, post_arrival},
    Route{Method::Get, "/api/classes/*/arrivals/effect", coaches, Cost::Long, get_list_effect},
    Route{Method::Post, "/api/classes/*/arrivals/nobody-else", coaches, Cost::Change, post_nobody_else},
    Route{Method::Post, "/api/classes/*/walk-ins", coaches, Cost::Change, post_walk_in},
    Route{Method::Get, "/api/classes/*/runners", coaches, Cost::Quick, get_runners},
    Route{Method::Get, "/api/classes/*/runs", coaches, Cost::Long, get_runs},
    Route{Method::Post, "/api/classes/*/runners", coaches, Cost::Change, post_runner},
    Route{Method::Get, "/api/emergency", all_and_screens, Cost::Quick, get_emergency},
    Route{Method::Put, "/api/emergency", owner_and_coach, Cost::Change, put_emergency},
    Route{Method::Get, "/api/classes/*/scores", everybody, Cost::Quick, get_class_scores},
    Route{Method::Post, "/api/classes/*/scores", everybody, Cost::Entry, post_class_score},
    Route{Method::Get, "/api/classes/*/score-form", everybody, Cost::Long, get_score_form},
    Route{Method::Get, "/api/classes/*/results", coaches_and_screens, Cost::Long, get_results},
    Route{Method::Get, "/api/classes/*/home", all_and_screens, Cost::Long, get_home},
    Route{Method::Get, "/api/classes/*/line-up", coaches_and_screens, Cost::Long, get_line_up},
    Route{Method::Get, "/api/people/*/today", own_page, Cost::Long, get_own_today},
    Route{Method::Post, "/api/people/*/away", own_page, Cost::Long, post_own_away},
    Route{Method::Get, "/api/people/*/consent", Access{Role::Person}, Cost::Quick, get_consent},
    Route{Method::Put, "/api/people/*/consent", Access{Role::Person}, Cost::Change, put_consent},
    Route{Method::Get, "/api/classes/*/effort", everybody, Cost::Quick, get_efforts},
    Route{Method::Put, "/api/classes/*/effort", everybody, Cost::Entry, put_effort},
    Route{Method::Get, "/api/time", all_and_screens, Cost::Quick, get_time},
    Route{Method::Get, "/api/classes/*/clock", all_and_screens, Cost::Quick, get_clock},
    Route{Method::Post, "/api/classes/*/clock", coaches, Cost::Change, post_clock_act},
    Route{Method::Put, "/api/scores/*", everybody, Cost::Change, put_score},
    Route{Method::Get, "/api/scores/*/versions", everybody, Cost::Quick, get_score_versions},
    Route{Method::Get, "/api/notes", coaches, Cost::Quick, get_notes},
    Route{Method::Post, "/api/notes", own_page, Cost::Change, post_note},
    Route{Method::Delete, "/api/notes/*", owner_and_coach, Cost::Change, delete_note},
    Route{Method::Get, "/api/people", coaches, Cost::Quick, get_people},
    Route{Method::Put, "/api/people", owner_and_coach, Cost::Change, put_people},
    Route{Method::Get, "/api/people/*", everybody, Cost::Quick, get_person},
    Route{Method::Get, "/api/people/*/scores", own_page, Cost::Long, get_person_scores},
    Route{Method::Post, "/api/people/preview", owner_and_coach, Cost::Long, post_people_preview},
    Route{Method::Get, "/api/hall", coaches, Cost::Quick, get_hall},
    Route{Method::Put, "/api/hall", owner_and_coach, Cost::Change, put_hall},
    Route{Method::Get, "/api/house", coaches, Cost::Quick, get_house},
    Route{Method::Put, "/api/house", owner_and_coach, Cost::Change, put_house},
    Route{Method::Post, "/api/read", coaches_and_screens, Cost::Quick, post_read},
    Route{Method::Post, "/api/tidy", coaches, Cost::Quick, post_tidy},
    Route{Method::Post, "/api/rehearse", coaches, Cost::Long, post_rehearse},
    Route{Method::Post, "/api/repairs", owner_and_coach, Cost::Long, post_repairs},
    Route{Method::Post, "/api/timetable", coaches, Cost::Long, post_timetable},
    Route{Method::Post, "/api/fit", coaches, Cost::Long, post_fit},
    Route{Method::Post, "/api/warmup", coaches, Cost::Long, post_warm_up},
    Route{Method::Post, "/api/pairs", coaches, Cost::Long, post_pairs},
    Route{Method::Post, "/api/away", owner_and_coach, Cost::Long, post_away},
    Route{Method::Get, "/api/movements", coaches, Cost::Quick, get_movements},
    Route{Method::Get, "/api/equipment", coaches, Cost::Quick, get_equipment},
    Route{Method::Get, "/api/limits", owner_and_coach, Cost::Quick, get_limits},
};

constexpr std::size_t longest_path = 300;
constexpr std::size_t longest_id = 100;

std::string_view name_of(Method method) {
  switch (method) {
    case Method::Get:
      return "GET";
    case Method::Put:
      return "PUT";
    case Method::Post:
      return "POST";
    case Method::Delete:
      return "DELETE";
    case Method::Other:
      break;
  }
  return "";
}

/// What can be a file name everywhere, and so never needs escapes.
bool is_id(std::string_view part) {
  constexpr std::string_view others = ".-_";
  for (const char c : part)
    if (!((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
          others.find(c) != std::string_view::npos))
      return false;
  return !part.empty() && part.size() <= longest_id && part.front() != '.';
}

/// The id in the path if it is of that pattern (empty if the pattern has none).
std::optional<std::string> id_in(std::string_view path, std::string_view pattern) {
  const std::size_t star = pattern.find('*');
  if (star == std::string_view::npos) return path == pattern ? std::optional<std::string>("") : std::nullopt;
  const std::string_view head = pattern.substr(0, star);
  const std::string_view tail = pattern.substr(star + 1);
  if (path.size() <= head.size() + tail.size() || !path.starts_with(head) || !path.ends_with(tail))
    return std::nullopt;
  const std::string_view id = path.substr(head.size(), path.size() - head.size() - tail.size());
  return is_id(id) ? std::optional<std::string>(id) : std::nullopt;
}

/// What the answer is, with the gym on the desk as it is; `unread`: why that is not as it is kept.
Answer answer(const Request& request, const Services& services, std::optional<base::Error> unread,
              std::stop_token stop) {
  const Match met = match(request.method, request.path);
  if (met.route == nullptr)
    return met.allowed.empty() ? refuse(404, "there is nothing at this address")
                               : refuse(405, "this address is for " + met.allowed);
  if (request.method != Method::Get && !is_from_our_page(request))
    return refuse(403, "this did not come from the page of this program");
  auto asked_by = services.gate.who(session_in(request));
  if (!asked_by) return refuse(asked_by.error());
  std::optional<Caller> caller = std::move(*asked_by);
  auto at_hand = services.desk.at_hand();
  const app::OpenGym* gym = &at_hand->gym();
  const bool over = caller && class_is_over(*caller, *gym, services.gate.today());
  if (over) caller.reset();
  if (!met.route->access.open()) {
    if (over) return refuse(401, "the class that you took is over, or was taken away; thank you");
    if (!caller) return refuse(401, "sign in first");
    if (!met.route->access.admits(caller->role)) return refuse(403, "this is not for you to see");
  }
  return met.route->handler({request, met.id, std::move(caller), services, std::move(at_hand), gym,
                             std::move(unread), std::move(stop)});
}

}  // namespace

std::span<const Route> routes() {
  return table;
}

Match match(Method method, std::string_view path) {
  Match met;
  if (path.size() > longest_path) return met;
  for (const Route& route : table) {
    auto id = id_in(path, route.path);
    if (!id) continue;
    if (route.method == method) return {&route, std::move(*id), ""};
    met.allowed += (met.allowed.empty() ? "" : ", ") + std::string(name_of(route.method));
  }
  return met;
}

Cost cost_of(const Request& request) {
  const Match met = match(request.method, request.path);
  return met.route == nullptr ? Cost::Quick : met.route->cost;
}

Response respond(const Request& request, const Services& services, std::stop_token stop) {
  try {
    ByOthers others = changed_by_others(services.desk);
    const Answer given = answer(request, services, std::move(others.unread), std::move(stop));
    Response response = given ? *given : response_of(given.error());
    if (response.status == 405)
      response.headers.emplace_back("Allow", match(request.method, request.path).allowed);
    response.changed.insert(response.changed.end(), others.changed.begin(), others.changed.end());
    return response;
  } catch (const std::exception& fault) {
    Response failed = response_of({.status = 500, .text = "a fault of the program; its terminal says which"});
    failed.log = std::string(name_of(request.method)) + " " + request.path + ": " + fault.what();
    return failed;
  }
}

}  // namespace repwright::api
