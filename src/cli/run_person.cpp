#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <filesystem>

#include "api/person_record_json.hpp"
#include "app/person_record.hpp"
#include "cli/commands.hpp"
#include "cli/open_store.hpp"
#include "cli/say.hpp"
#include "store/people_csv.hpp"
#include "store/read_file.hpp"
#include "store/scores_csv.hpp"

namespace repwright::cli {
namespace {

namespace fs = std::filesystem;
using base::ErrorCode;
using base::Result;

/// A gym with the person of it that was named.
struct GymOfPerson {
  std::unique_ptr<store::Store> store;
  domain::Catalogue catalogue;
  store::GymFolder gym;
  domain::Person person;
};

Result<GymOfPerson> gym_of_person(const PersonOptions& options) {
  auto store = open_store(options.gym);
  if (!store) return tl::unexpected(store.error());
  auto catalogue = catalogue_for(**store);
  if (!catalogue) return tl::unexpected(catalogue.error());
  auto kept = (*store)->gym(*catalogue);
  if (!kept) return tl::unexpected(kept.error());
  auto person = app::person_named(kept->gym.people, options.person);
  if (!person) return tl::unexpected(person.error());
  return GymOfPerson{std::move(*store), std::move(*catalogue), std::move(kept->gym), std::move(*person)};
}

std::string scores_of(const app::PersonRecord& record) {
  std::vector<domain::ScoreEntry> now;
  now.reserve(record.scores.size());
  for (const auto& versions : record.scores) now.push_back(versions.back().entry);
  return store::write_scores(now);
}

Result<void> write_record(const fs::path& folder, const app::PersonRecord& record, const std::string& json) {
  std::error_code error;
  if (fs::exists(folder, error) && (!fs::is_directory(folder, error) || !fs::is_empty(folder, error)))
    return base::failure(ErrorCode::Conflict, folder.string() + ": is not an empty folder; name a new one");
  return store::write_file(folder / "person.json", json)
      .and_then(
          [&] { return store::write_file(folder / "people.csv", store::write_people({record.person})); })
      .and_then([&] { return store::write_file(folder / "scores.csv", scores_of(record)); });
}

/// What stays where only who wrote it can tell whether it is this person.
std::string first_names_left(const store::GymFolder& gym, const std::string& name) {
  const auto boards = app::boards_naming(gym, name);
  return boards.empty()
             ? ""
             : fmt::format("The first name, or a word like it, stands in the text of {}: look there.\n",
                           fmt::join(boards, ", "));
}

std::string in_words(const domain::Forgotten& done) {
  return fmt::format(
      "{} scores and {} efforts stay as somebody's; {} notes and {} accounts are gone; {} classes and the "
      "texts of {} boards no longer name them.\nBackups and exported folders still do: delete those of "
      "before.\n",
      done.scores, done.efforts, done.notes, done.accounts, done.classes, done.boards);
}

}  // namespace

int run_export_person(const PersonOptions& options) {
  const auto found = gym_of_person(options);
  if (!found) return refuse(found.error());
  const auto record = app::person_record(*found->store, found->gym, found->person);
  if (!record) return refuse(record.error());
  const std::string json = api::person_record_json(*record);
  if (!options.to) {
    say(json);
    return 0;
  }
  if (const auto written = write_record(*options.to, *record, json); !written) return refuse(written.error());
  remark(fmt::format("All that is kept of {} is in {}.\n", found->person.name, *options.to));
  return 0;
}

int run_forget(const PersonOptions& options) {
  const auto found = gym_of_person(options);
  if (!found) return refuse(found.error());
  const auto record = app::person_record(*found->store, found->gym, found->person);
  if (!record) return refuse(record.error());
  if (!options.yes) {
    remark(
        fmt::format("This would forget {} ({}), for good: their marks and limits, {} notes and {} accounts; "
                    "{} classes no "
                    "longer list them; {} scores and {} efforts stay as somebody's.\n"
                    "`repwright export --person` writes all of it down first. Say --yes to forget.\n",
                    found->person.name, found->person.id.text, record->notes.size(), record->accounts.size(),
                    record->classes.size(), record->scores.size(), record->efforts.size()));
    return 1;
  }
  const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  const auto done = found->store->forget(found->person.id, found->catalogue, {"", now});
  if (!done) return refuse(done.error());
  const auto after = found->store->gym(found->catalogue);
  if (!after) return refuse(after.error());
  remark(in_words(*done) + first_names_left(after->gym, found->person.name));
  return 0;
}

}  // namespace repwright::cli
