#include "api/people_json.hpp"

#include <nlohmann/json.hpp>

#include "api/version.hpp"
#include "base/require.hpp"
#include "store/csv.hpp"
#include "store/people_csv.hpp"

namespace repwright::api {
namespace {

using nlohmann::ordered_json;

ordered_json rows_of(const store::CsvTable& table) {
  ordered_json rows = ordered_json::array();
  for (const store::CsvRow& row : table.rows) {
    ordered_json cells = ordered_json::object();
    for (std::size_t c = 0; c < row.cells.size(); ++c)
      if (!row.cells[c].empty()) cells[table.header[c]] = row.cells[c];
    rows.push_back(std::move(cells));
  }
  return rows;
}

store::CsvTable table_of(const std::string& csv) {
  store::Problems problems;
  auto table = store::read_csv(csv, "people.csv", problems);
  base::require(table && problems.empty(), "what the store writes of people it reads again");
  return std::move(table).value_or(store::CsvTable{});
}

}  // namespace

ordered_json people_json(std::span<const domain::Person> people) {
  const std::string csv = store::write_people({people.begin(), people.end()});
  const store::CsvTable table = table_of(csv);
  return {{"version", version_of(csv)}, {"columns", table.header}, {"rows", rows_of(table)}};
}

ordered_json person_json(const domain::Person& person) {
  ordered_json rows = rows_of(table_of(store::write_people({person})));
  return rows.empty() ? ordered_json::object() : rows.front();
}

ordered_json floor_json(const domain::Person& person, std::chrono::year_month_day today) {
  ordered_json json{{"id", person.id.text}, {"name", person.name}, {"actions", ordered_json::array()}};
  for (const domain::Limit& limit : domain::limits_on(person, today))
    if (!limit.action.empty()) json["actions"].push_back(limit.action);
  return json;
}

}  // namespace repwright::api
