#include "store/folder_store.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

#include "base/hash.hpp"
#include "domain/people_search.hpp"
#include "store/class_json.hpp"
#include "store/clock_file.hpp"
#include "store/forget.hpp"
#include "store/hall_json.hpp"
#include "store/house_json.hpp"
#include "store/people_csv.hpp"
#include "store/read_file.hpp"
#include "store/scores_csv.hpp"

namespace repwright::store {

namespace fs = std::filesystem;
using base::ErrorCode;
using base::Result;
using domain::Saved;
using domain::Seen;

namespace {

constexpr const char* people_file = "people.csv";
constexpr const char* hall_file = "hall.json";
constexpr const char* house_file = "house.json";
constexpr const char* scores_file = "scores.csv";
constexpr const char* movements_file = "movements.toml";

fs::path paper_file(domain::Paper which) {
  return std::string(name_of(which)) + ".txt";
}

fs::path board_file(const std::string& id) {
  return fs::path("boards") / (id + ".txt");
}

fs::path clock_file(const std::string& class_id) {
  return fs::path("clocks") / (class_id + ".csv");
}

tl::unexpected<base::Error> not_kept(const std::string& what) {
  return base::failure(ErrorCode::NotKept, "a gym folder does not keep " + what +
                                               "; a database does: `repwright import FOLDER --to FILE.db`");
}

bool is_there(const fs::path& path) {
  std::error_code error;
  return fs::exists(path, error);
}

/// When the file was last written, by the clock of the machine.
std::chrono::sys_seconds written_at(const fs::path& path) {
  std::error_code error;
  const fs::file_time_type when = fs::last_write_time(path, error);
  if (error) return {};
  return std::chrono::floor<std::chrono::seconds>(std::chrono::file_clock::to_sys(when));
}

domain::Version version_of_bytes(const std::string& bytes) {
  const domain::Version hash = base::fnv1a(bytes);
  return hash == 0 ? 1 : hash;
}

}  // namespace

Result<Saved> FolderStore::saved_in(const fs::path& file) const {
  const fs::path path = folder_ / file;
  if (!is_there(path)) return Saved{};
  return read_file(path).map([&](const std::string& bytes) {
    return Saved{version_of_bytes(bytes), domain::Stamp{"", written_at(path)}};
  });
}

Result<Saved> FolderStore::save(const fs::path& file, const std::string& bytes, const Seen& seen) {
  auto there = saved_in(file);
  if (!there) return there;
  if (const auto error = stale(file.string(), there->version, seen.version)) return tl::unexpected(*error);
  return write_file(folder_ / file, bytes).map([&] { return Saved{version_of_bytes(bytes), seen.by}; });
}

Result<std::uint64_t> FolderStore::mark() {
  const std::scoped_lock lock(busy_);
  // The system gives the files of a folder in any order.
  std::uint64_t sum = 0;
  for (const fs::path& part : {folder_, folder_ / "boards", folder_ / "classes"}) {
    std::error_code error;
    for (const fs::directory_entry& entry : fs::directory_iterator(part, error)) {
      if (!entry.is_regular_file(error)) continue;
      sum += base::fnv1a(fmt::format("{}|{}|{}", entry.path().string(), entry.file_size(error),
                                     entry.last_write_time(error).time_since_epoch().count()));
    }
  }
  return sum;
}

Result<std::optional<std::string>> FolderStore::own_movements() {
  if (!is_there(folder_ / movements_file)) return std::optional<std::string>();
  return read_file(folder_ / movements_file).map([](std::string bytes) {
    return std::optional(std::move(bytes));
  });
}

fs::path FolderStore::class_file(const std::string& id) const {
  const auto known = class_files_.find(id);
  return known == class_files_.end() ? fs::path("classes") / (id + ".json") : known->second;
}

Result<domain::GymVersions> FolderStore::versions(const GymFolder& gym) const {
  domain::GymVersions out;
  std::vector<std::pair<fs::path, Saved*>> files{{people_file, &out.people},
                                                 {hall_file, &out.hall},
                                                 {house_file, &out.house},
                                                 {movements_file, &out.movements}};
  for (const auto& [id, text] : gym.boards) files.emplace_back(board_file(id), &out.boards[id]);
  for (const auto& [id, gym_class] : gym.classes) files.emplace_back(class_file(id), &out.classes[id]);
  for (const auto& [file, place] : files) {
    const auto there = saved_in(file);
    if (!there) return tl::unexpected(there.error());
    *place = *there;
  }
  return out;
}

void FolderStore::find_class_files(const domain::Catalogue& catalogue) {
  class_files_.clear();
  std::error_code error;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder_ / "classes", error)) {
    const fs::path& path = entry.path();
    if (path.extension() != ".json") continue;
    const auto read = read_file(path).and_then([&](const std::string& bytes) {
      return read_class(bytes, path.string(), path.stem().string(), catalogue);
    });
    if (read) class_files_[read->gym_class.id] = fs::path("classes") / path.filename();
  }
}

