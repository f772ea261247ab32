#include "api/home_routes.hpp"

#include <nlohmann/json.hpp>

#include "api/class_of_call.hpp"
#include "api/item_json.hpp"
#include "api/json_response.hpp"
#include "app/due_home.hpp"

namespace repwright::api {

using nlohmann::ordered_json;

Answer get_home(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  const auto due = app::due_home(*call.at_hand, call.id, call.stop);
  if (!due) return refuse(due.error());
  ordered_json json{{"heats", ordered_json::array()}};
  for (const app::DueHome& each : *due) {
    ordered_json one{{"piece", each.piece},
                     {"heat", each.heat},
                     {"people", each.people},
                     {"first_s", number_json(each.first_s)},
                     {"middle_s", number_json(each.middle_s)},
                     {"last_s", number_json(each.last_s)},
                     {"last_late_s", number_json(each.last_late_s)},
                     {"call_s", nullptr},
                     {"out_at_call", each.out_at_call}};
    if (each.call_s) one["call_s"] = number_json(*each.call_s);
    json["heats"].push_back(std::move(one));
  }
  return json_response(json);
}

}  // namespace repwright::api
