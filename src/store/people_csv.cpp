#include "store/people_csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "base/civil_date.hpp"
#include "base/text.hpp"
#include "domain/written_values.hpp"
#include "store/csv.hpp"
#include "store/limits_cell.hpp"
#include "store/people_columns.hpp"

namespace repwright::store {
namespace {

using domain::Person;

struct Range {
  double min;
  double max;
};
constexpr Range ages{4, 110};
constexpr Range birth_years{1900, 2100};
constexpr Range masses_kg{15, 350};
constexpr Range heights_cm{70, 250};
constexpr Range years_of_training{0, 90};

/// One row becoming a person.
class RowReader {
 public:
  RowReader(const NamedCatalogue& known, const std::string& file, int line, Problems& problems)
      : known_(known), file_(file), line_(line), problems_(problems) {}

  Person read(const std::vector<PeopleColumn>& columns, const std::vector<std::string>& cells) {
    for (std::size_t i = 0; i < columns.size(); ++i)
      if (const Fact* fact = std::get_if<Fact>(&columns[i].kind); fact != nullptr && *fact == Fact::Name)
        person_.name = cells[i];
    if (person_.name.empty()) wrong("name", "is empty");
    for (std::size_t i = 0; i < columns.size(); ++i) {
      column_ = &columns[i].header;
      if (!cells[i].empty()) std::visit([&](const auto& kind) { take(kind, cells[i]); }, columns[i].kind);
    }
    if (person_.id.empty()) person_.id = {person_.name};
    put_actions();
    std::ranges::sort(person_.marks, mark_before);
    return std::move(person_);
  }

 private:
  void wrong(std::string_view column, std::string text) {
    problems_.add({file_, line_, person_.name, std::string(column), std::move(text)});
  }
  void wrong(std::string text) { wrong(*column_, std::move(text)); }

  std::optional<double> number(const std::string& cell, Range range) {
    const auto value = domain::read_number(cell);
    if (value && *value >= range.min && *value <= range.max) return value;
    wrong(fmt::format("is '{}', expected {} to {}", cell, range.min, range.max));
    return std::nullopt;
  }

  void take(const LeftOut&, const std::string&) {}
  void take(const MarkColumn& column, const std::string& cell) {
    auto mark = read_mark_cell(column, cell, known_.catalogue);
    if (mark)
      person_.marks.push_back(std::move(*mark));
    else
      wrong(mark.error());
  }
  void take(const VersionColumn& column, const std::string& cell) {
    if (const domain::MovementId* id = known_.names.find(cell))
      person_.versions[column.word] = *id;
    else
      wrong(fmt::format("is '{}', expected a movement; for a best set call the column 'max {}'", cell,
                        *column_));
  }
  void take(Fact fact, const std::string& cell) {
    switch (fact) {
      case Fact::Name:
        break;
      case Fact::Id:
        person_.id = {cell};
        break;
      case Fact::Sex:
        take_sex(cell);
        break;
      case Fact::Age:
        person_.age = number(cell, ages);
        break;
      case Fact::BirthYear:
        if (const auto year = number(cell, birth_years)) person_.birth_year = static_cast<int>(*year);
        break;
      case Fact::Mass:
        if (const auto kg = number(cell, masses_kg)) person_.mass = *kg * base::kilogram;
        break;
      case Fact::Height:
        if (const auto cm = number(cell, heights_cm))
          person_.height = domain::to_millimetre(*cm / 100.0 * base::metre);
        break;
      case Fact::TrainingYears:
        person_.training_years = number(cell, years_of_training);
        break;
      case Fact::AerobicPeak:
        take(MarkColumn{domain::AerobicPeak{}}, cell);
        break;
      case Fact::Limits:
        take_limits(cell);
        break;
      case Fact::Actions:
        actions_ = read_actions(cell);
        break;
      case Fact::Attends:
        take_days(cell);
        break;
    }
  }
  void take_sex(const std::string& cell) {
    const std::string sex = base::lower(cell);
    if (sex == "f")
      person_.sex = domain::Sex::Female;
    else if (sex == "m")
      person_.sex = domain::Sex::Male;
    else if (sex != "x")
      wrong(fmt::format("is '{}', expected f, m, x or nothing", cell));
  }
  void take_limits(const std::string& cell) {
    auto limits = read_limits(cell, known_.catalogue);
    if (limits)
      person_.limits = std::move(*limits);
    else
      wrong(limits.error());
    limits_readable_ = limits.has_value();
  }
  void take_days(const std::string& cell) {
    for (std::string_view rest = cell; !rest.empty();) {
      const std::string_view word = rest.substr(0, rest.find_first_of(" \t"));
      const std::string day = base::lower(word);
      if (std::ranges::find(base::weekday_names, std::string_view(day)) == base::weekday_names.end())
        wrong(fmt::format("has '{}', expected weekdays such as 'mon wed fri'", word));
      else if (std::ranges::find(person_.attends, day) == person_.attends.end())
        person_.attends.push_back(day);
      rest = base::trim(rest.substr(word.size()));
    }
  }
  void put_actions() {
    if (actions_.empty() || !limits_readable_) return;
    if (actions_.size() != person_.limits.size())
      return wrong("actions", fmt::format("has {} texts for {} limits, expected one each, parted by |",
                                          actions_.size(), person_.limits.size()));
    for (std::size_t i = 0; i < actions_.size(); ++i) person_.limits[i].action = std::move(actions_[i]);
  }