Result<KeptGym> FolderStore::gym(const domain::Catalogue& catalogue) {
  const std::scoped_lock lock(busy_);
  auto gym = read_gym(folder_, catalogue);
  if (!gym) return tl::unexpected(gym.error());
  find_class_files(catalogue);
  auto known = versions(*gym);
  if (!known) return tl::unexpected(known.error());
  return KeptGym{std::move(*gym), std::move(*known)};
}

Result<void> FolderStore::put_gym(const GymFolder& gym, const std::optional<std::string>& own_movements,
                                  const domain::Stamp&) {
  const std::scoped_lock lock(busy_);
  if (is_there(folder_ / people_file))
    return base::failure(ErrorCode::Conflict, folder_.string() + ": a gym is kept here already");
  if (auto fine = check_ids(gym); !fine) return fine;
  if (own_movements)
    if (auto written = write_file(folder_ / movements_file, *own_movements); !written) return written;
  return write_gym(folder_, gym);
}

Result<Saved> FolderStore::save_people(const std::vector<domain::Person>& people, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  return save(people_file, write_people(people), seen);
}
Result<Saved> FolderStore::save_hall(const domain::Hall& hall, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  return save(hall_file, write_hall(hall), seen);
}
Result<Saved> FolderStore::save_house(const domain::House& house, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  return save(house_file, write_house(house), seen);
}
Result<Saved> FolderStore::save_own_movements(const std::string& toml, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  return save(movements_file, toml, seen);
}
Result<domain::KeptPaper> FolderStore::paper(domain::Paper which) {
  const std::scoped_lock lock(busy_);
  const auto saved = saved_in(paper_file(which));
  if (!saved) return tl::unexpected(saved.error());
  if (saved->version == 0) return domain::KeptPaper{};
  return read_file(folder_ / paper_file(which)).map([&](std::string text) {
    return domain::KeptPaper{*saved, std::move(text)};
  });
}
Result<Saved> FolderStore::save_paper(domain::Paper which, const std::string& text, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  return save(paper_file(which), text, seen);
}
Result<Saved> FolderStore::save_board(const std::string& id, const std::string& text, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  return check_id(id).and_then([&] { return save(board_file(id), text, seen); });
}
Result<Saved> FolderStore::save_class(const domain::GymClass& gym_class, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  return check_id(gym_class.id).and_then([&] {
    return save(class_file(gym_class.id), write_class(gym_class), seen);
  });
}

Result<void> FolderStore::remove_class(const std::string& id, const Seen& seen) {
  const std::scoped_lock lock(busy_);
  if (auto fine = check_id(id); !fine) return fine;
  const auto there = saved_in(class_file(id));
  if (!there) return tl::unexpected(there.error());
  const auto sheet = score_sheet();
  if (!sheet) return tl::unexpected(sheet.error());
  const auto lines = std::ranges::count(*sheet, id, &domain::ScoreEntry::class_id);
  if (const auto error = holds_class(id, there->version, seen.version, lines)) return tl::unexpected(*error);
  door_.remove_class(id);
  // The clock first: what is cut short leaves a class, and never the clock of another one of that name.
  return remove_file(folder_ / clock_file(id)).and_then([&] {
    return remove_file(folder_ / class_file(id));
  });
}

