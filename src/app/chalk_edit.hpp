#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "board/read.hpp"
#include "domain/catalogue.hpp"
#include "domain/house.hpp"
#include "domain/repair.hpp"

namespace repwright::app {

/// A board's text after an edit, and its first line that is another now.
struct Chalked {
  std::string text;
  int line = 0;
};

/// What an edit is chalked on.
struct Chalkboard {
  std::string_view text;
  const board::Reading& reading;  // of `text`
  const board::Reader& reader;
  const domain::Catalogue& catalogue;
  const domain::House& house;
};

/// The edit in the coach's own lines, with as little changed as can be: a line added, two swapped, or a
/// number. Where that does not read as meant, the whole board in its clean form; nothing where that does not
/// either. What comes back reads as `edit.board`, always.
std::optional<Chalked> chalk_edit(const domain::Edit& edit, const Chalkboard& on);

}  // namespace repwright::app
