#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "domain/catalogue.hpp"
#include "domain/hall.hpp"

namespace repwright::store {

struct HallFile {
  domain::Hall hall;
  std::vector<std::string> notes;  // keys that were left out
};

/// A hall file (docs/guide/gym-folder.md). A hall that lists no places and no kit is unlimited. Fails with
/// Invalid, naming everything that is wrong by JSON pointer.
base::Result<HallFile> read_hall(std::string_view bytes, const std::string& file,
                                 const domain::Catalogue& catalogue);

/// The file that `read_hall` reads as this hall.
std::string write_hall(const domain::Hall& hall);

}  // namespace repwright::store
