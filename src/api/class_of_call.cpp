#include "api/class_of_call.hpp"

#include "api/relief.hpp"

namespace repwright::api {

tl::expected<const domain::GymClass*, Fault> class_in(const Call& call) {
  if (takes_another_class(call, call.id)) return not_yours();
  const auto found = call.gym->classes.find(call.id);
  if (found == call.gym->classes.end()) return nothing_called("class", call.id);
  return &found->second;
}

}  // namespace repwright::api
