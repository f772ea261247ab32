#include <fmt/format.h>

#include <cstdio>
#include <filesystem>

#include "cli/commands.hpp"
#include "cli/open_store.hpp"
#include "store/folder_store.hpp"
#include "store/sqlite_store.hpp"

namespace repwright::cli {
namespace {

namespace fs = std::filesystem;
using base::ErrorCode;
using base::Result;

Result<void> check_kind(const std::string& path, fs::file_type wanted, const char* expected) {
  std::error_code error;
  const fs::file_status there = fs::status(path, error);
  if (there.type() == wanted) return {};
  if (!fs::exists(there)) return base::failure(ErrorCode::NotFound, path + ": there is no such " + expected);
  return base::failure(ErrorCode::Invalid, path + ": is not a " + expected);
}

/// The gym of one store, put into another that has none.
Result<std::string> carry(store::Store& from, store::Store& to) {
  const auto catalogue = catalogue_for(from);
  if (!catalogue) return tl::unexpected(catalogue.error());
  const auto own = from.own_movements();
  if (!own) return tl::unexpected(own.error());
  const auto kept = from.gym(*catalogue);
  if (!kept) return tl::unexpected(kept.error());
  const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  if (const auto put = to.put_gym(kept->gym, *own, {"", now}); !put) return tl::unexpected(put.error());
  for (const domain::Paper which : {domain::Paper::EmergencyCard, domain::Paper::Rankings}) {
    const auto paper = from.paper(which);
    if (!paper) return tl::unexpected(paper.error());
    if (paper->text.empty()) continue;
    if (const auto put = to.save_paper(which, paper->text, {0, {"", now}}); !put)
      return tl::unexpected(put.error());
  }
  std::string notes;
  for (const std::string& note : kept->gym.notes) notes += "note: " + note + "\n";
  return notes + fmt::format("{} people, {} boards, {} classes and {} scores", kept->gym.people.size(),
                             kept->gym.boards.size(), kept->gym.classes.size(), kept->gym.scores.size());
}

Result<std::string> import_from(const MoveOptions& options) {
  if (const auto folder = check_kind(options.from, fs::file_type::directory, "folder"); !folder)
    return tl::unexpected(folder.error());
  store::FolderStore from(options.from);
  std::error_code error;
  const bool fresh = !fs::exists(options.to, error);
  auto to = store::SqliteStore::open(
      options.to, {.access = store::SqliteAccess::WriteOrMake, .most_pages = std::nullopt});
  if (!to) return tl::unexpected(to.error());
  const auto carried = carry(from, **to);
  if (!carried && fresh) {
    to->reset();
    fs::remove(options.to, error);
  }
  return carried.map([&](const std::string& what) { return what + " are in " + options.to + "."; });
}

Result<std::string> export_to(const MoveOptions& options) {
  const auto from = store::SqliteStore::open(options.from);
  if (!from) return tl::unexpected(from.error());
  std::error_code error;
  if (fs::exists(options.to, error) &&
      (!fs::is_directory(options.to, error) || !fs::is_empty(options.to, error)))
    return base::failure(ErrorCode::Conflict, options.to + ": is not an empty folder; name a new one");
  store::FolderStore to(options.to);
  return carry(**from, to).map([&](const std::string& what) {
    return what + " are in " + options.to +
           ". Earlier texts, corrections, notes, accounts and the trail stay in the file alone.";
  });
}

Result<std::string> backup(const MoveOptions& options) {
  const auto from = store::SqliteStore::open(options.from);
  if (!from) return tl::unexpected(from.error());
  return (*from)->back_up(options.to).map([&] { return "The backup is in " + options.to + "."; });
}

Result<std::string> bring_back(const MoveOptions& options) {
  std::error_code error;
  if (fs::exists(options.to, error) && !options.anew)
    return base::failure(ErrorCode::Conflict,
                         options.to + ": is there already; say --anew to put the backup in its place");
  return store::restore(options.from, options.to).map([&] {
    return "The backup is back in " + options.to + ".";
  });
}

int said(const Result<std::string>& done) {
  std::fputs(fmt::format("{}{}\n", done ? "" : "repwright: ", done ? *done : done.error().message).c_str(),
             stderr);
  return done ? 0 : 1;
}

}  // namespace

int run_import(const MoveOptions& options) {
  return said(import_from(options));
}
int run_export(const MoveOptions& options) {
  return said(export_to(options));
}
int run_backup(const MoveOptions& options) {
  return said(backup(options));
}
int run_restore(const MoveOptions& options) {
  return said(bring_back(options));
}

}  // namespace repwright::cli
