#pragma once

#include <chrono>
#include <filesystem>
#include <memory>

#include "app/open_gym.hpp"
#include "store/store.hpp"

/// Where a gym is kept, by what the command line says of it.
namespace repwright::cli {

/// A folder is a gym folder, a file a database. Fails with NotFound, and as `store::SqliteStore::open`.
base::Result<std::unique_ptr<store::Store>> open_store(const std::filesystem::path& path);

/// Whether a gym can begin there: nothing is there yet, and the name is that of a database file (`.db`).
bool may_be_made(const std::filesystem::path& path);

/// The database file; a new one gets an empty gym.
base::Result<std::unique_ptr<store::Store>> open_or_make_database(const std::filesystem::path& file,
                                                                  std::chrono::sys_seconds now);

/// The user's own file: below $XDG_DATA_HOME, else below ~/.local/share (XDG Base Directory Specification
/// 0.8). Fails with NotFound if neither is known.
base::Result<std::filesystem::path> own_database();

/// The shipped catalogue with the store's own movements on top.
base::Result<domain::Catalogue> catalogue_for(store::Store& store);

/// The gym of the store with what the program knows.
base::Result<app::OpenGym> load_gym(store::Store& store);

}  // namespace repwright::cli
