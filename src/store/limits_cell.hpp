#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "domain/catalogue.hpp"
#include "domain/people.hpp"

/// The cells `limits` ("knee wrist@2027-05-31") and `actions` ("no deep bends|fists or bells", in the order
/// of the limits; a bar inside a text is written `\|`, a backslash `\\`).
namespace repwright::store {

tl::expected<std::vector<domain::Limit>, std::string> read_limits(std::string_view cell,
                                                                  const domain::Catalogue& catalogue);
std::string write_limits(const std::vector<domain::Limit>& limits);

std::vector<std::string> read_actions(std::string_view cell);
std::string write_actions(const std::vector<domain::Limit>& limits);

}  // namespace repwright::store
