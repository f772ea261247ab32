#include "store/memory_store.hpp"

#include <algorithm>
#include <ranges>

#include "domain/people_search.hpp"

namespace repwright::store {

using base::ErrorCode;
using base::Result;
using domain::Saved;
using domain::Seen;

namespace {

Saved saved_in(const std::map<std::string, Saved>& all, const std::string& id) {
  const auto found = all.find(id);
  return found == all.end() ? Saved{} : found->second;
}

}  // namespace

Result<std::uint64_t> MemoryStore::mark() {
  const std::scoped_lock lock(busy_);
  return changes_;
}

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
  tell(by, "gym");
  return {};
}

template <class T>
Result<Saved> MemoryStore::save(T& place, const T& value, Saved& saved, const std::string& what,
                                const Seen& seen) {
  if (auto free = room(); !free) return tl::unexpected(free.error());
  if (const auto error = stale(what, saved.version, seen.version)) return tl::unexpected(*error);
  place = value;
  saved = {saved.version + 1, seen.by};
  tell(seen.by, what);
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

Result<domain::KeptPaper> MemoryStore::paper(domain::Paper which) {
  const std::scoped_lock lock(busy_);
  return papers_[which];
}
Result<Saved> MemoryStore::save_paper(domain::Paper which, const std::string& text, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  domain::KeptPaper& kept = papers_[which];
  return save(kept.text, text, kept.saved, std::string(name_of(which)), seen);
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

Result<void> MemoryStore::remove_class(const std::string& id, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  if (auto free = room(); !free) return free;
  const auto of_it = [&](const auto& versions) { return versions.back().entry.class_id == id; };
  const auto lines =
      std::ranges::count_if(scores_, of_it) +
      std::ranges::count_if(efforts_, [&](const auto& each) { return each.first.first == id; });
  const Saved there = saved_in(kept_.versions.classes, id);
  if (const auto error = holds_class(id, there.version, seen.version, lines)) return tl::unexpected(*error);
  kept_.gym.classes.erase(id);
  kept_.versions.classes.erase(id);
  clocks_.erase(id);
  door_.remove_class(id);
  tell(seen.by, "class " + id + ": taken away");
  return {};
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

Result<std::vector<domain::KeptScore>> MemoryStore::scores_of_class(const std::string& class_id) {
  return scores().map(
      [&](const std::vector<domain::KeptScore>& all) { return those_of_class(all, class_id); });
}

std::optional<std::int64_t> MemoryStore::line_of_key(const std::string& key) const {
  for (const auto& versions : scores_)
    if (!key.empty() && versions.back().entry.key == key) return versions.back().number;
  return std::nullopt;
}

Result<std::vector<domain::AddedScore>> MemoryStore::add_scores(const std::vector<domain::NewScore>& scores) {
  const std::scoped_lock lock(busy_);
  if (auto free = room(); !free) return tl::unexpected(free.error());
  std::vector<domain::AddedScore> added;
  for (const auto& [entry, by] : scores) {
    const auto known = line_of_key(entry.key);
    const std::int64_t number = known ? *known : add_line(entry, by);
    added.push_back({number, !known});
    if (!known) tell(by, "score " + std::to_string(number));
  }
  return added;
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

Result<domain::Forgotten> MemoryStore::forget(const domain::PersonId& person, const domain::Catalogue&,
                                              const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  const domain::Person* known = domain::find_person(kept_.gym.people, person);
  if (known == nullptr)
    return base::failure(ErrorCode::NotFound, "no person is called '" + person.text + "'");
  const Leaver leaver{person, known->name, accounts_.remove_those_of(person)};
  domain::Forgotten done = forget_in_lines(leaver);
  door_.forget(person);
  std::string& rankings = papers_[domain::Paper::Rankings].text;
  rankings = without_line(rankings, person.text);
  done.accounts = static_cast<int>(leaver.accounts.size());
  for (auto& [id, gym_class] : kept_.gym.classes)
    if (take_off(gym_class, leaver)) {
      ++done.classes;
      ++kept_.versions.classes[id].version;
    }
  for (auto& [id, versions] : boards_) {
    bool named = false;
    for (domain::BoardVersion& each : versions) {
      std::string text = nameless_text(each.text, leaver);
      named = named || text != each.text;
      each.text = std::move(text);
    }
    kept_.gym.boards[id] = versions.back().text;
    done.boards += named ? 1 : 0;
  }
  std::erase_if(kept_.gym.people, [&](const domain::Person& each) { return each.id == person; });
  ++kept_.versions.people.version;
  ++changes_;
  const std::scoped_lock telling(telling_);
  for (domain::TrailLine& line : trail_)
    line = {
        line.number, {nameless_writer(line.by.who, leaver), line.by.when}, nameless_trail(line.what, leaver)};
  trail_.push_back({static_cast<std::int64_t>(trail_.size()) + 1, by, somebody_forgotten});
  return done;
}

domain::Forgotten MemoryStore::forget_in_lines(const Leaver& leaver) {
  domain::Forgotten done;
  std::vector<domain::ScoreEntry> sheet;
  for (auto& versions : scores_) {
    const auto theirs = [&](const domain::KeptScore& each) { return each.entry.person == leaver.person; };
    if (theirs(versions.back())) ++done.scores;
    if (std::ranges::any_of(versions, theirs)) versions.erase(versions.begin(), versions.end() - 1);
    for (domain::KeptScore& each : versions) {
      each.entry.entered_by = nameless_writer(each.entry.entered_by, leaver);
      if (each.saved.by) each.saved.by->who = nameless_writer(each.saved.by->who, leaver);
    }
    sheet.push_back(versions.back().entry);
  }
  for (const std::size_t i : make_nameless(sheet, leaver)) scores_[i].back().entry = sheet[i];

  std::map<std::string, std::set<domain::PersonId>> there;
  for (const auto& [key, effort] : efforts_) there[key.first].insert(key.second);
  for (const auto& [class_id, people] : there) {
    auto said = efforts_.extract({class_id, leaver.person});
    if (said.empty()) continue;
    said.key().second = said.mapped().person = nameless_id(people);
    efforts_.insert(std::move(said));
    ++done.efforts;
  }
  done.notes = static_cast<int>(
      std::erase_if(notes_, [&](const domain::KeptNote& each) { return each.note.person == leaver.person; }));
  for (domain::KeptNote& each : notes_) each.note.text = nameless_text(each.note.text, leaver);
  for (auto& [class_id, acts] : clocks_)
    for (domain::ClockAct& act : acts) act.who = nameless_writer(act.who, leaver);
  return done;
}

Result<std::vector<domain::TrailLine>> MemoryStore::trail(const domain::TrailPage& page) {
  const std::scoped_lock telling(telling_);
  std::vector<domain::TrailLine> out;
  for (const domain::TrailLine& line : std::views::reverse(trail_))
    if (out.size() < static_cast<std::size_t>(page.most) && (!page.before || line.number < *page.before))
      out.push_back(line);
  return out;
}

/// Of a change of the gym.
void MemoryStore::tell(const domain::Stamp& by, const std::string& what) {
  ++changes_;
  note_down(by, what);
}

void MemoryStore::note_down(const domain::Stamp& by, const std::string& what) {
  const std::scoped_lock telling(telling_);
  trail_.push_back({static_cast<std::int64_t>(trail_.size()) + 1, by, what});
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
