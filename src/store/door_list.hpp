#pragma once

#include <string>
#include <vector>

#include "domain/door.hpp"

/// Lines of the door in memory, for the stores that have no table for them.
namespace repwright::store {

class DoorList {
 public:
  /// The number of the line; nothing is added where the key is there already.
  std::int64_t add(const domain::DoorLine& line, const domain::Stamp& by);
  std::vector<domain::KeptDoorLine> of(const std::string& class_id) const;
  void remove_class(const std::string& class_id);
  void forget(const domain::PersonId& person);

 private:
  std::vector<domain::KeptDoorLine> lines_;
  std::int64_t last_ = 0;
};

}  // namespace repwright::store
