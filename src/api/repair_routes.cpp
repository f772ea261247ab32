#include "api/repair_routes.hpp"

#include "api/repairs_json.hpp"
#include "api/what_if_question.hpp"
#include "app/repair_class.hpp"

namespace repwright::api {

Answer post_repairs(const Call& call) {
  const auto asked = what_if_question(call);
  if (!asked) return tl::unexpected(asked.error());
  const auto plan = app::repair_what_if(*call.at_hand, asked->reading, asked->text, asked->what);
  if (!plan) return refuse(plan.error());
  return Response{.body = repairs_json(*plan)};
}

}  // namespace repwright::api
