#include <algorithm>
#include <cmath>
#include <functional>
#include <set>

#include "domain/written_values.hpp"
#include "store/csv.hpp"
#include "store/limits_cell.hpp"
#include "store/people_columns.hpp"
#include "store/people_csv.hpp"

namespace repwright::store {
namespace {

using domain::Person;

struct WrittenColumn {
  std::string header;
  std::function<std::string(const Person&)> cell;
};

template <class T>
std::string number_or_empty(const std::optional<T>& value) {
  return value ? domain::write_number(static_cast<double>(*value)) : std::string();
}

std::string sex_letter(domain::Sex sex) {
  return sex == domain::Sex::Female ? "f" : sex == domain::Sex::Male ? "m" : "";
}

std::string days(const Person& person) {
  std::string out;
  for (const std::string& day : person.attends) out += (out.empty() ? "" : " ") + day;
  return out;
}

std::string peak(const Person& person) {
  for (const domain::Mark& mark : person.marks)
    if (std::holds_alternative<domain::AerobicPeak>(mark)) return write_mark_cell(mark);
  return {};
}

std::string centimetres(const std::optional<base::Length>& height) {
  return height ? domain::write_number(std::round(height->si() * 1000.0) / 10.0) : std::string();
}

std::vector<WrittenColumn> fact_columns() {
  const auto column = [](Fact fact, std::function<std::string(const Person&)> cell) {
    return WrittenColumn{std::string(header_of(fact)), std::move(cell)};
  };
  return {column(Fact::Id, [](const Person& p) { return p.id.text; }),
          column(Fact::Name, [](const Person& p) { return p.name; }),
          column(Fact::Sex, [](const Person& p) { return sex_letter(p.sex); }),
          column(Fact::Age, [](const Person& p) { return number_or_empty(p.age); }),
          column(Fact::BirthYear, [](const Person& p) { return number_or_empty(p.birth_year); }),
          column(Fact::Mass,
                 [](const Person& p) { return p.mass ? domain::write_number(p.mass->si()) : std::string(); }),
          column(Fact::Height, [](const Person& p) { return centimetres(p.height); }),
          column(Fact::TrainingYears, [](const Person& p) { return number_or_empty(p.training_years); }),
          column(Fact::AerobicPeak, peak),
          column(Fact::Limits, [](const Person& p) { return write_limits(p.limits); }),
          column(Fact::Actions, [](const Person& p) { return write_actions(p.limits); }),
          column(Fact::Attends, days)};
}

/// A column for each mark and each standing version that anybody has.
std::vector<WrittenColumn> personal_columns(const std::vector<Person>& people) {
  std::set<domain::Mark, decltype(&mark_before)> marks(&mark_before);
  std::set<std::string> words;
  for (const Person& person : people) {
    for (const domain::Mark& mark : person.marks)
      if (!std::holds_alternative<domain::AerobicPeak>(mark)) marks.insert(mark);
    for (const auto& [word, version] : person.versions) words.insert(word);
  }
  std::vector<WrittenColumn> out;
  out.reserve(marks.size() + words.size());
  for (const domain::Mark& wanted : marks)
    out.push_back({write_mark_header(wanted), [wanted](const Person& person) {
                     for (const domain::Mark& mark : person.marks)
                       if (!mark_before(mark, wanted) && !mark_before(wanted, mark))
                         return write_mark_cell(mark);
                     return std::string();
                   }});
  for (const std::string& word : words)
    out.push_back({word, [word](const Person& person) {
                     const auto at = person.versions.find(word);
                     return at == person.versions.end() ? std::string() : at->second.text;
                   }});
  return out;
}

}  // namespace

std::string write_people(const std::vector<Person>& people) {
  std::vector<WrittenColumn> columns = fact_columns();
  std::ranges::move(personal_columns(people), std::back_inserter(columns));
  std::vector<std::vector<std::string>> rows(1);
  for (const WrittenColumn& column : columns) rows.front().push_back(column.header);
  for (const Person& person : people) {
    std::vector<std::string>& row = rows.emplace_back();
    for (const WrittenColumn& column : columns) row.push_back(column.cell(person));
  }
  return write_csv(rows);
}

}  // namespace repwright::store
