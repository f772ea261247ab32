#include "cli/inputs.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <iostream>
#include <iterator>
#include <optional>

#include "base/text.hpp"
#include "store/body_file.hpp"
#include "store/catalogue_file.hpp"
#include "store/class_json.hpp"
#include "store/data_folder.hpp"
#include "store/hall_json.hpp"
#include "store/house_json.hpp"
#include "store/people_csv.hpp"
#include "store/read_file.hpp"
#include "store/scores_csv.hpp"

namespace repwright::cli {
namespace {

namespace fs = std::filesystem;
using base::Result;

/// A page of text is a board; more is another file taken for one.
constexpr std::size_t largest_board = 256UL * 1024;

/// The board's text, or why those bytes cannot be one.
Result<BoardText> board_of(std::string name, std::string bytes) {
  if (bytes.size() > largest_board)
    return base::failure(base::ErrorCode::Invalid,
                         fmt::format("{}: has {} bytes, a board at most {}: is it the right file?", name,
                                     bytes.size(), largest_board));
  if (bytes.find('\0') != std::string::npos)
    return base::failure(base::ErrorCode::Invalid,
                         name +
                             ": is not plain text; save the board as text in UTF-8, not as a document, "
                             "a picture or UTF-16");
  if (base::trim(bytes).empty())
    return base::failure(base::ErrorCode::Invalid,
                         name + ": the board is empty: chalk at least one line such as `10 push-ups`");
  return BoardText{std::move(name), std::move(bytes)};
}

Result<void> check_gym(const std::optional<std::string>& gym) {
  if (!gym || fs::is_directory(*gym)) return {};
  return base::failure(
      base::ErrorCode::NotFound,
      *gym + (fs::exists(*gym) ? ": is a file, --gym takes a folder" : ": there is no such folder"));
}

/// The file that was named, else the one of the gym folder if it is there.
std::optional<fs::path> chosen(const std::optional<std::string>& named, const std::optional<std::string>& gym,
                               const char* file) {
  if (named) return fs::path(*named);
  if (gym && fs::exists(fs::path(*gym) / file)) return fs::path(*gym) / file;
  return std::nullopt;
}

Result<domain::Catalogue> load_movements(const std::optional<std::string>& gym) {
  const auto data = store::data_folder();
  if (!data) return tl::unexpected(data.error());
  return store::load_catalogue(*data / "catalogue", chosen(std::nullopt, gym, "movements.toml"));
}

Result<body::Constants> load_constants(const domain::Catalogue& catalogue) {
  const auto data = store::data_folder();
  if (!data) return tl::unexpected(data.error());
  return store::load_body_constants(*data / "body.toml", catalogue);
}

Result<domain::House> load_house(const std::optional<fs::path>& path, const domain::Catalogue& catalogue,
                                 std::vector<std::string>& notes) {
  if (!path) return domain::House{};
  const auto bytes = store::read_file(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  auto file = store::read_house(*bytes, path->string(), catalogue);
  if (!file) return tl::unexpected(file.error());
  notes.insert(notes.end(), file->notes.begin(), file->notes.end());
  return std::move(file->house);
}

Result<void> load_hall(const std::optional<fs::path>& path, ClassInputs& inputs) {
  if (!path) return {};
  const auto bytes = store::read_file(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  auto file = store::read_hall(*bytes, path->string(), inputs.gym.catalogue);
  if (!file) return tl::unexpected(file.error());
  inputs.gym.hall = std::move(file->hall);
  inputs.notes.insert(inputs.notes.end(), file->notes.begin(), file->notes.end());
  return {};
}

Result<void> load_people(const std::optional<fs::path>& path, ClassInputs& inputs) {
  if (!path) return {};
  const auto bytes = store::read_file(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  auto file = store::read_people(*bytes, path->string(), inputs.gym.catalogue);
  if (!file) return tl::unexpected(file.error());
  inputs.people = std::move(file->people);
  inputs.notes.insert(inputs.notes.end(), file->notes.begin(), file->notes.end());
  return {};
}

Result<void> load_gym_class(const ClassOptions& options, ClassInputs& inputs) {
  if (!options.gym_class) return {};
  const fs::path path(*options.gym_class);
  const auto bytes = store::read_file(path);
  if (!bytes) return tl::unexpected(bytes.error());
  auto file = store::read_class(*bytes, path.string(), path.stem().string(), inputs.gym.catalogue);
  if (!file) return tl::unexpected(file.error());
  inputs.gym_class = std::move(file->gym_class);
  inputs.notes.insert(inputs.notes.end(), file->notes.begin(), file->notes.end());
  const std::string& planned = inputs.gym_class.board_id;
  const std::string rehearsed = fs::path(options.board).stem().string();
  if (!planned.empty() && planned != rehearsed)
    inputs.notes.push_back(fmt::format("the class of {} is planned with the board `{}`, this is `{}`",
                                       path.string(), planned, rehearsed));
  return {};
}

Result<void> load_scores(const std::optional<fs::path>& path, ClassInputs& inputs) {
  if (!path) return {};
  const auto bytes = store::read_file(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  auto scores = store::read_scores(*bytes, path->string());
  if (!scores) return tl::unexpected(scores.error());
  inputs.gym.scores = std::move(scores->entries);
  inputs.notes.insert(inputs.notes.end(), scores->notes.begin(), scores->notes.end());
  return {};
}

/// The boards of the gym that the scores are of.
Result<void> load_boards(const std::optional<std::string>& gym, ClassInputs& inputs) {
  if (!gym) return {};
  for (const domain::ScoreEntry& entry : inputs.gym.scores) {
    if (entry.board_id.empty() || inputs.gym.boards.contains(entry.board_id)) continue;
    const fs::path path = fs::path(*gym) / "boards" / (entry.board_id + ".txt");
    if (path.filename() != entry.board_id + ".txt" || !fs::exists(path)) continue;
    auto bytes = store::read_file(path);
    if (!bytes) return tl::unexpected(bytes.error());
    inputs.gym.boards.emplace(entry.board_id, std::move(*bytes));
  }
  return {};
}

/// What `--out` could have meant.
std::string known_places(const domain::Hall& hall) {
  if (hall.places.empty()) return "with --hall or --gym, the places of the hall are known";
  std::vector<std::string> ids;
  ids.reserve(hall.places.size());
  for (const domain::PlaceKind& kind : hall.places) ids.push_back(kind.equipment.text);
  return fmt::format("the hall has {}", fmt::join(ids, ", "));
}

/// Whether so many places can be out, in words; empty if they can.
std::string out_note(const PlaceOut& out, const domain::Hall& hall) {
  const auto places = hall.places_of({out.place});
  if (!places) return fmt::format("--out {}: the hall does not count these places, nobody waits", out.place);
  if (out.count > *places)
    return fmt::format("--out {}={}: the hall has {}, so all of them are out", out.place, out.count, *places);
  return "";
}

/// What the command line says of the day comes on top of what the class says.
Result<void> add_day(const ClassOptions& options, ClassInputs& inputs) {
  inputs.gym_class.indoors = inputs.gym_class.indoors || options.indoors;
  for (const PlaceOut& out : options.out) {
    if (!inputs.gym.catalogue.find(domain::EquipmentId{out.place}))
      return base::failure(base::ErrorCode::NotFound,
                           fmt::format("--out: no kind of place is called `{}`; {}", out.place,
                                       known_places(inputs.gym.hall)));
    if (std::string note = out_note(out, inputs.gym.hall); !note.empty())
      inputs.notes.push_back(std::move(note));
    inputs.gym_class.faults.push_back({{out.place}, out.count, "out today"});
  }
  return {};
}

}  // namespace

Result<BoardText> load_board(const std::string& path) {
  if (path == "-") {
    const std::istreambuf_iterator<char> begin(std::cin);
    return board_of("standard input", std::string(begin, {}));
  }
  auto bytes = store::read_file(path);
  if (!bytes) return tl::unexpected(bytes.error());
  return board_of(path, std::move(*bytes));
}

Result<ReadInputs> load_reading(const ReadOptions& options) {
  if (const auto gym = check_gym(options.gym); !gym) return tl::unexpected(gym.error());
  auto board = load_board(options.board);
  if (!board) return tl::unexpected(board.error());
  auto catalogue = load_movements(options.gym);
  if (!catalogue) return tl::unexpected(catalogue.error());
  std::vector<std::string> notes;
  auto house = load_house(chosen(options.house, options.gym, "house.json"), *catalogue, notes);
  if (!house) return tl::unexpected(house.error());
  return ReadInputs{std::move(*board), std::move(*catalogue), std::move(*house)};
}

Result<ClassInputs> load_class(const ClassOptions& options) {
  if (const auto gym = check_gym(options.gym); !gym) return tl::unexpected(gym.error());
  ClassInputs inputs;
  auto board = load_board(options.board);
  if (!board) return tl::unexpected(board.error());
  inputs.board = std::move(*board);
  auto catalogue = load_movements(options.gym);
  if (!catalogue) return tl::unexpected(catalogue.error());
  inputs.gym.catalogue = std::move(*catalogue);
  auto constants = load_constants(inputs.gym.catalogue);
  if (!constants) return tl::unexpected(constants.error());
  inputs.gym.constants = std::move(*constants);
  auto house =
      load_house(chosen(options.house, options.gym, "house.json"), inputs.gym.catalogue, inputs.notes);
  if (!house) return tl::unexpected(house.error());
  inputs.gym.house = std::move(*house);
  return load_hall(chosen(options.hall, options.gym, "hall.json"), inputs)
      .and_then([&] { return load_people(chosen(options.people, options.gym, "people.csv"), inputs); })
      .and_then([&] { return load_gym_class(options, inputs); })
      .and_then([&] { return load_scores(chosen(std::nullopt, options.gym, "scores.csv"), inputs); })
      .and_then([&] { return load_boards(options.gym, inputs); })
      .and_then([&] { return add_day(options, inputs); })
      .map([&] { return std::move(inputs); });
}

}  // namespace repwright::cli
