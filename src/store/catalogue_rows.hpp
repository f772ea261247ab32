#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "domain/catalogue.hpp"
#include "store/toml_table.hpp"

/// The rows of catalogue files as read, each with its place, before they are put together and checked
/// against one another.
namespace repwright::store {

template <class Row>
struct Placed {
  Row row;
  RowPlace place;
};

struct Meanings {
  std::string word;
  std::vector<domain::MovementId> movements;
};

struct CatalogueRows {
  domain::Terms terms;
  std::vector<Placed<domain::Movement>> movements;
  std::vector<Placed<domain::Drill>> drills;
  std::vector<Placed<domain::Equipment>> equipment;
  std::vector<Placed<domain::LimitKind>> limits;
  std::vector<Placed<Meanings>> words;
};

/// The number in `version` of every shipped file that this program reads.
inline constexpr int catalogue_version = 1;

/// The source of rows that name none, where the file names none either.
inline constexpr std::string_view own_source = "the gym's own";

/// Adds the rows of one file. Any bytes are fine: what cannot be read is noted. A gym's own file may leave
/// out `version` (taken as this one) and `source` (taken as `own_source`).
void read_rows(std::string_view bytes, const std::string& file, CatalogueRows& rows, Problems& problems);

/// One [[movement]]. `source` is the file's, for a row that has none.
domain::Movement movement_row(TableReader& reader, const std::string& source);

}  // namespace repwright::store
