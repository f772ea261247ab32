#include "api/arrival_routes.hpp"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "api/class_of_call.hpp"
#include "api/item_json.hpp"
#include "api/json_response.hpp"
#include "api/request_body.hpp"
#include "app/arrivals.hpp"
#include "app/gym_lookup.hpp"
#include "app/list_effect.hpp"
#include "domain/people_search.hpp"
#include "store/gym_folder.hpp"

namespace repwright::api {
namespace {

using app::ArrivalState;
using base::Result;
using nlohmann::ordered_json;

constexpr double latest_s = 14'400;
constexpr std::array<std::string_view, 3> states{"here", "expected", "away"};  // in the order of ArrivalState

std::optional<ArrivalState> state_of(std::string_view name) {
  const auto at = std::ranges::find(states, name);
  return at == states.end() ? std::nullopt : std::optional(static_cast<ArrivalState>(at - states.begin()));
}

ordered_json arriving_json(const app::Arriving& one) {
  return {{"id", one.comer.person.id.text},
          {"name", one.comer.person.name},
          {"state", states[static_cast<std::size_t>(one.state)]},
          {"late_s", seconds_json(one.comer.late)},
          {"walk_in", one.walk_in},
          {"told", one.told}};
}

ordered_json at_the_door_json(const app::AtTheDoor& figures) {
  ordered_json json{{"heads", figures.heads},
                    {"slack_s", nullptr},
                    {"queue_at", figures.queue_at},
                    {"queue_s", number_json(figures.queue_s)},
                    {"last_home_s", nullptr}};
  if (figures.slack_s) json["slack_s"] = number_json(*figures.slack_s);
  if (figures.last_home_s) json["last_home_s"] = number_json(*figures.last_home_s);
  return json;
}

/// Keeps what `change` makes of the class of the address, as it is by then.
Result<void> change_class(const Call& call, app::OpenGym& gym,
                          const std::function<Result<domain::GymClass>(domain::GymClass)>& change) {
  const auto known = app::class_called(gym, call.id);
  if (!known) return tl::unexpected(known.error());
  const auto next = change(**known);
  if (!next) return tl::unexpected(next.error());
  if (*next == **known) return {};
  domain::Saved& saved = gym.versions.classes[call.id];
  const auto kept = call.services.store.save_class(*next, call.seen(saved));
  if (!kept) return tl::unexpected(kept.error());
  saved = *kept;
  gym.classes.at(call.id) = *next;
  return {};
}

/// Puts down who was seen at the door; a line of the same key is there already.
Result<void> put_at_door(const Call& call, const domain::PersonId& person, ArrivalState state,
                         const std::string& key) {
  const domain::DoorLine line{
      .class_id = call.id,
      .person = person,
      .act = state == ArrivalState::Here ? domain::DoorAct::Here : domain::DoorAct::NotHere,
      .seen = call.services.gate.now(),
      .key = key};
  return call.services.store.add_door_line(line, call.stamp()).map([](std::int64_t) {});
}

/// Whether what has that key was done as a whole before.
Result<bool> sent_before(const Call& call, const std::string& key) {
  return call.services.store.door_lines(call.id).map([&](const std::vector<domain::KeptDoorLine>& lines) {
    return !key.empty() &&
           std::ranges::any_of(lines, [&](const domain::KeptDoorLine& each) { return each.line.key == key; });
  });
}

Response told(const ordered_json& json, std::vector<Topic> changed) {
  Response response = json_response(json);
  response.changed = std::move(changed);
  return response;
}

/// The id of somebody who walked in: the same for the same key, so that a list sent twice has them once.
domain::PersonId id_of_walk_in(const std::string& key) {
  return {"walk-in-" + key};
}

}  // namespace

Answer get_arrivals(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  const auto door = call.services.store.door_lines(call.id);
  if (!door) return refuse(door.error());
  const auto list = app::arrivals(*call.at_hand, call.id, app::seen_here(*door));
  if (!list) return refuse(list.error());
  ordered_json json{{"people", ordered_json::array()}};
  for (const app::Arriving& one : *list) json["people"].push_back(arriving_json(one));
  return json_response(json);
}

Answer get_list_effect(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  const auto effect = app::list_effect(*call.at_hand, call.id, call.stop);
  if (!effect) return refuse(effect.error());
  return json_response({{"words", app::in_words(*effect)},
                        {"planned", at_the_door_json(effect->planned)},
                        {"now", at_the_door_json(effect->now)}});
}

Answer post_arrival(const Call& call) {
  const auto known = class_in(call);
  if (!known) return tl::unexpected(known.error());
  RequestBody body(call.request.body);
  const std::string key = body.text("key", longest_key).value_or("");
  app::ArrivalTick tick{.person = {body.needed_text("person", longest_name)},
                        .late = body.number("late_s", 0, latest_s).value_or(0) * base::second};
  const auto state = state_of(body.needed_text("state", longest_name));
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  if (!state) return refuse_field("state", "`state` is not here, expected or away");
  if (domain::find_person(call.gym->people, tick.person) == nullptr)
    return refuse_field("person", "no person is called `" + tick.person.text + "`");
  tick.state = *state;
  const ordered_json answer{{"person", tick.person.text},
                            {"state", states[static_cast<std::size_t>(tick.state)]}};
  const auto before = sent_before(call, key);
  if (!before) return refuse(before.error());
  if (*before) return told(answer, {});
  const auto next = app::ticked(*call.gym, **known, tick);
  if (!next) return refuse(next.error());
  // Most ticks change nothing of the class, and then nothing is to be worked out anew.
  const auto done = *next == **known ? Result<void>{} : call.services.desk.change([&](app::OpenGym& gym) {
    return change_class(call, gym,
                        [&](domain::GymClass now) { return app::ticked(gym, std::move(now), tick); });
  });
  if (!done) return refuse(done.error());
  // Last: a tick whose line is there is done as a whole.
  if (const auto seen = put_at_door(call, tick.person, tick.state, key); !seen) return refuse(seen.error());
  return told(answer, *next == **known ? std::vector{Topic::Door} : std::vector{Topic::Door, Topic::Classes});
}

Answer post_nobody_else(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  RequestBody body(call.request.body);
  body.text("key", longest_key);
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  const auto done = call.services.desk.change([&](app::OpenGym& gym) -> Result<void> {
    const auto door = call.services.store.door_lines(call.id);
    if (!door) return tl::unexpected(door.error());
    return change_class(call, gym, [&](domain::GymClass now) {
      return app::list_closed(gym, std::move(now), app::seen_here(*door));
    });
  });
  if (!done) return refuse(done.error());
  return told({{"class", call.id}}, {Topic::Door, Topic::Classes});
}

Answer post_walk_in(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  RequestBody body(call.request.body);
  domain::Person person;
  person.name = body.needed_text("name", longest_name);
  const std::string key = body.needed_text("key", longest_key);
  person.id = id_of_walk_in(key);
  const base::Duration late = body.number("late_s", 0, latest_s).value_or(0) * base::second;
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  if (const auto fine = store::check_id(person.id.text); !fine)
    return refuse_field("key", fine.error().message);
  Response answer = told({{"person", person.id.text}}, {Topic::People, Topic::Door, Topic::Classes});
  const auto before = sent_before(call, key);
  if (!before) return refuse(before.error());
  if (*before) return answer;
  const auto done = call.services.desk.change([&](app::OpenGym& gym) -> Result<void> {
    if (domain::find_person(gym.people, person.id) == nullptr) {
      gym.people.push_back(person);
      const auto kept = call.services.store.save_people(gym.people, call.seen(gym.versions.people));
      if (!kept) return tl::unexpected(kept.error());
      gym.versions.people = *kept;
    }
    return change_class(call, gym, [&](domain::GymClass now) {
      if (std::ranges::find(now.walk_ins, person.id) == now.walk_ins.end()) now.walk_ins.push_back(person.id);
      return app::ticked(gym, std::move(now), {person.id, ArrivalState::Here, late});
    });
  });
  if (!done) return refuse(done.error());
  if (const auto seen = put_at_door(call, person.id, ArrivalState::Here, key); !seen)
    return refuse(seen.error());
  return answer;
}

}  // namespace repwright::api
