#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <memory>
#include <string>

#include "store/folder_store.hpp"
#include "store/memory_store.hpp"
#include "store/sqlite_store.hpp"

/// The three stores as the contract sees them, each on a place of its own that goes away with it.
namespace repwright::test {

/// A folder for one test.
class Scratch {
 public:
  Scratch() {
    std::string name = (std::filesystem::temp_directory_path() / "repwright-XXXXXX").string();
    path_ = mkdtemp(name.data());
  }
  ~Scratch() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

enum class StoreKind { Memory, Folder, Database };

inline std::unique_ptr<store::SqliteStore> open_database(const std::filesystem::path& file) {
  auto opened = store::SqliteStore::open(
      file, {.access = store::SqliteAccess::WriteOrMake, .most_pages = std::nullopt});
  if (!opened) throw std::runtime_error(opened.error().message);
  return std::move(*opened);
}

inline std::unique_ptr<store::Store> make_store(StoreKind kind, const std::filesystem::path& folder) {
  if (kind == StoreKind::Memory) return std::make_unique<store::MemoryStore>();
  if (kind == StoreKind::Folder) return std::make_unique<store::FolderStore>(folder / "gym");
  return open_database(folder / "gym.db");
}

}  // namespace repwright::test
