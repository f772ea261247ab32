#include "store/door_list.hpp"

#include <algorithm>
#include <iterator>

namespace repwright::store {

std::int64_t DoorList::add(const domain::DoorLine& line, const domain::Stamp& by) {
  const auto known = std::ranges::find_if(lines_, [&](const domain::KeptDoorLine& each) {
    return !line.key.empty() && each.line.key == line.key;
  });
  if (known != lines_.end()) return known->number;
  lines_.push_back({++last_, by, line});
  return last_;
}

std::vector<domain::KeptDoorLine> DoorList::of(const std::string& class_id) const {
  std::vector<domain::KeptDoorLine> out;
  std::ranges::copy_if(lines_, std::back_inserter(out),
                       [&](const domain::KeptDoorLine& each) { return each.line.class_id == class_id; });
  return out;
}

void DoorList::remove_class(const std::string& class_id) {
  std::erase_if(lines_, [&](const domain::KeptDoorLine& each) { return each.line.class_id == class_id; });
}

void DoorList::forget(const domain::PersonId& person) {
  std::erase_if(lines_, [&](const domain::KeptDoorLine& each) { return each.line.person == person; });
}

}  // namespace repwright::store
