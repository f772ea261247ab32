#include "app/said_versions.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <string_view>
#include <vector>

#include "base/text.hpp"
#include "domain/spoken.hpp"

namespace repwright::app {

std::string said_versions(const std::string& done, const domain::Catalogue& catalogue) {
  std::vector<std::string> said;
  for (const std::string_view part : base::split(done, '/')) {
    const std::string name(base::trim(part));
    const domain::Movement* movement = catalogue.find(domain::MovementId{name});
    if (!name.empty()) said.push_back(movement == nullptr ? name : domain::spoken_one(*movement));
  }
  return fmt::format("{}", fmt::join(said, ", "));
}

}  // namespace repwright::app
