#include "api/clock_routes.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "api/clock_json.hpp"
#include "api/json_response.hpp"
#include "api/relief.hpp"
#include "api/request_body.hpp"
#include "app/class_clock.hpp"
#include "timetable/running_clock.hpp"

namespace repwright::api {
namespace {

using domain::ClockAct;
using domain::ClockDeed;
using nlohmann::ordered_json;

constexpr std::int64_t longest_way_ms = 120'000;  // of an act from a browser that was cut off
constexpr double latest_ms = 9e15;                // below 2 to the power of 53
constexpr int most_acts = 1'000'000;
constexpr int most_seconds = 3600;

/// A clock with all that was done to it.
struct Loaded {
  app::ClassClock clock;
  std::vector<ClockAct> acts;
};

tl::expected<Loaded, Fault> loaded(const Call& call) {
  if (takes_another_class(call, call.id)) return not_yours();
  auto clock = app::class_clock(*call.at_hand, call.id);
  if (!clock) return refuse(clock.error());
  auto acts = call.services.store.clock_acts(call.id);
  if (!acts) return refuse(acts.error());
  return Loaded{std::move(*clock), std::move(*acts)};
}

std::int64_t now_ms(const Call& call) {
  return call.services.clock().time_since_epoch().count();
}

Response told(const Call& call, const Loaded& from) {
  ordered_json json{{"class", call.id}};
  json.update(clock_json({from.clock, from.acts, now_ms(call)}));
  return json_response(json);
}

/// When it was done: as the browser says, if that can be, else now.
std::int64_t time_of_act(std::optional<double> said, const std::vector<ClockAct>& before, std::int64_t now) {
  const auto at = static_cast<std::int64_t>(said.value_or(static_cast<double>(now)));
  const std::int64_t earliest = std::max(now - longest_way_ms, before.empty() ? 0 : before.back().at_ms);
  return at > now ? now : std::max(at, std::min(earliest, now));
}

tl::expected<ClockAct, Fault> act_in(RequestBody& body, const Call& call) {
  ClockAct act;
  const std::string said = body.needed_text("act", longest_name);
  const auto deed = domain::clock_deed_of(said);
  act.key = body.needed_text("key", longest_name);
  act.cue = body.text("cue", longest_name).value_or("");
  act.seconds = base::Duration::from_si(body.whole("seconds", -most_seconds, most_seconds).value_or(0));
  act.who = call.who().name;
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  if (!deed) return refuse_field("act", "`act` is nothing that is done to a clock");
  act.deed = *deed;
  return act;
}

/// Why the act cannot be done to the clock as it is.
std::optional<Fault> misfit(const Loaded& to, const ClockAct& act) {
  if (act.deed == ClockDeed::Undo)
    return timetable::still_done(to.acts).empty()
               ? std::optional(Fault{.status = 409, .text = "nothing was done to the clock yet"})
               : std::nullopt;
  const auto position = timetable::position_at(to.acts, to.clock.cues, act.at_ms);
  if (timetable::fits(position, to.clock.cues, act)) return std::nullopt;
  return Fault{.status = 409,
               .text = "`" + std::string(domain::name_of(act.deed)) + "` does not fit the clock as it is"};
}

}  // namespace

bool clock_runs(const Call& call, const std::string& class_id) {
  const auto clock = app::class_clock(*call.at_hand, class_id);
  const auto acts = call.services.store.clock_acts(class_id);
  if (!clock || !acts) return false;
  const auto state = timetable::position_at(*acts, clock->cues, now_ms(call)).state;
  return state == timetable::ClockState::Running || state == timetable::ClockState::Paused;
}

Answer get_time(const Call& call) {
  return json_response({{"now_ms", now_ms(call)}});
}

Answer get_clock(const Call& call) {
  const auto from = loaded(call);
  if (!from) return tl::unexpected(from.error());
  return told(call, *from);
}

Answer post_clock_act(const Call& call) {
  auto to = loaded(call);
  if (!to) return tl::unexpected(to.error());
  RequestBody body(call.request.body);
  const auto seen = body.whole("version", 0, most_acts);
  if (!body.has("version")) return refuse_field("version", "`version` is missing");
  const auto said = body.number("at_ms", 0, latest_ms);
  auto act = act_in(body, call);
  if (!act) return tl::unexpected(act.error());
  const auto before = store::kept_before(to->acts, *act, seen.value_or(0));
  if (!before) return refuse(before.error());
  if (*before) return told(call, *to);
  act->at_ms = time_of_act(said, to->acts, now_ms(call));
  if (const auto fault = misfit(*to, *act)) return tl::unexpected(*fault);
  const auto kept = call.services.store.add_clock_act(call.id, *act, seen.value_or(0));
  if (!kept) return refuse(kept.error());
  to->acts.push_back(*act);
  Response response = told(call, *to);
  response.changed = {Topic::Clock};
  return response;
}

}  // namespace repwright::api
