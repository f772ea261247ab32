#include "cli/open_store.hpp"

#include <cstdlib>
#include <string>
#include <utility>

#include "store/body_file.hpp"
#include "store/catalogue_file.hpp"
#include "store/data_folder.hpp"
#include "store/folder_store.hpp"
#include "store/sqlite_store.hpp"

namespace repwright::cli {
namespace {

namespace fs = std::filesystem;
using base::Result;
using OpenStore = Result<std::unique_ptr<store::Store>>;

OpenStore open_database(const fs::path& file, store::SqliteAccess access) {
  auto opened = store::SqliteStore::open(file, {.access = access, .most_pages = std::nullopt});
  if (!opened) return tl::unexpected(opened.error());
  return std::unique_ptr<store::Store>(std::move(*opened));
}

/// An absolute path in that variable; anything else counts as not set, as the specification says.
std::optional<fs::path> path_in(const char* variable) {
  const char* value = std::getenv(variable);
  if (value == nullptr || !fs::path(value).is_absolute()) return std::nullopt;
  return fs::path(value);
}

}  // namespace

OpenStore open_store(const fs::path& path) {
  std::error_code error;
  if (fs::is_directory(path, error)) return std::make_unique<store::FolderStore>(path);
  if (!fs::exists(path, error))
    return base::failure(base::ErrorCode::NotFound, path.string() + ": there is no such folder or file");
  return open_database(path, store::SqliteAccess::Write);
}

bool may_be_made(const fs::path& path) {
  std::error_code error;
  return path.extension() == ".db" && !fs::exists(path, error);
}

OpenStore open_or_make_database(const fs::path& file, std::chrono::sys_seconds now) {
  auto store = open_database(file, store::SqliteAccess::WriteOrMake);
  if (!store) return store;
  const auto put = (*store)->put_gym({}, std::nullopt, {"", now});
  if (!put && put.error().code != base::ErrorCode::Conflict) return tl::unexpected(put.error());
  return store;
}

Result<fs::path> own_database() {
  const auto file = fs::path("repwright") / "gym.db";
  if (const auto data = path_in("XDG_DATA_HOME")) return *data / file;
  if (const auto home = path_in("HOME")) return *home / ".local" / "share" / file;
  return base::failure(base::ErrorCode::NotFound,
                       "neither XDG_DATA_HOME nor HOME says where your files are; name the gym with --gym");
}

Result<domain::Catalogue> catalogue_for(store::Store& store) {
  const auto data = store::data_folder();
  if (!data) return tl::unexpected(data.error());
  auto own = store.own_movements();
  if (!own) return tl::unexpected(own.error());
  std::optional<store::CatalogueText> text;
  if (auto& words = *own) text = {"movements.toml", std::move(*words)};
  return store::load_catalogue_with(*data / "catalogue", text);
}

Result<app::OpenGym> load_gym(store::Store& store) {
  auto catalogue = catalogue_for(store);
  if (!catalogue) return tl::unexpected(catalogue.error());
  auto constants = store::data_folder().and_then(
      [&](const fs::path& data) { return store::load_body_constants(data / "body.toml", *catalogue); });
  if (!constants) return tl::unexpected(constants.error());
  auto gym = store.gym(*catalogue);
  if (!gym) return tl::unexpected(gym.error());
  return app::open_gym(std::move(*gym), std::move(*catalogue), std::move(*constants));
}

}  // namespace repwright::cli
