#pragma once

#include <chrono>
#include <cstdint>
#include <string>

#include "domain/ids.hpp"
#include "domain/kept.hpp"

/// Who was seen at the door: come to class, or out on the run and back in.
namespace repwright::domain {

enum class DoorAct : std::uint8_t { Out, In, Here, NotHere };

struct DoorLine {
  std::string class_id;
  PersonId person;
  DoorAct act = DoorAct::Out;
  std::chrono::sys_seconds seen{};
  std::string key;  // as that of a score
  bool operator==(const DoorLine&) const = default;
};

/// A line as it is kept, and who put it down.
struct KeptDoorLine {
  std::int64_t number = 0;
  Stamp by;
  DoorLine line;
  bool operator==(const KeptDoorLine&) const = default;
};

}  // namespace repwright::domain
