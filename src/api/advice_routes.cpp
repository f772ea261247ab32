#include "api/advice_routes.hpp"

#include <functional>
#include <utility>

#include "api/away_json.hpp"
#include "api/fit_json.hpp"
#include "api/request_body.hpp"
#include "api/team_json.hpp"
#include "api/timetable_json.hpp"
#include "api/warm_up_json.hpp"
#include "api/what_if_question.hpp"
#include "app/away_class.hpp"
#include "app/briefing.hpp"
#include "app/fit_class.hpp"
#include "app/hour_class.hpp"
#include "app/kit_named.hpp"
#include "app/own_away.hpp"
#include "app/team_class.hpp"
#include "app/warm_up_class.hpp"

namespace repwright::api {
namespace {

/// How the class that the body describes is to be changed, given its board.
using ClassChange = std::function<void(domain::GymClass& gym_class, const board::Reading& reading)>;

/// The answer to the request about the class that the body describes.
Answer about_class(const Call& call, RequestBody& body,
                   const std::function<Answer(const app::ClassRequest&)>& answer,
                   const ClassChange& change = {}) {
  const auto asked = what_if_question(call, body);
  if (!asked) return tl::unexpected(asked.error());
  auto gym_class = app::class_under(*call.gym, asked->what);
  if (!gym_class) return refuse(gym_class.error());
  if (change) change(*gym_class, asked->reading);
  return answer(app::knowing_request(*call.at_hand, asked->reading, *gym_class, asked->what).request);
}

/// Where somebody is, as the body says it; `kit` by ids that are not known to be right.
struct AskedPlace {
  app::AwayWishes wishes;
  std::vector<std::string> kit;
};
AskedPlace asked_place(RequestBody& body) {
  AskedPlace place;
  place.wishes.place.quiet = body.flag("quiet");
  place.wishes.place.outside = body.flag("outside");
  if (const auto room = body.number("room", 0.5, 500))
    place.wishes.place.room = *room * base::metre * base::metre;
  if (const auto minutes = body.number("minutes", 1, 240)) place.wishes.length = *minutes * base::minute;
  place.kit = body.texts("kit", longest_name);
  return place;
}

/// The wishes with their kit; a fault names a kind that nobody knows.
tl::expected<app::AwayWishes, Fault> wishes_of(const Call& call, AskedPlace place) {
  const auto kit = app::kit_named(place.kit, call.gym->knowledge.catalogue);
  if (!kit) return refuse(kit.error());
  place.wishes.place.kit = {kit->begin(), kit->end()};
  return std::move(place.wishes);
}

Answer told(const base::Result<domain::AwayPlan>& plan) {
  if (!plan) return refuse(plan.error());
  return Response{.body = away_json(*plan)};
}

/// `a01+a07`; a fault names the field.
tl::expected<std::vector<app::Apart>, Fault> apart_in(const std::vector<std::string>& texts) {
  std::vector<app::Apart> apart;
  for (const std::string& text : texts) {
    auto two = app::apart_of(text);
    if (!two) return refuse_field("apart", "`" + text + "` is not two people, as in `a01+a07`");
    apart.push_back(std::move(*two));
  }
  return apart;
}

}  // namespace

Answer post_timetable(const Call& call) {
  RequestBody body(call.request.body);
  const auto words_per_minute = body.whole("words_per_minute", 60, 240);
  const auto answer = [](const app::ClassRequest& request) -> Answer {
    const auto gathered = app::gather(request);
    if (!gathered) return refuse(gathered.error());
    const auto rehearsed = app::rehearse_class(request, *gathered);
    if (!rehearsed) return refuse(rehearsed.error());
    const auto hour = app::hour_class(request, *gathered, *rehearsed);
    if (!hour) return refuse(hour.error());
    return Response{.body = timetable_json(rehearsed->timetable, *hour)};
  };
  return about_class(call, body, answer, [&](domain::GymClass& gym_class, const board::Reading& reading) {
    if (words_per_minute) app::brief_at(gym_class, *words_per_minute, reading.board, call.gym->knowledge);
  });
}

Answer post_fit(const Call& call) {
  RequestBody body(call.request.body);
  return about_class(call, body, [&](const app::ClassRequest& request) -> Answer {
    const auto fit = app::fit_class(request, call.services.solver);
    if (!fit) return refuse(fit.error());
    return Response{.body = fit_json(fit->plan)};
  });
}

Answer post_warm_up(const Call& call) {
  RequestBody body(call.request.body);
  const auto minutes = body.number("minutes", 0.1, 60);
  const std::vector<std::string> kit = body.texts("kit", longest_name);
  return about_class(call, body, [&](const app::ClassRequest& request) -> Answer {
    app::WarmUpWishes wishes;
    if (minutes) wishes.length = *minutes * base::minute;
    const auto also_out = app::kit_named(kit, request.gym.catalogue);
    if (!also_out) return refuse(also_out.error());
    wishes.also_out = *also_out;
    const auto plan = app::warm_up_class(request, wishes, call.services.solver);
    if (!plan) return refuse(plan.error());
    return Response{.body = warm_up_json(*plan)};
  });
}

Answer post_pairs(const Call& call) {
  RequestBody body(call.request.body);
  const auto apart = apart_in(body.texts("apart", 2 * longest_name));
  if (!apart) return tl::unexpected(apart.error());
  return about_class(call, body, [&](const app::ClassRequest& request) -> Answer {
    const auto plan = app::team_class(request, *apart, call.services.solver);
    if (!plan) return refuse(plan.error());
    return Response{.body = team_json(*plan)};
  });
}

Answer post_away(const Call& call) {
  RequestBody body(call.request.body);
  AskedPlace place = asked_place(body);
  place.wishes.who = body.text("who", longest_name);
  return about_class(call, body, [&](const app::ClassRequest& request) -> Answer {
    const auto wishes = wishes_of(call, place);
    if (!wishes) return tl::unexpected(wishes.error());
    return told(app::away_class(request, *wishes, call.services.solver));
  });
}

Answer post_own_away(const Call& call) {
  const domain::PersonId person{call.id};
  if (call.who().role == Role::Person && call.who().person != person) return not_yours();
  RequestBody body(call.request.body);
  AskedPlace place = asked_place(body);
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  place.wishes.who = person.text;
  const auto wishes = wishes_of(call, std::move(place));
  if (!wishes) return tl::unexpected(wishes.error());
  return told(
      app::own_away(*call.at_hand, call.services.gate.today(), *wishes, call.services.solver, call.stop));
}

}  // namespace repwright::api
