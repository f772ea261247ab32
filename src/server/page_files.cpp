#include "server/page_files.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <system_error>
#include <utility>

namespace repwright::server {
namespace {

namespace fs = std::filesystem;

constexpr const char* override_variable = "REPWRIGHT_PAGE";
constexpr std::size_t most_bytes = std::size_t{64} * 1024 * 1024;
constexpr std::size_t hash_length = 8;

constexpr std::array<std::pair<std::string_view, std::string_view>, 12> types{{
    {".html", "text/html; charset=utf-8"},
    {".js", "text/javascript; charset=utf-8"},
    {".css", "text/css; charset=utf-8"},
    {".json", "application/json"},
    {".webmanifest", "application/manifest+json"},
    {".svg", "image/svg+xml"},
    {".png", "image/png"},
    {".ico", "image/x-icon"},
    {".woff2", "font/woff2"},
    {".txt", "text/plain; charset=utf-8"},
    {".map", "application/json"},
    {".wasm", "application/wasm"},
}};

bool is_hash_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
}

}  // namespace

const PageFile* PageFiles::find(std::string_view path) const {
  if (const auto exact = files_.find(path); exact != files_.end()) return &exact->second;
  const std::string_view last = path.substr(std::min(path.rfind('/'), path.size()));
  if (last.find('.') != std::string_view::npos) return nullptr;
  const auto index = files_.find("/index.html");
  return index == files_.end() ? nullptr : &index->second;
}

std::string_view type_of_file(std::string_view name) {
  for (const auto& [ending, type] : types)
    if (name.ends_with(ending)) return type;
  return "application/octet-stream";
}

std::string_view cache_of_file(std::string_view name) {
  const std::string_view stem = name.substr(0, std::min(name.rfind('.'), name.size()));
  const bool hashed = stem.size() > hash_length && stem[stem.size() - hash_length - 1] == '-' &&
                      std::ranges::all_of(stem.substr(stem.size() - hash_length), is_hash_letter);
  return hashed ? "public, max-age=31536000, immutable" : "no-store";
}

base::Result<PageFiles> load_page(const fs::path& folder) {
  std::map<std::string, PageFile, std::less<>> files;
  std::size_t bytes_of_all = 0;
  std::error_code error;
  for (auto at = fs::recursive_directory_iterator(folder, error); at != fs::recursive_directory_iterator();
       at.increment(error)) {
    if (error) break;
    if (!at->is_regular_file(error)) continue;
    std::ifstream file(at->path(), std::ios::binary);
    std::string bytes{std::istreambuf_iterator<char>(file), {}};
    bytes_of_all += bytes.size();
    if (!file || bytes_of_all > most_bytes)
      return base::failure(base::ErrorCode::Unavailable, at->path().string() + ": cannot be served");
    const std::string name = at->path().filename().string();
    files.emplace(
        "/" + at->path().lexically_relative(folder).generic_string(),
        PageFile{std::move(bytes), std::string(type_of_file(name)), std::string(cache_of_file(name))});
  }
  if (error) return base::failure(base::ErrorCode::Unavailable, folder.string() + ": " + error.message());
  return PageFiles(std::move(files));
}

std::vector<fs::path> page_places(const std::optional<fs::path>& override, const fs::path& program) {
  if (override) return {*override};
  const fs::path beside = program.parent_path();
  return {(beside / ".." / "web").lexically_normal(), beside / "web",
          (beside / ".." / "share" / "repwright" / "web").lexically_normal()};
}

std::optional<fs::path> page_folder() {
  std::error_code error;
  std::optional<fs::path> override;
  if (const char* named = std::getenv(override_variable); named != nullptr && *named != '\0')
    override = named;
  for (const fs::path& place : page_places(override, fs::read_symlink("/proc/self/exe", error)))
    if (fs::is_regular_file(place / "index.html", error)) return place;
  return std::nullopt;
}

}  // namespace repwright::server
