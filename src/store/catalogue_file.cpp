#include "store/catalogue_file.hpp"

#include <algorithm>
#include <system_error>
#include <utility>

#include "store/catalogue_check.hpp"
#include "store/catalogue_merge.hpp"
#include "store/catalogue_rows.hpp"
#include "store/read_file.hpp"

namespace repwright::store {
namespace {

namespace fs = std::filesystem;

template <class Row>
std::vector<Row> rows_alone(std::vector<Placed<Row>> placed) {
  std::vector<Row> out;
  out.reserve(placed.size());
  for (Placed<Row>& one : placed) out.push_back(std::move(one.row));
  return out;
}

domain::Catalogue catalogue_of(CatalogueRows rows) {
  domain::Catalogue out;
  out.version = catalogue_version;
  out.terms = std::move(rows.terms);
  out.movements = rows_alone(std::move(rows.movements));
  std::ranges::sort(out.movements, {}, &domain::Movement::id);
  out.drills = rows_alone(std::move(rows.drills));
  out.equipment = rows_alone(std::move(rows.equipment));
  out.limits = rows_alone(std::move(rows.limits));
  for (Placed<Meanings>& word : rows.words)
    out.ambiguous_words.emplace(std::move(word.row.word), std::move(word.row.movements));
  return out;
}

base::Result<CatalogueText> catalogue_text(const fs::path& path) {
  base::Result<std::string> bytes = read_file(path);
  if (!bytes) return tl::unexpected(bytes.error());
  return CatalogueText{path.string(), std::move(*bytes)};
}

base::Result<std::vector<fs::path>> files_of(const fs::path& folder) {
  std::vector<fs::path> files;
  std::error_code error;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder, error))
    if (entry.path().extension() == ".toml") files.push_back(entry.path());
  if (error || files.empty())
    return base::failure(base::ErrorCode::NotFound, folder.string() + ": holds no catalogue (*.toml)");
  std::ranges::sort(files);
  return files;
}

}  // namespace

base::Result<domain::Catalogue> read_catalogue(const std::vector<CatalogueText>& shipped,
                                               const std::optional<CatalogueText>& own) {
  Problems problems;
  CatalogueRows rows;
  for (const CatalogueText& text : shipped) read_rows(text.bytes, text.file, rows, problems);
  if (own) {
    CatalogueRows own_rows;
    read_rows(own->bytes, own->file, own_rows, problems);
    rows = with_own(std::move(rows), std::move(own_rows));
  }
  check_rows(rows, problems);
  if (!problems.empty()) return tl::unexpected(problems.error());
  return catalogue_of(std::move(rows));
}

base::Result<domain::Catalogue> load_catalogue_with(const fs::path& folder,
                                                    const std::optional<CatalogueText>& own) {
  const auto files = files_of(folder);
  if (!files) return tl::unexpected(files.error());
  std::vector<CatalogueText> shipped;
  for (const fs::path& file : *files) {
    base::Result<CatalogueText> text = catalogue_text(file);
    if (!text) return tl::unexpected(text.error());
    shipped.push_back(std::move(*text));
  }
  return read_catalogue(shipped, own);
}

base::Result<domain::Catalogue> load_catalogue(const fs::path& folder,
                                               const std::optional<fs::path>& gyms_own) {
  if (!gyms_own) return load_catalogue_with(folder, std::nullopt);
  const base::Result<CatalogueText> own = catalogue_text(*gyms_own);
  if (!own) return tl::unexpected(own.error());
  return load_catalogue_with(folder, *own);
}

}  // namespace repwright::store
