#pragma once

#include <optional>
#include <string>

#include "base/quantity.hpp"
#include "domain/reasons.hpp"
#include "domain/rehearsal.hpp"

namespace repwright::api {

/// The board as the rehearsal names it.
struct BoardHead {
  std::string title;
  std::optional<base::Duration> fixed_length;
};

/// The rehearsal as one JSON document (UTF-8, indented by two, ends with a line feed); its shape is
/// docs/rehearsal.schema.json. `draws` is there only if the rehearsal kept them, `why` if it is given.
std::string rehearsal_json(const domain::Rehearsal& rehearsal, const BoardHead& board,
                           const domain::Why* why = nullptr);

}  // namespace repwright::api
