#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "board/read.hpp"
#include "domain/catalogue.hpp"
#include "domain/house.hpp"
#include "domain/repair.hpp"

namespace repwright::app {

/// A board's text after an edit, and its lines that are others now (none where some were only taken away).
/// `rewritten`: all of it is written anew, in its clean form.
struct Chalked {
  std::string text;
  std::vector<int> lines;
  bool rewritten = false;
};

/// What an edit is chalked on.
struct Chalkboard {
  std::string_view text;
  const board::Reading& reading;  // of `text`
  const board::Reader& reader;
  const domain::Catalogue& catalogue;
  const domain::House& house;
};

/// The edit in the coach's own lines, with as little changed as can be: a line added or taken away, two
/// swapped, words behind one, or numbers. Where that does not read as meant, the whole board in its clean
/// form; nothing where that does not either. What comes back reads as `edit.board`, always, but for the
/// numbers of blocks and steps where `edit` takes some away.
std::optional<Chalked> chalk_edit(const domain::Edit& edit, const Chalkboard& on);

}  // namespace repwright::app
