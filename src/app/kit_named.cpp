#include "app/kit_named.hpp"

#include <fmt/format.h>

namespace repwright::app {

base::Result<std::vector<domain::EquipmentId>> kit_named(const std::vector<std::string>& ids,
                                                         const domain::Catalogue& catalogue) {
  std::vector<domain::EquipmentId> kit;
  for (const std::string& id : ids) {
    kit.push_back({id});
    if (catalogue.find(kit.back()) != nullptr) continue;
    std::string known;
    for (const domain::Equipment& one : catalogue.equipment)
      known += (known.empty() ? "" : ", ") + one.id.text;
    return base::failure(base::ErrorCode::NotFound,
                         fmt::format("no kit is called `{}`; there are {}", id, known));
  }
  return kit;
}

}  // namespace repwright::app
