#pragma once

#include <vector>

#include "api/http.hpp"
#include "app/desk.hpp"

namespace repwright::api {

/// Lays the gym anew on the desk if another program changed it; what of it is another now, to be told to the
/// pages that are open. `unread`: why what is kept could not be read, if so.
struct ByOthers {
  std::vector<Topic> changed;
  std::optional<base::Error> unread;
};
ByOthers changed_by_others(app::Desk& desk);

}  // namespace repwright::api
