#include "store/toml_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "domain/movement_names.hpp"

namespace repwright::store {
namespace {

std::string_view kind_of(const toml::node& node) {
  if (node.is_string()) return "a text";
  if (node.is_number()) return "a number";
  if (node.is_boolean()) return "true or false";
  if (node.is_array()) return "a list";
  if (node.is_table()) return "a table";
  return "a date or time";
}

std::string instead(const toml::node& node, std::string_view expected) {
  return fmt::format("is {}, expected {}", kind_of(node), expected);
}

}  // namespace

int line_of(const toml::node& node) {
  return static_cast<int>(node.source().begin.line);
}

Problem RowPlace::problem(std::string_view field, std::string text) const {
  const auto at = field_lines.find(field);
  return {file, at == field_lines.end() ? line : at->second, row, std::string(field), std::move(text)};
}

TableReader::TableReader(const toml::table& table, RowPlace& place, Problems& problems, std::string prefix)
    : table_(&table), place_(&place), problems_(&problems), prefix_(std::move(prefix)) {
  for (const auto& [key, node] : table)
    place_->field_lines.emplace(prefix_ + std::string(key.str()), static_cast<int>(key.source().begin.line));
}

void TableReader::note(std::string_view key, std::string text) {
  problems_->add(place_->problem(prefix_ + std::string(key), std::move(text)));
}

const toml::node* TableReader::get(std::string_view key) {
  asked_.emplace_back(key);
  return table_->get(key);
}

const toml::node* TableReader::need(std::string_view key) {
  const toml::node* node = get(key);
  if (node == nullptr) note(key, "is missing");
  return node;
}

std::string TableReader::text(std::string_view key) {
  const toml::node* node = need(key);
  if (node == nullptr) return {};
  const auto value = node->value_exact<std::string>();
  if (!value) return note(key, instead(*node, "a text")), std::string();
  if (value->empty()) note(key, "is empty");
  return *value;
}

std::string TableReader::optional_text(std::string_view key) {
  const toml::node* node = get(key);
  if (node == nullptr) return {};
  const auto value = node->value_exact<std::string>();
  if (!value) note(key, instead(*node, "a text"));
  return value.value_or(std::string());
}

std::string TableReader::choice(std::string_view key, std::initializer_list<std::string_view> allowed) {
  const toml::node* node = need(key);
  if (node == nullptr) return {};
  const auto value = node->value_exact<std::string>();
  if (value && std::ranges::find(allowed, *value) != allowed.end()) return *value;
  const std::string expected = fmt::format("one of {}", fmt::join(allowed, ", "));
  note(key, value ? fmt::format("is '{}', expected {}", *value, expected) : instead(*node, expected));
  return {};
}

std::optional<double> TableReader::optional_number(std::string_view key, Bounds bounds) {
  const toml::node* node = get(key);
  if (node == nullptr) return std::nullopt;
  const auto value = node->is_number() ? node->value<double>() : std::nullopt;
  if (!value) return note(key, instead(*node, "a number")), std::nullopt;
  if (!(*value >= bounds.min && *value <= bounds.max)) {
    note(key, fmt::format("is {}, expected {} to {}", *value, bounds.min, bounds.max));
    return std::nullopt;
  }
  return value;
}

double TableReader::number(std::string_view key, Bounds bounds) {
  if (table_->get(key) == nullptr) return (void)need(key), bounds.min;
  return optional_number(key, bounds).value_or(bounds.min);
}

int TableReader::whole_number(std::string_view key, Bounds bounds) {
  const double value = number(key, bounds);
  if (std::floor(value) != value) note(key, fmt::format("is {}, expected a whole number", value));
  return static_cast<int>(value);
}

bool TableReader::flag(std::string_view key) {
  const toml::node* node = need(key);
  if (node == nullptr) return false;
  const auto value = node->value_exact<bool>();
  if (!value) note(key, instead(*node, "true or false"));
  return value.value_or(false);
}

std::vector<std::string> TableReader::texts(std::string_view key) {
  const toml::node* node = need(key);
  if (node == nullptr) return {};
  const toml::array* array = node->as_array();
  if (array == nullptr) return note(key, instead(*node, "a list of texts")), std::vector<std::string>();
  std::vector<std::string> out;
  for (const toml::node& element : *array) {
    const auto value = element.value_exact<std::string>();
    if (!value)
      note(key, "has an element that " + instead(element, "a text"));
    else if (value->empty())
      note(key, "has an empty element");
    else if (std::ranges::find(out, *value) != out.end())
      note(key, fmt::format("names '{}' twice", *value));
    else
      out.push_back(*value);
  }
  return out;
}

std::vector<TableReader> TableReader::tables(std::string_view key) {
  const toml::node* node = need(key);
  if (node == nullptr) return {};
  const toml::array* array = node->as_array();
  if (array == nullptr) return note(key, instead(*node, "a list of tables")), std::vector<TableReader>();
  std::vector<TableReader> out;
  for (std::size_t i = 0; i < array->size(); ++i) {
    const toml::node& element = *array->get(i);
    if (const toml::table* inner = element.as_table())
      out.emplace_back(*inner, *place_, *problems_, fmt::format("{}{}[{}].", prefix_, key, i + 1));
    else
      note(key, "has an element that " + instead(element, "a table"));
  }
  return out;
}

std::optional<TableReader> TableReader::optional_table(std::string_view key) {
  const toml::node* node = get(key);
  if (node == nullptr) return std::nullopt;
  const toml::table* inner = node->as_table();
  if (inner == nullptr) return note(key, instead(*node, "a table")), std::nullopt;
  return TableReader(*inner, *place_, *problems_, fmt::format("{}{}.", prefix_, key));
}

std::optional<TableReader> TableReader::table(std::string_view key) {
  if (table_->get(key) == nullptr) return (void)need(key), std::nullopt;
  return optional_table(key);
}

std::vector<std::string> TableReader::keys() const {
  std::vector<std::string> out;
  for (const auto& [key, node] : *table_) out.emplace_back(key.str());
  return out;
}

int TableReader::line(std::string_view key) const {
  return place_->problem(prefix_ + std::string(key), {}).line;
}

void TableReader::finish() {
  const std::vector<std::string_view> known(asked_.begin(), asked_.end());
  for (const std::string& key : keys()) {
    if (std::ranges::find(asked_, key) != asked_.end()) continue;
    const std::string_view meant = domain::nearest_name(key, known);
    note(key, meant.empty() ? "is not a known key" : fmt::format("is not a known key, nearest: {}", meant));
  }
}

}  // namespace repwright::store
