#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <memory>
#include <string>

#include "store/folder_store.hpp"
#include "store/memory_store.hpp"
#include "store/sqlite_store.hpp"
#include "support/scratch.hpp"

/// The three stores as the contract sees them, each on a place of its own that goes away with it.
namespace repwright::test {

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
