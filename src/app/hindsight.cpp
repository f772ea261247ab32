#include "app/hindsight.hpp"

#include <algorithm>
#include <cmath>

#include "base/statistics.hpp"
#include "domain/people_search.hpp"

namespace repwright::app {
namespace {

double share_off(double guess, double score) {
  return std::exp(std::abs(std::log(guess / score))) - 1;
}

double middle(const std::vector<double>& sample) {
  return sample.empty() ? 0 : base::quantile(sample, .5);
}

HindsightRow row_of(std::string of, const std::vector<const ForecastScore*>& forecasts) {
  HindsightRow row{.of = std::move(of), .scores = static_cast<int>(forecasts.size())};
  if (forecasts.empty()) return row;
  std::vector<double> logs, errors, own, last, group;
  double held = 0;
  for (const ForecastScore* each : forecasts) {
    logs.push_back(std::log(each->p50 / each->value));
    errors.push_back(share_off(each->p50, each->value));
    held += each->value >= each->p10 && each->value <= each->p90 ? 1 : 0;
    if (!each->last || !each->group) continue;
    own.push_back(errors.back());
    last.push_back(share_off(*each->last, each->value));
    group.push_back(share_off(*each->group, each->value));
  }
  row.bias = std::exp(base::mean(logs)) - 1;
  row.median_error = middle(errors);
  row.held = held / static_cast<double>(forecasts.size());
  row.compared = static_cast<int>(own.size());
  row.forecast_error = middle(own);
  row.last_error = middle(last);
  row.group_error = middle(group);
  return row;
}

/// A row for each key, in the order of the keys.
template <class Key, class KeyOf, class NameOf>
std::vector<HindsightRow> rows_by(const std::vector<const ForecastScore*>& forecasts, const KeyOf& key_of,
                                  const NameOf& name_of) {
  std::map<Key, std::vector<const ForecastScore*>> groups;
  for (const ForecastScore* each : forecasts) groups[key_of(*each)].push_back(each);
  std::vector<HindsightRow> rows;
  rows.reserve(groups.size());
  for (const auto& [key, members] : groups) rows.push_back(row_of(name_of(key), members));
  return rows;
}

/// 1, 2, 3 to 5, 6 to 10, more: by the first of them.
int step_of(int nth) {
  for (const int from : {11, 6, 3})
    if (nth >= from) return from;
  return nth;
}

std::string step_name(int from) {
  switch (from) {
    case 1:
      return "1st score";
    case 2:
      return "2nd score";
    case 3:
      return "3rd to 5th";
    case 6:
      return "6th to 10th";
    default:
      return "later";
  }
}

}  // namespace

Hindsight hindsight(const std::vector<ForecastScore>& forecasts, const std::vector<domain::Person>& people) {
  std::vector<const ForecastScore*> ordinary;
  for (const ForecastScore& each : forecasts)
    if (each.entry.flag == domain::DayFlag::None) ordinary.push_back(&each);
  const auto name_of = [&](const domain::PersonId& id) {
    const domain::Person* found = domain::find_person(people, id);
    return found != nullptr ? found->name : id.text;
  };
  Hindsight out;
  out.all = row_of("all", ordinary);
  out.by_count = rows_by<int>(ordinary, [](const ForecastScore& f) { return step_of(f.nth); }, step_name);
  out.by_board = rows_by<std::string>(
      ordinary, [](const ForecastScore& f) { return f.entry.board_id; },
      [](const std::string& board) { return board; });
  out.by_person =
      rows_by<domain::PersonId>(ordinary, [](const ForecastScore& f) { return f.entry.person; }, name_of);
  return out;
}

}  // namespace repwright::app