Result<std::vector<domain::ScoreEntry>> FolderStore::score_sheet() const {
  if (!is_there(folder_ / scores_file)) return std::vector<domain::ScoreEntry>();
  return read_file(folder_ / scores_file)
      .and_then([](const std::string& bytes) { return read_scores(bytes, scores_file); })
      .map([](ScoresFile file) { return std::move(file.entries); });
}

Result<std::vector<domain::KeptScore>> FolderStore::scores() {
  const std::scoped_lock lock(busy_);
  return score_sheet().map([](const std::vector<domain::ScoreEntry>& entries) {
    std::vector<domain::KeptScore> out;
    out.reserve(entries.size());
    for (const domain::ScoreEntry& entry : entries)
      out.push_back({static_cast<std::int64_t>(out.size()) + 1, {1, std::nullopt}, entry});
    return out;
  });
}

Result<std::vector<domain::KeptScore>> FolderStore::scores_of_class(const std::string& class_id) {
  return scores().map(
      [&](const std::vector<domain::KeptScore>& all) { return those_of_class(all, class_id); });
}

Result<std::vector<domain::AddedScore>> FolderStore::add_scores(const std::vector<domain::NewScore>& scores) {
  const std::scoped_lock lock(busy_);
  auto sheet = score_sheet();
  if (!sheet) return tl::unexpected(sheet.error());
  const std::size_t before = sheet->size();
  std::vector<domain::AddedScore> added;
  for (const domain::NewScore& score : scores) {
    const std::string& key = score.entry.key;
    const auto known = std::ranges::find_if(
        *sheet, [&](const domain::ScoreEntry& each) { return !key.empty() && each.key == key; });
    const bool is_new = known == sheet->end();
    added.push_back({known - sheet->begin() + 1, is_new});
    if (is_new) sheet->push_back(score.entry);
  }
  if (sheet->size() == before) return added;
  return write_file(folder_ / scores_file, write_scores(*sheet)).map([&] { return std::move(added); });
}

Result<std::vector<domain::BoardVersion>> FolderStore::board_versions(const std::string&) {
  return not_kept("earlier texts of a board");
}
Result<Saved> FolderStore::correct_score(std::int64_t, const domain::ScoreEntry&, const Seen&) {
  return not_kept("what a score said before it was corrected");
}
Result<std::vector<domain::KeptScore>> FolderStore::score_versions(std::int64_t) {
  return not_kept("what a score said before it was corrected");
}
Result<void> FolderStore::put_effort(const domain::ClassEffort&, const domain::Stamp&) {
  return not_kept("how hard the hour was");
}
Result<std::vector<domain::ClassEffort>> FolderStore::efforts(const std::string&) {
  return not_kept("how hard the hour was");
}
Result<std::int64_t> FolderStore::add_door_line(const domain::DoorLine& line, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  return door_.add(line, by);
}
Result<std::vector<domain::KeptDoorLine>> FolderStore::door_lines(const std::string& class_id) {
  const std::scoped_lock lock(busy_);
  return door_.of(class_id);
}
Result<std::int64_t> FolderStore::add_note(const domain::Note&, const domain::Stamp&) {
  return not_kept("notes");
}
Result<std::vector<domain::KeptNote>> FolderStore::notes_on(std::chrono::year_month_day) {
  return not_kept("notes");
}
Result<void> FolderStore::remove_note(std::int64_t, const domain::Stamp&) {
  return not_kept("notes");
}
Result<std::vector<domain::TrailLine>> FolderStore::trail(const domain::TrailPage&) {
  return not_kept("who changed what");
}

