#include "store/read_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <system_error>

namespace repwright::store {
namespace {

namespace fs = std::filesystem;
using base::ErrorCode;
using base::failure;

constexpr std::uintmax_t largest_file = 64ULL * 1024 * 1024;

class OpenFile {
 public:
  OpenFile(const fs::path& path, int flags) : handle_(::open(path.c_str(), flags | O_CLOEXEC, 0666)) {}
  ~OpenFile() {
    if (is_open()) ::close(handle_);
  }
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  bool is_open() const { return handle_ >= 0; }
  int handle() const { return handle_; }

 private:
  int handle_;
};

/// The errno of what went wrong; 0 if all bytes are on the disk.
int write_all(const fs::path& path, std::string_view bytes) {
  const OpenFile file(path, O_WRONLY | O_CREAT | O_TRUNC);
  if (!file.is_open()) return errno;
  while (!bytes.empty()) {
    const auto written = ::write(file.handle(), bytes.data(), bytes.size());
    if (written < 0 && errno != EINTR) return errno;
    if (written > 0) bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return ::fsync(file.handle()) == 0 ? 0 : errno;
}

ErrorCode code_of(int fault) {
  if (fault == ENOSPC || fault == EDQUOT) return ErrorCode::Full;
  return fault == EROFS || fault == EACCES || fault == EPERM ? ErrorCode::ReadOnly : ErrorCode::Unavailable;
}

tl::unexpected<base::Error> failed(const fs::path& path, const char* what, int fault) {
  return failure(code_of(fault), fmt::format("{}: cannot be {}: {}", path.string(), what,
                                             std::error_code(fault, std::generic_category()).message()));
}

/// A name that is new or gone is durable only with its folder.
void keep_folder(const fs::path& path) {
  const OpenFile folder(path.has_parent_path() ? path.parent_path() : ".", O_RDONLY | O_DIRECTORY);
  if (folder.is_open()) ::fsync(folder.handle());
}

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
  int fault = write_all(draft, bytes);
  if (fault == 0 && std::rename(draft.c_str(), path.c_str()) != 0) fault = errno;
  if (fault != 0) {
    fs::remove(draft, error);
    return failed(path, "written", fault);
  }
  keep_folder(path);
  return {};
}

base::Result<void> remove_file(const fs::path& path) {
  if (::unlink(path.c_str()) != 0) {
    if (errno == ENOENT) return {};
    return failed(path, "taken away", errno);
  }
  keep_folder(path);
  return {};
}

}  // namespace repwright::store
