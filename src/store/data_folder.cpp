#include "store/data_folder.hpp"

#include <cstdlib>
#include <string>
#include <system_error>

namespace repwright::store {
namespace {

namespace fs = std::filesystem;

constexpr const char* override_variable = "REPWRIGHT_DATA";

}  // namespace

std::vector<fs::path> data_places(const std::optional<fs::path>& override, const fs::path& program) {
  if (override) return {*override};
  const fs::path beside = program.parent_path();
  return {(beside / ".." / ".." / "data").lexically_normal(), beside / "data",
          (beside / ".." / "share" / "repwright").lexically_normal()};
}

base::Result<fs::path> first_data_folder(const std::vector<fs::path>& places) {
  std::string looked;
  for (const fs::path& place : places) {
    std::error_code error;
    if (fs::is_directory(place / "catalogue", error)) return place;
    looked += "\n  " + place.string();
  }
  return base::failure(base::ErrorCode::NotFound,
                       "the program's data (a folder with 'catalogue' in it) is not there; looked in:" +
                           looked + "\nset " + override_variable + " to the folder that holds it");
}

base::Result<fs::path> data_folder() {
  std::error_code error;
  const fs::path program = fs::read_symlink("/proc/self/exe", error);
  std::optional<fs::path> override;
  if (const char* named = std::getenv(override_variable); named != nullptr && *named != '\0')
    override = named;
  return first_data_folder(data_places(override, program));
}

}  // namespace repwright::store
