#include "store/read_file.hpp"

#include <fmt/format.h>

#include <fstream>
#include <iterator>
#include <system_error>

namespace repwright::store {
namespace {

namespace fs = std::filesystem;
using base::ErrorCode;
using base::failure;

constexpr std::uintmax_t largest_file = 64ULL * 1024 * 1024;

}  // namespace

base::Result<std::string> read_file(const fs::path& path) {
  std::error_code error;
  if (!fs::exists(path, error))
    return failure(ErrorCode::NotFound, path.string() + ": there is no such file");
  if (!fs::is_regular_file(path, error))
    return failure(ErrorCode::Unavailable, path.string() + ": is not a file");
  if (const auto size = fs::file_size(path, error); !error && size > largest_file)
    return failure(ErrorCode::Invalid,
                   fmt::format("{}: has {} bytes, expected at most {}", path.string(), size, largest_file));
  std::ifstream in(path, std::ios::binary);
  std::string bytes{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  if (!in) return failure(ErrorCode::Unavailable, path.string() + ": cannot be read");
  return bytes;
}

base::Result<void> write_file(const fs::path& path, const std::string& bytes) {
  std::error_code error;
  if (path.has_parent_path()) fs::create_directories(path.parent_path(), error);
  fs::path draft = path;
  draft += ".part";
  {
    std::ofstream out(draft, std::ios::binary | std::ios::trunc);
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    out.flush();
    if (!out) return failure(ErrorCode::Unavailable, path.string() + ": cannot be written");
  }
  fs::rename(draft, path, error);
  if (error)
    return failure(ErrorCode::Unavailable, path.string() + ": cannot be written: " + error.message());
  return {};
}

}  // namespace repwright::store
