#pragma once

#include <toml++/toml.h>

#include <initializer_list>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "store/problems.hpp"

namespace repwright::store {

/// Where a row stands, so that a later check can name the line of a field.
struct RowPlace {
  std::string file;
  int line = 0;
  std::string row;
  std::map<std::string, int, std::less<>> field_lines;

  Problem problem(std::string_view field, std::string text) const;
};

struct Bounds {
  double min = 0;
  double max = 1e6;
};

/// Reads the keys of one TOML table and notes what is missing, of the wrong type, out of bounds or unknown.
/// Every getter returns a usable value; whether anything was wrong is in the `Problems`.
class TableReader {
 public:
  /// `prefix` names the table inside its row: "" for the row itself, "muscles." for a table in it.
  TableReader(const toml::table& table, RowPlace& place, Problems& problems, std::string prefix = {});

  std::string text(std::string_view key);
  std::string optional_text(std::string_view key);
  /// One of `allowed`, or empty after a problem was noted.
  std::string choice(std::string_view key, std::initializer_list<std::string_view> allowed);
  double number(std::string_view key, Bounds bounds = {});
  std::optional<double> optional_number(std::string_view key, Bounds bounds = {});
  int whole_number(std::string_view key, Bounds bounds = {});
  bool flag(std::string_view key);
  std::vector<std::string> texts(std::string_view key);
  /// A list of texts as ids of one kind.
  template <class Id>
  std::vector<Id> ids(std::string_view key) {
    std::vector<Id> out;
    for (std::string& text : texts(key)) out.push_back({std::move(text)});
    return out;
  }
  /// The tables of an array, each with the prefix of its place ("home[2].").
  std::vector<TableReader> tables(std::string_view key);
  /// Nothing, after a problem was noted, if the key is not there.
  std::optional<TableReader> table(std::string_view key);
  std::optional<TableReader> optional_table(std::string_view key);

  /// The keys in alphabetical order.
  std::vector<std::string> keys() const;
  int line(std::string_view key) const;
  /// Marks a key as known that somebody else reads.
  void know(std::string_view key) { asked_.emplace_back(key); }
  void note(std::string_view key, std::string text);
  /// Names every key that nobody asked for, with the nearest one that somebody did.
  void finish();

 private:
  const toml::node* get(std::string_view key);
  const toml::node* need(std::string_view key);

  const toml::table* table_;
  RowPlace* place_;
  Problems* problems_;
  std::string prefix_;
  std::vector<std::string> asked_;
};

/// The line of a node, from 1.
int line_of(const toml::node& node);

}  // namespace repwright::store
