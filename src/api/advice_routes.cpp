#include "api/advice_routes.hpp"

#include <functional>

#include "api/away_json.hpp"
#include "api/fit_json.hpp"
#include "api/request_body.hpp"
#include "api/team_json.hpp"
#include "api/warm_up_json.hpp"
#include "api/what_if_question.hpp"
#include "app/away_class.hpp"
#include "app/fit_class.hpp"
#include "app/kit_named.hpp"
#include "app/team_class.hpp"
#include "app/warm_up_class.hpp"

namespace repwright::api {
namespace {

/// The answer to the request about the class that the body describes.
Answer about_class(const Call& call, RequestBody& body,
                   const std::function<Answer(const app::ClassRequest&)>& answer) {
  const auto asked = what_if_question(call, body);
  if (!asked) return tl::unexpected(asked.error());
  const auto gym_class = app::class_under(*call.gym, asked->what);
  if (!gym_class) return refuse(gym_class.error());
  return answer(app::request_of(*call.gym, asked->reading, *gym_class, asked->what));
}

/// `a01+a07`; a fault names the field.
tl::expected<std::vector<app::Apart>, Fault> apart_in(const std::vector<std::string>& texts) {
  std::vector<app::Apart> apart;
  for (const std::string& text : texts) {
    const std::size_t plus = text.find('+');
    if (plus == std::string::npos || plus == 0 || plus + 1 == text.size())
      return refuse_field("apart", "`" + text + "` is not two people, as in `a01+a07`");
    apart.emplace_back(text.substr(0, plus), text.substr(plus + 1));
  }
  return apart;
}

}  // namespace

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
  const auto minutes = body.number("minutes", 0.5, 60);
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
    const auto plan = app::team_class(request, *apart);
    if (!plan) return refuse(plan.error());
    return Response{.body = team_json(*plan)};
  });
}

Answer post_away(const Call& call) {
  RequestBody body(call.request.body);
  app::AwayWishes wishes{.place = {.kit = {}, .quiet = body.flag("quiet"), .outside = body.flag("outside")},
                         .who = body.text("who", longest_name),
                         .length = {}};
  if (const auto room = body.number("room", 0.5, 500)) wishes.place.room = *room * base::metre * base::metre;
  if (const auto minutes = body.number("minutes", 1, 240)) wishes.length = *minutes * base::minute;
  const std::vector<std::string> ids = body.texts("kit", longest_name);
  return about_class(call, body, [&](const app::ClassRequest& request) -> Answer {
    const auto kit = app::kit_named(ids, request.gym.catalogue);
    if (!kit) return refuse(kit.error());
    wishes.place.kit = {kit->begin(), kit->end()};
    const auto plan = app::away_class(request, wishes);
    if (!plan) return refuse(plan.error());
    return Response{.body = away_json(*plan)};
  });
}

}  // namespace repwright::api
