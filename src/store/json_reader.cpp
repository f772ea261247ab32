#include "store/json_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "domain/movement_names.hpp"

namespace repwright::store {
namespace {

using nlohmann::json;

std::string_view kind_of(const json& node) {
  if (node.is_null()) return "null";
  if (node.is_boolean()) return "true or false";
  if (node.is_number()) return "a number";
  if (node.is_string()) return "a text";
  return node.is_array() ? "a list" : "an object";
}

std::string instead(const json& node, std::string_view expected) {
  return fmt::format("is {}, expected {}", kind_of(node), expected);
}

int line_at(std::string_view bytes, std::size_t at) {
  return static_cast<int>(std::ranges::count(bytes.substr(0, std::min(at, bytes.size())), '\n')) + 1;
}

/// A key in a JSON pointer (RFC 6901).
std::string escaped(std::string_view key) {
  std::string out;
  for (const char c : key) out += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
  return out;
}

}  // namespace

std::optional<json> parse_json(std::string_view bytes, JsonFile& file) {
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  std::vector<std::set<std::string>> open;
  const auto note_twins = [&](int, json::parse_event_t event, json& parsed) {
    if (event == json::parse_event_t::object_start) open.emplace_back();
    if (event == json::parse_event_t::object_end) open.pop_back();
    if (event == json::parse_event_t::key && !open.back().insert(parsed.get<std::string>()).second)
      file.problems.add({file.file, 0, "", parsed.get<std::string>(), "stands twice in the same object"});
    return true;
  };
  try {
    json parsed = json::parse(bytes.begin(), bytes.end(), note_twins);
    if (parsed.is_object()) return parsed;
    file.problems.add({file.file, 1, "", "", instead(parsed, "an object: { ... }")});
  } catch (const json::parse_error& error) {
    std::string_view said = error.what();
    if (const std::size_t colon = said.find(": "); colon != std::string_view::npos)
      said = said.substr(colon + 2);
    file.problems.add({file.file, line_at(bytes, error.byte == 0 ? 0 : error.byte - 1), "", "",
                       fmt::format("not readable as JSON: {}", said)});
  } catch (const json::exception& error) {
    file.problems.add({file.file, 0, "", "", fmt::format("not readable as JSON: {}", error.what())});
  }
  return std::nullopt;
}

JsonReader::JsonReader(const json& node, JsonFile& file, std::string pointer)
    : node_(&node), file_(&file), pointer_(std::move(pointer)) {}

void JsonReader::wrong(std::string_view key, std::string text) {
  file_->problems.add({file_->file, 0, "", pointer_ + "/" + escaped(key), std::move(text)});
}

const json* JsonReader::get(std::string_view key) {
  asked_.emplace_back(key);
  const auto at = node_->find(std::string(key));
  return at == node_->end() || at->is_null() ? nullptr : &*at;
}

const json* JsonReader::need(std::string_view key) {
  const json* node = get(key);
  if (node == nullptr) wrong(key, "is missing");
  return node;
}

bool JsonReader::has(std::string_view key) {
  return get(key) != nullptr;
}

std::string JsonReader::text_or(std::string_view key, std::string_view otherwise) {
  const json* node = get(key);
  if (node == nullptr) return std::string(otherwise);
  if (!node->is_string()) return wrong(key, instead(*node, "a text")), std::string(otherwise);
  return node->get<std::string>();
}

std::string JsonReader::text(std::string_view key) {
  if (need(key) == nullptr) return {};
  std::string value = text_or(key, "");
  if (value.empty() && get(key)->is_string()) wrong(key, "is empty");
  return value;
}

std::optional<double> JsonReader::optional_number(std::string_view key, double min, double max) {
  const json* node = get(key);
  if (node == nullptr) return std::nullopt;
  if (!node->is_number()) return wrong(key, instead(*node, "a number")), std::nullopt;
  const auto value = node->get<double>();
  if (value >= min && value <= max) return value;
  wrong(key, fmt::format("is {}, expected {} to {}", value, min, max));
  return std::nullopt;
}

double JsonReader::number(std::string_view key, double min, double max) {
  if (need(key) == nullptr) return min;
  return optional_number(key, min, max).value_or(min);
}

std::optional<int> JsonReader::optional_whole_number(std::string_view key, int min, int max) {
  const auto value = optional_number(key, min, max);
  if (!value) return std::nullopt;
  if (std::floor(*value) != *value) wrong(key, fmt::format("is {}, expected a whole number", *value));
  return static_cast<int>(*value);
}

int JsonReader::whole_number(std::string_view key, int min, int max) {
  if (need(key) == nullptr) return min;
  return optional_whole_number(key, min, max).value_or(min);
}

bool JsonReader::flag_or(std::string_view key, bool otherwise) {
  const json* node = get(key);
  if (node == nullptr) return otherwise;
  if (!node->is_boolean()) return wrong(key, instead(*node, "true or false")), otherwise;
  return node->get<bool>();
}

std::size_t JsonReader::choice(std::string_view key, std::initializer_list<std::string_view> allowed) {
  const std::string value = text_or(key, *allowed.begin());
  const auto at = std::ranges::find(allowed, std::string_view(value));
  if (at != allowed.end()) return static_cast<std::size_t>(at - allowed.begin());
  wrong(key, fmt::format("is '{}', expected one of {}", value, fmt::join(allowed, ", ")));
  return 0;
}

std::vector<std::string> JsonReader::texts(std::string_view key) {
  const json* node = get(key);
  if (node == nullptr) return {};
  if (!node->is_array()) return wrong(key, instead(*node, "a list of texts")), std::vector<std::string>();
  std::vector<std::string> out;
  for (const json& element : *node) {
    if (element.is_string())
      out.push_back(element.get<std::string>());
    else
      wrong(key, "has an element that " + instead(element, "a text"));
  }
  return out;
}

std::vector<JsonReader> JsonReader::objects(std::string_view key) {
  const json* node = get(key);
  if (node == nullptr) return {};
  if (!node->is_array()) return wrong(key, instead(*node, "a list of objects")), std::vector<JsonReader>();
  std::vector<JsonReader> out;
  for (std::size_t i = 0; i < node->size(); ++i) {
    const json& element = (*node)[i];
    if (element.is_object())
      out.emplace_back(element, *file_, fmt::format("{}/{}/{}", pointer_, escaped(key), i));
    else
      wrong(key, "has an element that " + instead(element, "an object"));
  }
  return out;
}

std::optional<JsonReader> JsonReader::optional_object(std::string_view key) {
  const json* node = get(key);
  if (node == nullptr) return std::nullopt;
  if (!node->is_object()) return wrong(key, instead(*node, "an object")), std::nullopt;
  return JsonReader(*node, *file_, pointer_ + "/" + escaped(key));
}

std::vector<std::string> JsonReader::keys() const {
  std::vector<std::string> out;
  for (const auto& [key, node] : node_->items()) out.push_back(key);
  return out;
}

void JsonReader::finish() {
  const std::vector<std::string_view> known(asked_.begin(), asked_.end());
  for (const std::string& key : keys()) {
    if (std::ranges::find(asked_, key) != asked_.end()) continue;
    const std::string_view meant = domain::nearest_name(key, known);
    const std::string hint = meant.empty() ? std::string() : fmt::format(" (nearest: {})", meant);
    file_->notes.push_back(
        fmt::format("{}: {}/{} is left out: not a known key{}", file_->file, pointer_, escaped(key), hint));
  }
}

domain::EquipmentId read_equipment(JsonReader& from, std::string_view key,
                                   const domain::Catalogue& catalogue) {
  domain::EquipmentId id{from.text(key)};
  if (id.empty() || catalogue.find(id) != nullptr) return id;
  const std::string_view meant = domain::nearest_id(id.text, catalogue.equipment);
  from.wrong(key, meant.empty() ? fmt::format("no equipment is called '{}'", id.text)
                                : fmt::format("no equipment is called '{}', nearest: {}", id.text, meant));
  return id;
}

std::string write_json(const nlohmann::ordered_json& json) {
  return json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::store
