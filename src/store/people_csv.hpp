#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "domain/catalogue.hpp"
#include "domain/people.hpp"
#include "store/problems.hpp"

namespace repwright::store {

struct PeopleFile {
  std::vector<domain::Person> people;  // in the order of the file
  std::vector<std::string> notes;      // columns that were left out, and why
  bool operator==(const PeopleFile&) const = default;
};

/// A people file (docs/guide/gym-folder.md). Marks of a person come in a fixed order, whatever the order of
/// the columns; a person without an id is called by name. Fails with Invalid, naming every bad cell by row
/// and column at once; then nothing is loaded.
base::Result<PeopleFile> read_people(std::string_view bytes, const std::string& file,
                                     const domain::Catalogue& catalogue);

/// The same as a look before anything is kept: whoever could be read, and every bad cell by row and column.
struct PeoplePreview {
  PeopleFile file;
  std::vector<Problem> problems;
};
PeoplePreview preview_people(std::string_view bytes, const std::string& file,
                             const domain::Catalogue& catalogue);

/// The file that `read_people` reads as these people; times to the millisecond.
std::string write_people(const std::vector<domain::Person>& people);

}  // namespace repwright::store