  const NamedCatalogue& known_;
  const std::string& file_;
  int line_;
  Problems& problems_;
  Person person_;
  std::vector<std::string> actions_;
  bool limits_readable_ = true;
  const std::string* column_ = nullptr;
};

/// Every person's id is their own.
void check_ids(const std::vector<Person>& people, const std::vector<CsvRow>& rows, const std::string& file,
               Problems& problems) {
  std::map<std::string_view, int> first;
  for (std::size_t i = 0; i < people.size(); ++i) {
    const Person& person = people[i];
    if (person.id.empty()) continue;
    const auto [at, fresh] = first.try_emplace(person.id.text, rows[i].line);
    if (!fresh)
      problems.add({file, rows[i].line, person.name, "id",
                    fmt::format("'{}' is also the id (or, without one, the name) in line {}; give each an id",
                                person.id.text, at->second)});
  }
}

/// A column without any movement in it was not meant as standing versions ("box" with heights, say).
void leave_out_other_columns(const CsvTable& table, const NamedCatalogue& known,
                             std::vector<PeopleColumn>& columns, std::vector<std::string>& notes) {
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (!std::holds_alternative<VersionColumn>(columns[i].kind)) continue;
    bool filled = false;
    bool named = false;
    for (const CsvRow& row : table.rows) {
      filled = filled || !row.cells[i].empty();
      named = named || known.names.find(row.cells[i]) != nullptr;
    }
    if (!filled || named) continue;
    columns[i].kind = LeftOut{};
    notes.push_back(
        fmt::format("column '{0}' is left out: no cell names a movement, as a standing version "
                    "would; for a best set call it 'max {0}'",
                    columns[i].header));
  }
}

PeopleFile read_with(std::string_view bytes, const std::string& file, const domain::Catalogue& catalogue,
                     Problems& problems) {
  PeopleFile out;
  const NamedCatalogue known(catalogue);
  if (const auto table = read_csv(bytes, file, problems)) {
    std::vector<PeopleColumn> columns = people_columns(table->header, known, out.notes, problems, file);
    leave_out_other_columns(*table, known, columns, out.notes);
    for (const CsvRow& row : table->rows)
      out.people.push_back(RowReader(known, file, row.line, problems).read(columns, row.cells));
    check_ids(out.people, table->rows, file, problems);
  }
  return out;
}

}  // namespace

base::Result<PeopleFile> read_people(std::string_view bytes, const std::string& file,
                                     const domain::Catalogue& catalogue) {
  Problems problems;
  PeopleFile out = read_with(bytes, file, catalogue, problems);
  if (!problems.empty()) return tl::unexpected(problems.error());
  return out;
}

PeoplePreview preview_people(std::string_view bytes, const std::string& file,
                             const domain::Catalogue& catalogue) {
  Problems problems;
  PeopleFile out = read_with(bytes, file, catalogue, problems);
  return {std::move(out), problems.all()};
}

}  // namespace repwright::store
