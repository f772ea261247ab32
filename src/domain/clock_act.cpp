#include "domain/clock_act.hpp"

#include <array>
#include <utility>

namespace repwright::domain {
namespace {

constexpr std::array<std::pair<ClockDeed, std::string_view>, 8> deed_names{
    {{ClockDeed::Start, "start"},
     {ClockDeed::Pause, "pause"},
     {ClockDeed::GoOn, "go-on"},
     {ClockDeed::Add, "add"},
     {ClockDeed::Jump, "jump"},
     {ClockDeed::LastCall, "last-call"},
     {ClockDeed::Stop, "stop"},
     {ClockDeed::Undo, "undo"}}};

}  // namespace

std::string_view name_of(ClockDeed deed) {
  for (const auto& [each, name] : deed_names)
    if (each == deed) return name;
  return "";
}

std::optional<ClockDeed> clock_deed_of(std::string_view name) {
  for (const auto& [deed, each] : deed_names)
    if (each == name) return deed;
  return std::nullopt;
}

}  // namespace repwright::domain
