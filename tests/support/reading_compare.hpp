#pragma once

#include <cmath>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

/// Compares readings by the rules of docs/guide/reading.md section 1.
namespace repwright::test {

using Json = nlohmann::json;

/// What is different, one sentence each with its place in the document; empty if the readings are alike.
using Differences = std::vector<std::string>;

inline bool is_words(const std::string& field) {
  return field == "text" || field == "note" || field == "free_text" || field == "title";
}
inline bool is_ours(const std::string& field) {
  return field == "line" || field == "span" || field == "title";
}
/// What is neither work nor rule: kept or left out, both are right.
inline bool is_remark(const Json& value) {
  return value.is_object() && value.value("kind", "") == "note" && !value.contains("duration_s");
}

inline void compare(const Json& expected, const Json& actual, const std::string& place, Differences& found);

inline void compare_field(const std::string& name, const Json& expected, const Json& actual,
                          const std::string& place, Differences& found) {
  const std::string here = place + "." + name;
  if (expected.is_null() && actual.is_null()) return;
  if (expected.is_null()) {
    if (!is_ours(name)) found.push_back(here + ": " + actual.dump() + " where nothing is expected");
  } else if (actual.is_null()) {
    found.push_back(here + ": missing, expected " + expected.dump());
  } else if (!is_words(name)) {
    compare(expected, actual, here, found);
  }
}

inline void compare_objects(const Json& expected, const Json& actual, const std::string& place,
                            Differences& found) {
  const Json none;
  for (const auto& [name, value] : expected.items())
    compare_field(name, value, actual.contains(name) ? actual[name] : none, place, found);
  for (const auto& [name, value] : actual.items())
    if (!expected.contains(name)) compare_field(name, none, value, place, found);
}

inline void compare_lists(const Json& expected, const Json& actual, const std::string& place,
                          Differences& found) {
  std::size_t at = 0;
  for (std::size_t i = 0; i < expected.size(); ++i) {
    while (at < actual.size() && is_remark(actual[at]) && !is_remark(expected[i])) ++at;
    const std::string here = place + "[" + std::to_string(i) + "]";
    if (at == actual.size()) {
      found.push_back(here + ": missing, expected " + expected[i].dump());
    } else {
      compare(expected[i], actual[at++], here, found);
    }
  }
  for (; at < actual.size(); ++at)
    if (!is_remark(actual[at])) found.push_back(place + ": one too many: " + actual[at].dump());
}

inline void compare(const Json& expected, const Json& actual, const std::string& place, Differences& found) {
  if (expected.is_number() && actual.is_number()) {
    const double wanted = expected.get<double>();
    const double got = actual.get<double>();
    if (std::abs(wanted - got) > 1e-9 * std::max(1.0, std::abs(wanted)))
      found.push_back(place + ": " + actual.dump() + ", expected " + expected.dump());
  } else if (expected.is_object() && actual.is_object()) {
    compare_objects(expected, actual, place, found);
  } else if (expected.is_array() && actual.is_array()) {
    compare_lists(expected, actual, place, found);
  } else if (expected != actual) {
    found.push_back(place + ": " + actual.dump() + ", expected " + expected.dump());
  }
}

/// `expected`, `actual`: lists of blocks.
inline Differences differences(const Json& expected, const Json& actual) {
  Differences found;
  compare(expected, actual, "blocks", found);
  return found;
}

}  // namespace repwright::test
