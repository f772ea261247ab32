#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "domain/catalogue.hpp"
#include "domain/gym_class.hpp"

namespace repwright::store {

struct ClassFile {
  domain::GymClass gym_class;
  std::vector<std::string> notes;  // keys that were left out
};

/// A class file (docs/guide/gym-folder.md). `id` stands for a file that names none. Whether people, board and
/// routes exist is for whoever knows them (`check_class`). Fails with Invalid, naming everything that is
/// wrong by JSON pointer.
base::Result<ClassFile> read_class(std::string_view bytes, const std::string& file, const std::string& id,
                                   const domain::Catalogue& catalogue);

/// The file that `read_class` reads as this class.
std::string write_class(const domain::GymClass& gym_class);

}  // namespace repwright::store