Result<std::vector<domain::ClockAct>> FolderStore::acts_of(const std::string& class_id) const {
  const fs::path file = clock_file(class_id);
  if (!is_there(folder_ / file)) return std::vector<domain::ClockAct>();
  return read_file(folder_ / file).and_then([&](const std::string& bytes) {
    return read_clock(bytes, file.string());
  });
}

Result<std::vector<domain::ClockAct>> FolderStore::clock_acts(const std::string& class_id) {
  const std::scoped_lock lock(busy_);
  if (auto fine = check_id(class_id); !fine) return tl::unexpected(fine.error());
  return acts_of(class_id);
}

Result<std::int64_t> FolderStore::add_clock_act(const std::string& class_id, const domain::ClockAct& act,
                                                std::int64_t seen) {
  const std::scoped_lock lock(busy_);
  if (auto fine = check_id(class_id); !fine) return tl::unexpected(fine.error());
  if (!is_there(folder_ / class_file(class_id)))
    return base::failure(ErrorCode::NotFound, "no class is called '" + class_id + "'");
  auto acts = acts_of(class_id);
  if (!acts) return tl::unexpected(acts.error());
  const auto before = kept_before(*acts, act, seen);
  if (!before) return tl::unexpected(before.error());
  if (const auto& version = *before; version) return *version;
  acts->push_back(act);
  return write_file(folder_ / clock_file(class_id), write_clock(*acts)).map([&] {
    return static_cast<std::int64_t>(acts->size());
  });
}

Result<void> FolderStore::forget_in_clock(const std::string& class_id, const Leaver& leaver) {
  auto acts = acts_of(class_id);
  if (!acts) return tl::unexpected(acts.error());
  const auto before = *acts;
  for (domain::ClockAct& act : *acts) act.who = nameless_writer(act.who, leaver);
  if (*acts == before) return {};
  return write_file(folder_ / clock_file(class_id), write_clock(*acts));
}

Result<domain::Forgotten> FolderStore::forget(const domain::PersonId& person,
                                              const domain::Catalogue& catalogue, const domain::Stamp&) {
  const std::scoped_lock lock(busy_);
  auto gym = read_gym(folder_, catalogue);
  if (!gym) return tl::unexpected(gym.error());
  const domain::Person* known = domain::find_person(gym->people, person);
  if (known == nullptr)
    return base::failure(ErrorCode::NotFound, "no person is called '" + person.text + "'");
  find_class_files(catalogue);
  const Leaver leaver{person, known->name, {}};
  domain::Forgotten done;
  door_.forget(person);
  done.scores = static_cast<int>(std::ranges::count(gym->scores, person, &domain::ScoreEntry::person));
  if (!make_nameless(gym->scores, leaver).empty())
    if (auto written = write_file(folder_ / scores_file, write_scores(gym->scores)); !written)
      return tl::unexpected(written.error());
  for (auto& [id, gym_class] : gym->classes) {
    if (auto forgotten = forget_in_clock(id, leaver); !forgotten) return tl::unexpected(forgotten.error());
    if (!take_off(gym_class, leaver)) continue;
    ++done.classes;
    if (auto written = write_file(folder_ / class_file(id), write_class(gym_class)); !written)
      return tl::unexpected(written.error());
  }
  for (const auto& [id, text] : gym->boards) {
    const std::string nameless = nameless_text(text, leaver);
    if (nameless == text) continue;
    ++done.boards;
    if (auto written = write_file(folder_ / board_file(id), nameless); !written)
      return tl::unexpected(written.error());
  }
  if (const auto rankings = read_file(folder_ / paper_file(domain::Paper::Rankings)))
    if (const std::string left = without_line(*rankings, person.text); left != *rankings)
      if (auto written = write_file(folder_ / paper_file(domain::Paper::Rankings), left); !written)
        return tl::unexpected(written.error());
  // Last: while they stand there, what was cut short can be done again.
  std::erase_if(gym->people, [&](const domain::Person& each) { return each.id == person; });
  return write_file(folder_ / people_file, write_people(gym->people)).map([&] { return done; });
}

}  // namespace repwright::store
