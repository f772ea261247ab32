#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "domain/people.hpp"
#include "store/mark_column.hpp"
#include "store/problems.hpp"

/// What the columns of a people file mean.
namespace repwright::store {

enum class Fact : std::uint8_t {
  Id,
  Name,
  Sex,
  Age,
  BirthYear,
  Mass,
  Height,
  TrainingYears,
  AerobicPeak,
  Limits,
  Actions,
  Attends
};
/// A person's own version of a movement ("pull-up") or of a class word ("push").
struct VersionColumn {
  std::string word;  // the key in Person::versions
};
struct LeftOut {};
using ColumnKind = std::variant<LeftOut, Fact, MarkColumn, VersionColumn>;
struct PeopleColumn {
  std::string header;
  ColumnKind kind;
};

/// "mass_kg" and its like.
std::string_view header_of(Fact fact);

/// One per header. Notes go to `notes`, a column that stands twice to `problems`.
std::vector<PeopleColumn> people_columns(const std::vector<std::string>& headers, const NamedCatalogue& known,
                                         std::vector<std::string>& notes, Problems& problems,
                                         const std::string& file);

/// Where a mark stands among a person's: kind first, then movement and size.
bool mark_before(const domain::Mark& a, const domain::Mark& b);

}  // namespace repwright::store
