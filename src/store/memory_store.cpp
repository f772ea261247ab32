#include "store/memory_store.hpp"

#include <algorithm>
#include <ranges>

namespace repwright::store {

using base::ErrorCode;
using base::Result;
using domain::Saved;
using domain::Seen;

namespace {

bool holds_on(const domain::Note& note, std::chrono::year_month_day day) {
  return !note.until || *note.until >= day;
}

Saved saved_in(const std::map<std::string, Saved>& all, const std::string& id) {
  const auto found = all.find(id);
  return found == all.end() ? Saved{} : found->second;
}

}  // namespace

Result<std::optional<std::string>> MemoryStore::own_movements() {
  const std::scoped_lock lock(busy_);
  return kept_.versions.movements.version == 0 ? std::nullopt : std::optional(own_movements_);
}

Result<KeptGym> MemoryStore::gym(const domain::Catalogue&) {
  const std::scoped_lock lock(busy_);
  if (!there_) return base::failure(ErrorCode::NotFound, "no gym is kept here yet");
  KeptGym out = kept_;
  for (const auto& versions : scores_) out.gym.scores.push_back(versions.back().entry);
  return out;
}

Result<void> MemoryStore::put_gym(const GymFolder& gym, const std::optional<std::string>& own_movements,
                                  const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  if (there_) return base::failure(ErrorCode::Conflict, "a gym is kept here already");
  if (auto fine = room().and_then([&] { return check_ids(gym); }); !fine) return fine;
  there_ = true;
  const Saved first{1, by};
  kept_ = {gym,
           {.people = first, .hall = first, .house = first, .movements = {}, .boards = {}, .classes = {}}};
  kept_.gym.scores.clear();
  kept_.gym.notes.clear();
  for (const auto& [id, text] : gym.boards) {
    kept_.versions.boards[id] = first;
    boards_[id] = {{first, text}};
  }
  for (const auto& [id, gym_class] : gym.classes) kept_.versions.classes[id] = first;
  if (own_movements) {
    own_movements_ = *own_movements;
    kept_.versions.movements = first;
  }
  for (const domain::ScoreEntry& entry : gym.scores) add_line(entry, by);
  trail_.push_back({by, "gym"});
  return {};
}

template <class T>
Result<Saved> MemoryStore::save(T& place, const T& value, Saved& saved, const std::string& what,
                                const Seen& seen) {
  if (auto free = room(); !free) return tl::unexpected(free.error());
  if (const auto error = stale(what, saved.version, seen.version)) return tl::unexpected(*error);
  place = value;
  saved = {saved.version + 1, seen.by};
  trail_.push_back({seen.by, what});
  return saved;
}

Result<Saved> MemoryStore::save_people(const std::vector<domain::Person>& people, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  return save(kept_.gym.people, people, kept_.versions.people, "people", seen);
}
Result<Saved> MemoryStore::save_hall(const domain::Hall& hall, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  return save(kept_.gym.hall, hall, kept_.versions.hall, "hall", seen);
}
Result<Saved> MemoryStore::save_house(const domain::House& house, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  return save(kept_.gym.house, house, kept_.versions.house, "house", seen);
}
Result<Saved> MemoryStore::save_own_movements(const std::string& toml, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  return save(own_movements_, toml, kept_.versions.movements, "movements", seen);
}

Result<Saved> MemoryStore::save_board(const std::string& id, const std::string& text, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  if (auto fine = check_id(id); !fine) return tl::unexpected(fine.error());
  std::string place;
  Saved saved = saved_in(kept_.versions.boards, id);
  auto done = save(place, text, saved, "board " + id, seen);
  if (!done) return done;
  kept_.versions.boards[id] = saved;
  kept_.gym.boards[id] = text;
  boards_[id].push_back({saved, text});
  return done;
}

Result<Saved> MemoryStore::save_class(const domain::GymClass& gym_class, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  const std::string& id = gym_class.id;
  if (auto fine = check_id(id); !fine) return tl::unexpected(fine.error());
  domain::GymClass place;
  Saved saved = saved_in(kept_.versions.classes, id);
  auto done = save(place, gym_class, saved, "class " + id, seen);
  if (!done) return done;
  kept_.versions.classes[id] = saved;
  kept_.gym.classes[id] = gym_class;
  return done;
}

Result<std::vector<domain::BoardVersion>> MemoryStore::board_versions(const std::string& id) {
  const std::scoped_lock lock(busy_);
  const auto found = boards_.find(id);
  if (found == boards_.end()) return base::failure(ErrorCode::NotFound, "no board is called '" + id + "'");
  return found->second;
}

Result<std::vector<domain::KeptScore>> MemoryStore::scores() {
  const std::scoped_lock lock(busy_);
  std::vector<domain::KeptScore> out;
  out.reserve(scores_.size());
  for (const auto& versions : scores_) out.push_back(versions.back());
  return out;
}

Result<std::int64_t> MemoryStore::add_score(const domain::ScoreEntry& entry, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  if (auto free = room(); !free) return tl::unexpected(free.error());
  const std::int64_t number = add_line(entry, by);
  trail_.push_back({by, "score " + std::to_string(number)});
  return number;
}

std::int64_t MemoryStore::add_line(const domain::ScoreEntry& entry, const domain::Stamp& by) {
  domain::KeptScore score;
  score.number = static_cast<std::int64_t>(scores_.size()) + 1;
  score.saved = {1, by};
  score.entry = entry;
  scores_.emplace_back().push_back(std::move(score));
  return static_cast<std::int64_t>(scores_.size());
}

std::vector<domain::KeptScore>* MemoryStore::line(std::int64_t number) {
  const bool there = number >= 1 && number <= static_cast<std::int64_t>(scores_.size());
  return there ? &scores_[static_cast<std::size_t>(number - 1)] : nullptr;
}

Result<Saved> MemoryStore::correct_score(std::int64_t number, const domain::ScoreEntry& entry,
                                         const Seen& seen) {
  const std::scoped_lock lock(busy_);
  auto* versions = line(number);
  if (versions == nullptr) return base::failure(ErrorCode::NotFound, "there is no such score");
  domain::KeptScore next = versions->back();
  auto done = save(next.entry, entry, next.saved, "score " + std::to_string(number), seen);
  if (done) versions->push_back(next);
  return done;
}

Result<std::vector<domain::KeptScore>> MemoryStore::score_versions(std::int64_t number) {
  const std::scoped_lock lock(busy_);
  const auto* versions = line(number);
  if (versions == nullptr) return base::failure(ErrorCode::NotFound, "there is no such score");
  return *versions;
}

Result<void> MemoryStore::put_effort(const domain::ClassEffort& effort, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  if (auto free = room(); !free) return free;
  if (!kept_.gym.classes.contains(effort.class_id))
    return base::failure(ErrorCode::NotFound, "no class is called '" + effort.class_id + "'");
  efforts_[{effort.class_id, effort.person}] = effort.effort;
  trail_.push_back({by, "effort " + effort.class_id});
  return {};
}

Result<std::vector<domain::ClassEffort>> MemoryStore::efforts(const std::string& class_id) {
  const std::scoped_lock lock(busy_);
  std::vector<domain::ClassEffort> out;
  for (const auto& [key, effort] : efforts_)
    if (key.first == class_id) out.push_back({key.first, key.second, effort});
  return out;
}

Result<void> MemoryStore::add_note(const domain::Note& note, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  if (auto free = room(); !free) return free;
  const std::chrono::year_month_day day = std::chrono::floor<std::chrono::days>(by.when);
  std::erase_if(notes_, [&](const domain::Note& each) { return !holds_on(each, day); });
  notes_.push_back(note);
  trail_.push_back({by, "note"});
  return {};
}

Result<std::vector<domain::Note>> MemoryStore::notes_on(std::chrono::year_month_day day) {
  const std::scoped_lock lock(busy_);
  std::vector<domain::Note> out;
  std::ranges::copy_if(notes_, std::back_inserter(out),
                       [&](const domain::Note& note) { return holds_on(note, day); });
  return out;
}

Result<std::vector<domain::TrailLine>> MemoryStore::trail(int most) {
  const std::scoped_lock lock(busy_);
  std::vector<domain::TrailLine> out(trail_.rbegin(), trail_.rend());
  if (out.size() > static_cast<std::size_t>(most)) out.resize(static_cast<std::size_t>(most));
  return out;
}

Result<void> MemoryStore::room() const {
  if (full_) return base::failure(ErrorCode::Full, "there is no room left");
  return {};
}

void MemoryStore::fill_up() {
  const std::scoped_lock lock(busy_);
  full_ = true;
}

}  // namespace repwright::store
