#include "store/catalogue_rows.hpp"

#include <fmt/format.h>

#include <array>

namespace repwright::store {
namespace {

using base::metre;
using base::second;

domain::Drill drill_row(TableReader& in, const std::string& source) {
  domain::Drill drill;
  drill.id = in.text("id");
  drill.name = in.text("name");
  drill.phase = in.choice("phase", {"raise", "mobilise", "activate", "rehearse", "recover"});
  drill.joints = in.texts("joints");
  drill.patterns = in.texts("patterns");
  drill.muscles = in.texts("muscles");
  drill.length = in.number("seconds", {1, 1800}) * second;
  drill.both_sides_included = in.flag("both_sides_included");
  drill.equipment = in.texts("equipment");
  drill.how = in.text("how");
  drill.coach_line = in.text("coach_line");
  if (auto home = in.table("home")) {
    drill.home_kind = home->choice("kind", {"same", "none-needed", "drill", "text"});
    drill.home_drill = home->optional_text("drill");
    drill.home_text = home->optional_text("text");
    if ((drill.home_kind == "drill") == drill.home_drill.empty())
      home->note("drill", "is there exactly if kind is 'drill'");
    if ((drill.home_kind == "text") == drill.home_text.empty())
      home->note("text", "is there exactly if kind is 'text'");
    home->finish();
  }
  drill.space = in.number("space_m2", {0.1, 100}) * (metre * metre);
  drill.flags = in.texts("flags");
  drill.avoid_with = in.ids<domain::LimitId>("avoid_with");
  drill.effort = in.whole_number("effort", {0, 10});
  drill.source = in.optional_text("source");
  if (drill.source.empty()) drill.source = source;
  in.finish();
  return drill;
}

domain::Equipment equipment_row(TableReader& in, const std::string&) {
  domain::Equipment equipment;
  equipment.id = {in.text("id")};
  equipment.name = in.text("name");
  equipment.kind = in.choice("kind", {"fixed", "room", "machine", "loose", "home"});
  equipment.width = in.number("width_m", {0, 20}) * metre;
  equipment.people_per_unit = in.whole_number("people_per_unit", {1, 100});
  in.finish();
  return equipment;
}

domain::LimitKind limit_row(TableReader& in, const std::string&) {
  domain::LimitKind limit;
  limit.id = {in.text("id")};
  limit.name = in.text("name");
  limit.from_flags = in.texts("from_flags");
  in.finish();
  return limit;
}

/// What is being read from which file.
struct FileReading {
  const std::string& file;
  TableReader& root;
  Problems& problems;
  const std::string& source;
};

/// The rows under one array of tables; `read_row` turns each into a value.
template <class Row>
void read_list(const FileReading& from, const toml::table& table, std::string_view key,
               std::vector<Placed<Row>>& to, Row (*read_row)(TableReader&, const std::string&)) {
  const toml::node* node = table.get(key);
  if (node == nullptr) return;
  const toml::array* array = node->as_array();
  if (array == nullptr)
    return from.root.note(key, fmt::format("is not a list of rows, write [[{}]] above each", key));
  for (const toml::node& element : *array) {
    const toml::table* row = element.as_table();
    if (row == nullptr) {
      from.root.note(key, fmt::format("has an element that is no row, write [[{}]] above each", key));
      continue;
    }
    RowPlace place{
        from.file, line_of(element), row->get("id") ? (*row)["id"].value_or(std::string()) : "", {}};
    TableReader reader(*row, place, from.problems);  // NOLINT(misc-const-correctness): the template hides it
    Row value = read_row(reader, from.source);
    to.push_back({std::move(value), std::move(place)});
  }
}

void read_terms(TableReader& root, std::string_view key, std::vector<domain::Term>& to) {
  auto terms = root.optional_table(key);
  if (!terms) return;
  for (const std::string& id : terms->keys()) to.push_back({id, terms->text(id)});
}

void read_words(const FileReading& from, CatalogueRows& rows) {
  auto words = from.root.optional_table("ambiguous");
  if (!words) return;
  for (const std::string& word : words->keys()) {
    Placed<Meanings> meanings{{word, words->ids<domain::MovementId>(word)},
                              {from.file, words->line(word), word, {}}};
    if (meanings.row.movements.empty()) words->note(word, "stands for no movement");
    rows.words.push_back(std::move(meanings));
  }
}

void read_tables(const toml::table& table, const std::string& file, CatalogueRows& rows, Problems& problems) {
  RowPlace place{file, 0, "", {}};
  TableReader root(table, place, problems);
  const int version = static_cast<int>(root.optional_number("version").value_or(catalogue_version));
  if (version != catalogue_version)
    root.note("version", fmt::format("is {}, this program reads {}", version, catalogue_version));
  std::string source = root.optional_text("source");
  if (source.empty()) source = own_source;
  const FileReading from{file, root, problems, source};
  read_terms(root, "category", rows.terms.categories);
  read_terms(root, "pattern", rows.terms.patterns);
  read_terms(root, "muscle", rows.terms.muscles);
  read_terms(root, "flag", rows.terms.flags);
  read_list(from, table, "movement", rows.movements, movement_row);
  read_list(from, table, "drill", rows.drills, drill_row);
  read_list(from, table, "equipment", rows.equipment, equipment_row);
  read_list(from, table, "limit", rows.limits, limit_row);
  read_words(from, rows);
  for (const std::string_view list : {"movement", "drill", "equipment", "limit"}) root.know(list);
  root.finish();
}

}  // namespace

void read_rows(std::string_view bytes, const std::string& file, CatalogueRows& rows, Problems& problems) {
  try {
    const toml::table table = toml::parse(bytes);
    read_tables(table, file, rows, problems);
  } catch (const toml::parse_error& error) {
    const auto at = error.source().begin;
    problems.add({file, static_cast<int>(at.line), "", fmt::format("column {}", at.column),
                  fmt::format("not readable as TOML: {}", error.description())});
  }
}

}  // namespace repwright::store
