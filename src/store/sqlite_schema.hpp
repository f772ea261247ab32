#pragma once

#include "store/sqlite.hpp"

namespace repwright::store {

/// The number of the tables as this program knows them.
int newest_schema();

/// Makes the tables of a new file, or brings those of an older program up to `to`, in one transaction.
/// Throws SqliteFailure: NotADatabase for another program's database or a damaged one, NewerSchema for a file
/// of a newer program.
void bring_up_to_date(Sqlite& db, int to = newest_schema());

/// Throws as `bring_up_to_date` and changes nothing; an older file is fine.
void check_is_ours(Sqlite& db);

}  // namespace repwright::store
