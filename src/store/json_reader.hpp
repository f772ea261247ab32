#pragma once

#include <initializer_list>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "domain/catalogue.hpp"
#include "store/problems.hpp"

namespace repwright::store {

/// A JSON file being read: what is wrong with it and what was left out.
struct JsonFile {
  std::string file;
  Problems problems;
  std::vector<std::string> notes;
};

/// The parsed text, or nothing after the place of the mistake was noted (also a key that stands twice in one
/// object). Any bytes are fine.
std::optional<nlohmann::json> parse_json(std::string_view bytes, JsonFile& file);

/// Reads the keys of one object. A wrong type or value is a problem, named by JSON pointer; a key that nobody
/// asks for becomes a note. Every getter returns a usable value.
class JsonReader {
 public:
  JsonReader(const nlohmann::json& node, JsonFile& file, std::string pointer = {});

  bool has(std::string_view key);
  std::string text(std::string_view key);
  std::string text_or(std::string_view key, std::string_view otherwise);
  std::optional<double> optional_number(std::string_view key, double min, double max);
  double number(std::string_view key, double min, double max);
  int whole_number(std::string_view key, int min, int max);
  std::optional<int> optional_whole_number(std::string_view key, int min, int max);
  bool flag_or(std::string_view key, bool otherwise);
  /// One of `allowed`; the first of them if the key is not there.
  std::size_t choice(std::string_view key, std::initializer_list<std::string_view> allowed);
  /// Empty if the key is not there, for this and the next.
  std::vector<std::string> texts(std::string_view key);
  std::vector<JsonReader> objects(std::string_view key);
  std::optional<JsonReader> optional_object(std::string_view key);
  std::vector<std::string> keys() const;

  void wrong(std::string_view key, std::string text);
  /// Notes every key that nobody asked for.
  void finish();

 private:
  const nlohmann::json* get(std::string_view key);
  const nlohmann::json* need(std::string_view key);

  const nlohmann::json* node_;
  JsonFile* file_;
  std::string pointer_;
  std::vector<std::string> asked_;
};

/// The kit of that id; noted as a problem of `key` if the catalogue has none.
domain::EquipmentId read_equipment(JsonReader& from, std::string_view key,
                                   const domain::Catalogue& catalogue);

/// Indented by two, a line feed at the end; bytes that are not UTF-8 become the replacement character.
std::string write_json(const nlohmann::ordered_json& json);

}  // namespace repwright::store
