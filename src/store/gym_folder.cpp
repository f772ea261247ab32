#include "store/gym_folder.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <set>
#include <system_error>
#include <utility>

#include "store/class_json.hpp"
#include "store/hall_json.hpp"
#include "store/house_json.hpp"
#include "store/people_csv.hpp"
#include "store/read_file.hpp"
#include "store/scores_csv.hpp"

namespace repwright::store {
namespace {

namespace fs = std::filesystem;
using base::Error;
using base::ErrorCode;
using base::Result;

/// The files of `folder` that end so, in the order of their names; none if there is no such folder.
std::vector<fs::path> files_ending(const fs::path& folder, std::string_view extension) {
  std::vector<fs::path> out;
  std::error_code error;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder, error))
    if (entry.path().extension() == extension && entry.is_regular_file(error)) out.push_back(entry.path());
  std::ranges::sort(out);
  return out;
}

/// Reads file after file and keeps what is wrong in any of them.
class FolderReader {
 public:
  FolderReader(fs::path folder, const domain::Catalogue& catalogue)
      : folder_(std::move(folder)), catalogue_(catalogue) {}

  Result<GymFolder> read() {
    if (auto people = parsed<PeopleFile>("people.csv", with_catalogue(read_people)))
      gym_.people = std::move(people->people);
    if (is_there("hall.json"))
      if (auto hall = parsed<HallFile>("hall.json", with_catalogue(read_hall)))
        gym_.hall = std::move(hall->hall);
    if (is_there("house.json"))
      if (auto house = parsed<HouseFile>("house.json", with_catalogue(read_house)))
        gym_.house = std::move(house->house);
    read_boards();
    read_classes();
    if (is_there("scores.csv"))
      if (auto scores = parsed<ScoresFile>("scores.csv", read_scores))
        gym_.scores = std::move(scores->entries);
    if (wrong_.empty()) check();
    if (!wrong_.empty()) return base::failure(code_, wrong_);
    return std::move(gym_);
  }

 private:
  void fail(const Error& error) {
    if (wrong_.empty()) code_ = error.code;
    wrong_ += (wrong_.empty() ? "" : "\n") + error.message;
  }

  std::optional<std::string> bytes_of(const fs::path& path) {
    Result<std::string> bytes = read_file(path);
    if (bytes) return std::move(*bytes);
    return fail(bytes.error()), std::nullopt;
  }

  template <class File>
  using Parse = std::function<Result<File>(std::string_view bytes, const std::string& file)>;

  /// The reader as it is, knowing the catalogue.
  template <class File>
  Parse<File> with_catalogue(Result<File> (*reader)(std::string_view, const std::string&,
                                                    const domain::Catalogue&)) const {
    return [reader, this](std::string_view bytes, const std::string& file) {
      return reader(bytes, file, catalogue_);
    };
  }

  /// What a file of the folder says; nothing if something is wrong with it.
  template <class File>
  std::optional<File> parsed(const fs::path& name, const Parse<File>& parse) {
    const fs::path path = folder_ / name;
    const auto bytes = bytes_of(path);
    if (!bytes) return std::nullopt;
    Result<File> read = parse(*bytes, path.string());
    if (!read) return fail(read.error()), std::nullopt;
    std::ranges::move(read->notes, std::back_inserter(gym_.notes));
    return std::move(*read);
  }
  bool is_there(const char* name) const {
    std::error_code error;
    return fs::exists(folder_ / name, error);
  }

  void read_boards() {
    for (const fs::path& path : files_ending(folder_ / "boards", ".txt"))
      if (auto bytes = bytes_of(path)) gym_.boards.emplace(path.stem().string(), std::move(*bytes));
  }
  void read_classes() {
    for (const fs::path& path : files_ending(folder_ / "classes", ".json")) {
      auto one = parsed<ClassFile>(fs::path("classes") / path.filename(),
                                   [&](std::string_view bytes, const std::string& file) {
                                     return read_class(bytes, file, path.stem().string(), catalogue_);
                                   });
      if (!one) continue;
      const std::string id = one->gym_class.id;
      if (!gym_.classes.emplace(id, std::move(one->gym_class)).second)
        fail({ErrorCode::Invalid,
              fmt::format("{}: another class has the id '{}' already", path.string(), id)});
    }
  }

