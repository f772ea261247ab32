// What grows line by line beside the score sheet: effort, the door, notes, clocks.
#include <algorithm>
#include <iterator>

#include "store/memory_store.hpp"

namespace repwright::store {

using base::ErrorCode;
using base::Result;

namespace {

bool holds_on(const domain::KeptNote& kept, std::chrono::year_month_day day) {
  return !kept.note.until || *kept.note.until >= day;
}

}  // namespace

Result<void> MemoryStore::put_effort(const domain::ClassEffort& effort, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  if (auto free = room(); !free) return free;
  if (!kept_.gym.classes.contains(effort.class_id))
    return base::failure(ErrorCode::NotFound, "no class is called '" + effort.class_id + "'");
  domain::ClassEffort& kept = efforts_[{effort.class_id, effort.person}];
  if (!effort.key.empty() && kept.key == effort.key) return {};
  kept = effort;
  tell(by, "effort " + effort.class_id);
  return {};
}

Result<std::vector<domain::ClassEffort>> MemoryStore::efforts(const std::string& class_id) {
  const std::scoped_lock lock(busy_);
  std::vector<domain::ClassEffort> out;
  for (const auto& [key, effort] : efforts_)
    if (key.first == class_id) out.push_back(effort);
  return out;
}

Result<std::int64_t> MemoryStore::add_door_line(const domain::DoorLine& line, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  if (auto free = room(); !free) return tl::unexpected(free.error());
  return door_.add(line, by);
}

Result<std::vector<domain::KeptDoorLine>> MemoryStore::door_lines(const std::string& class_id) {
  const std::scoped_lock lock(busy_);
  return door_.of(class_id);
}

Result<std::int64_t> MemoryStore::add_note(const domain::Note& note, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  if (auto free = room(); !free) return tl::unexpected(free.error());
  const auto known = std::ranges::find_if(
      notes_, [&](const domain::KeptNote& each) { return !note.key.empty() && each.note.key == note.key; });
  if (known != notes_.end()) return known->number;
  const std::chrono::year_month_day day = std::chrono::floor<std::chrono::days>(by.when);
  std::erase_if(notes_, [&](const domain::KeptNote& each) { return !holds_on(each, day); });
  notes_.push_back({++last_note_, by, note});
  tell(by, "note " + std::to_string(last_note_));
  return last_note_;
}

Result<std::vector<domain::KeptNote>> MemoryStore::notes_on(std::chrono::year_month_day day) {
  const std::scoped_lock lock(busy_);
  std::vector<domain::KeptNote> out;
  std::ranges::copy_if(notes_, std::back_inserter(out),
                       [&](const domain::KeptNote& note) { return holds_on(note, day); });
  return out;
}

Result<void> MemoryStore::remove_note(std::int64_t number, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  if (std::erase_if(notes_, [&](const domain::KeptNote& each) { return each.number == number; }) == 0)
    return base::failure(ErrorCode::NotFound, "there is no such note");
  tell(by, "note " + std::to_string(number) + ": taken away");
  return {};
}

Result<std::vector<domain::ClockAct>> MemoryStore::clock_acts(const std::string& class_id) {
  const std::scoped_lock lock(busy_);
  const auto found = clocks_.find(class_id);
  return found == clocks_.end() ? std::vector<domain::ClockAct>() : found->second;
}

Result<std::int64_t> MemoryStore::add_clock_act(const std::string& class_id, const domain::ClockAct& act,
                                                std::int64_t seen) {
  const std::scoped_lock lock(busy_);
  if (auto free = room(); !free) return tl::unexpected(free.error());
  if (!kept_.gym.classes.contains(class_id))
    return base::failure(ErrorCode::NotFound, "no class is called '" + class_id + "'");
  auto& acts = clocks_[class_id];
  const auto before = kept_before(acts, act, seen);
  if (!before) return tl::unexpected(before.error());
  if (const auto& version = *before; version) return *version;
  acts.push_back(act);
  note_down(stamp_of(act), clock_words(class_id, act));
  return static_cast<std::int64_t>(acts.size());
}

}  // namespace repwright::store
