#include "api/request_body.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "store/csv.hpp"

namespace repwright::api {
namespace {

using Json = nlohmann::ordered_json;

/// Where the mistake is and what was met there: the end of what the library says.
std::string said_by(const Json::exception& error) {
  const std::string_view said = error.what();
  const std::size_t colon = said.find(": ");
  return std::string(colon == std::string_view::npos ? said : said.substr(colon + 2));
}

/// A whole number between the bounds; also `3.0`.
std::optional<int> whole_within(const Json& value, int min, int max) {
  if (!value.is_number()) return std::nullopt;
  const auto number = value.get<double>();
  if (!(number >= min && number <= max) || std::floor(number) != number) return std::nullopt;
  return static_cast<int>(number);
}

}  // namespace

RequestBody::RequestBody(std::string_view bytes) {
  try {
    Json parsed = Json::parse(bytes.begin(), bytes.end());
    if (parsed.is_object())
      json_ = std::move(parsed);
    else
      fault_ = Fault{.status = 400, .text = "the body is not a JSON object: { ... }"};
  } catch (const Json::exception& error) {
    fault_ = Fault{.status = 400, .text = "the body is not readable as JSON: " + said_by(error)};
  }
}

void RequestBody::wrong(const std::string& field, std::string text) {
  if (!fault_) fault_ = Fault{.status = 400, .text = std::move(text), .field = field};
}

const Json* RequestBody::find(const std::string& field) {
  asked_.insert(field);
  const auto at = json_.find(field);
  return at == json_.end() || at->is_null() ? nullptr : &*at;
}

bool RequestBody::has(const std::string& field) {
  return find(field) != nullptr;
}

std::optional<std::string> RequestBody::text(const std::string& field, std::size_t most) {
  const Json* value = find(field);
  if (value == nullptr) return std::nullopt;
  if (!value->is_string()) return wrong(field, fmt::format("`{}` is not a text", field)), std::nullopt;
  const auto& words = value->get_ref<const std::string&>();
  if (words.size() > most)
    return wrong(field, fmt::format("`{}` is longer than {} bytes", field, most)), std::nullopt;
  return words;
}

std::vector<std::string> RequestBody::texts(const std::string& field, std::size_t most) {
  std::vector<std::string> out;
  const Json* value = find(field);
  if (value == nullptr) return out;
  if (!value->is_array()) return wrong(field, fmt::format("`{}` is not a list of texts", field)), out;
  for (const Json& one : *value) {
    if (one.is_string() && one.get_ref<const std::string&>().size() <= most)
      out.push_back(one.get<std::string>());
    else
      wrong(field, fmt::format("`{}` is not a list of texts of at most {} bytes", field, most));
  }
  return out;
}

std::string RequestBody::needed_text(const std::string& field, std::size_t most) {
  std::optional<std::string> words = text(field, most);
  if (!words || words->empty()) wrong(field, fmt::format("`{}` is missing", field));
  return std::move(words).value_or(std::string());
}

std::optional<int> RequestBody::whole(const std::string& field, int min, int max) {
  const Json* value = find(field);
  if (value == nullptr) return std::nullopt;
  const auto number = whole_within(*value, min, max);
  if (!number) wrong(field, fmt::format("`{}` is not a whole number from {} to {}", field, min, max));
  return number;
}

std::optional<double> RequestBody::number(const std::string& field, double min, double max) {
  const Json* value = find(field);
  if (value == nullptr) return std::nullopt;
  const double number = value->is_number() ? value->get<double>() : std::nan("");
  if (number >= min && number <= max) return number;
  wrong(field, fmt::format("`{}` is not a number from {} to {}", field, min, max));
  return std::nullopt;
}

bool RequestBody::flag(const std::string& field) {
  const Json* value = find(field);
  if (value == nullptr) return false;
  if (!value->is_boolean()) return wrong(field, fmt::format("`{}` is not true or false", field)), false;
  return value->get<bool>();
}

std::map<std::string, int> RequestBody::counts(const std::string& field, int min, int max) {
  std::map<std::string, int> out;
  const Json* value = find(field);
  if (value == nullptr) return out;
  if (!value->is_object())
    return wrong(field, fmt::format("`{}` is not an object of whole numbers", field)), out;
  for (const auto& [key, each] : value->items()) {
    const auto number = whole_within(each, min, max);
    if (number)
      out.emplace(key, *number);
    else
      wrong(fmt::format("{}.{}", field, key),
            fmt::format("`{}.{}` is not a whole number from {} to {}", field, key, min, max));
  }
  return out;
}

std::string RequestBody::object(const std::string& field) {
  const Json* value = find(field);
  if (value != nullptr && value->is_object()) return value->dump();
  wrong(field, fmt::format("`{}` is not an object", field));
  return "";
}

std::string RequestBody::table(const std::string& field) {
  const Json* rows = find(field);
  if (rows == nullptr || !rows->is_array()) return wrong(field, fmt::format("`{}` is not a list", field)), "";
  std::vector<std::string> columns;
  for (const Json& row : *rows) {
    if (!row.is_object()) return wrong(field, fmt::format("`{}` has a row that is not an object", field)), "";
    for (const auto& [column, cell] : row.items()) {
      if (!cell.is_string()) return wrong(field, fmt::format("the cell `{}` is not a text", column)), "";
      if (std::ranges::find(columns, column) == columns.end()) columns.push_back(column);
    }
  }
  std::vector<std::vector<std::string>> cells{columns};
  for (const Json& row : *rows) {
    cells.emplace_back();
    for (const std::string& column : columns) cells.back().push_back(row.value(column, ""));
  }
  return store::write_csv(cells);
}

std::optional<Fault> RequestBody::fault() const {
  if (fault_) return fault_;
  for (const auto& [key, value] : json_.items())
    if (!asked_.contains(key))
      return Fault{.status = 400, .text = fmt::format("nothing is known of `{}`", key), .field = key};
  return std::nullopt;
}

}  // namespace repwright::api
