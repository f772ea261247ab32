#pragma once

#include "store/catalogue_rows.hpp"

namespace repwright::store {

/// Checks the rows against one another: every name that a row uses exists, no id or alias stands for two,
/// ladders are the same from both ends and never a circle, every limit that the flags imply is listed and
/// has a swap, and no swap carries the limit that it should spare.
void check_rows(const CatalogueRows& rows, Problems& problems);

}  // namespace repwright::store