  void check() {
    for (const auto& [id, gym_class] : gym_.classes) {
      std::vector<std::string> missing = check_class(gym_class, gym_.people, gym_.hall);
      if (!gym_class.board_id.empty() && !gym_.boards.contains(gym_class.board_id))
        missing.push_back(fmt::format("no board is called '{}'", gym_class.board_id));
      for (const std::string& what : missing)
        fail({ErrorCode::Invalid,
              fmt::format("{}: class '{}': {}", (folder_ / "classes").string(), id, what)});
    }
    std::set<domain::PersonId> known;
    for (const domain::Person& person : gym_.people) known.insert(person.id);
    std::set<domain::PersonId> gone;
    for (const domain::ScoreEntry& entry : gym_.scores)
      if (!known.contains(entry.person) && gone.insert(entry.person).second)
        gym_.notes.push_back(
            fmt::format("scores.csv has scores of '{}', who is not among the people", entry.person.text));
  }

  fs::path folder_;
  const domain::Catalogue& catalogue_;
  GymFolder gym_;
  std::string wrong_;
  ErrorCode code_ = ErrorCode::Invalid;
};

/// Letters, digits, dot, hyphen, underscore, and no dot in front: the same file on every system.
bool can_be_a_file_name(std::string_view id) {
  return !id.empty() && id.size() <= 100 && id.front() != '.' && std::ranges::all_of(id, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '.' ||
           c == '-' || c == '_';
  });
}

}  // namespace

std::optional<fs::path> gyms_own_movements(const fs::path& folder) {
  std::error_code error;
  fs::path own = folder / "movements.toml";
  return fs::exists(own, error) ? std::optional(std::move(own)) : std::nullopt;
}

Result<GymFolder> read_gym(const fs::path& folder, const domain::Catalogue& catalogue) {
  std::error_code error;
  if (!fs::is_directory(folder, error))
    return base::failure(ErrorCode::NotFound, folder.string() + ": there is no such folder");
  return FolderReader(folder, catalogue).read();
}

Result<void> write_gym(const fs::path& folder, const GymFolder& gym) {
  if (auto fine = check_ids(gym); !fine) return fine;
  std::vector<std::pair<fs::path, std::string>> files{{"hall.json", write_hall(gym.hall)},
                                                      {"house.json", write_house(gym.house)},
                                                      {"scores.csv", write_scores(gym.scores)}};
  for (const auto& [id, text] : gym.boards) files.emplace_back(fs::path("boards") / (id + ".txt"), text);
  for (const auto& [id, gym_class] : gym.classes)
    files.emplace_back(fs::path("classes") / (id + ".json"), write_class(gym_class));
  files.emplace_back("people.csv", write_people(gym.people));
  for (const auto& [path, bytes] : files)
    if (auto written = write_file(folder / path, bytes); !written) return written;
  return {};
}

Result<void> check_id(const std::string& id) {
  if (can_be_a_file_name(id)) return {};
  return base::failure(
      ErrorCode::Invalid,
      fmt::format("'{}' cannot be a file name: letters, digits, dot, hyphen and underscore", id));
}

Result<void> check_ids(const GymFolder& gym) {
  for (const auto& [id, text] : gym.boards)
    if (auto fine = check_id(id); !fine) return fine;
  for (const auto& [id, gym_class] : gym.classes)
    if (auto fine = check_id(id); !fine) return fine;
  return {};
}

std::vector<std::string> check_class(const domain::GymClass& gym_class,
                                     const std::vector<domain::Person>& people, const domain::Hall& hall) {
  std::vector<std::string> out;
  std::set<domain::PersonId> known;
  for (const domain::Person& person : people) known.insert(person.id);
  std::set<domain::PersonId> named(gym_class.booked.begin(), gym_class.booked.end());
  named.insert(gym_class.walk_ins.begin(), gym_class.walk_ins.end());
  for (const domain::Arrival& arrival : gym_class.arrivals) named.insert(arrival.person);
  for (const domain::PersonId& id : named)
    if (!known.contains(id)) out.push_back(fmt::format("no person is called '{}'", id.text));
  for (const domain::RouteId& route : gym_class.weather.closed_routes)
    if (std::ranges::find(hall.routes, route, &domain::Route::id) == hall.routes.end())
      out.push_back(fmt::format("no route is called '{}'", route.text));
  for (const domain::PlaceFault& fault : gym_class.faults)
    if (const auto places = hall.places_of(fault.equipment); places && fault.out > *places)
      out.push_back(fmt::format("{} places of '{}' are out, but the hall has {}", fault.out,
                                fault.equipment.text, *places));
  return out;
}

}  // namespace repwright::store
