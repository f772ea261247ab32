#pragma once

#include "store/catalogue_rows.hpp"

namespace repwright::store {

/// The shipped rows with the gym's own on top: a row of the same id takes the shipped row's place, a new one
/// is added. Where they disagree the gym's row decides: shipped neighbours on its ladders follow it, a
/// shipped row loses an alias that the gym gives to another movement, a word means what the gym says.
CatalogueRows with_own(CatalogueRows shipped, CatalogueRows own);

}  // namespace repwright::store
