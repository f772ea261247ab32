#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.hpp"

/// The built page: files that are served as they are.
namespace repwright::server {

struct PageFile {
  std::string bytes;
  std::string type;   // of the header Content-Type
  std::string cache;  // of the header Cache-Control
};

/// Every file of a folder by its address, kept in memory: what was not there at the start is never served.
class PageFiles {
 public:
  PageFiles() = default;
  explicit PageFiles(std::map<std::string, PageFile, std::less<>> files) : files_(std::move(files)) {}

  bool empty() const { return files_.empty(); }
  /// One file more, in place of one at that address.
  void add(const std::string& path, PageFile file) { files_.insert_or_assign(path, std::move(file)); }
  /// The file at that address, or null. `/` and addresses of views (no dot in the last part) are index.html.
  const PageFile* find(std::string_view path) const;

 private:
  std::map<std::string, PageFile, std::less<>> files_;
};

/// Reads the folder. Fails with Unavailable if a file cannot be read or all are more than 64 MB together.
base::Result<PageFiles> load_page(const std::filesystem::path& folder);

/// Content-Type by the ending of the name; bytes that nobody should run if it is unknown.
std::string_view type_of_file(std::string_view name);

/// A year for names with a hash of the content in them, `name-0a1B2c3D.js`; nothing for the others.
std::string_view cache_of_file(std::string_view name);

/// Where the page may lie, the first place first: the folder that the environment variable REPWRIGHT_PAGE
/// names, or, if it is not set, <exe>/../web (a build in the source tree), <exe>/web and
/// <exe>/../share/repwright/web (installed).
std::vector<std::filesystem::path> page_places(const std::optional<std::filesystem::path>& override,
                                               const std::filesystem::path& program);

/// The first of those places that has an index.html.
std::optional<std::filesystem::path> page_folder();

}  // namespace repwright::server
