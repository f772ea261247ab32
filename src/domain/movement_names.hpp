#pragma once

#include <cstddef>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "domain/catalogue.hpp"
#include "domain/ids.hpp"

/// How a written name is compared with the catalogue's: the one rule for headers, chalk and gym files.
namespace repwright::domain {

/// The written name as it is compared: small letters, hyphens of any kind and runs of blanks as one blank,
/// apostrophes dropped, plurals made singular ("Push–Ups" → "push up") but not shorthand ("kbs", "bs").
std::string normal_name(std::string_view written);

/// The fewest letters to insert, drop, replace or swap with the next one that turn `a` into `b`.
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The candidate that a slip of the pen would explain: the nearest one, if no more than a third of its
/// letters (and at most three) differ. Empty if none is near; the first of equals.
std::string_view nearest_name(std::string_view written, std::span<const std::string_view> candidates);

/// `nearest_name` among the ids of some rows.
template <class Row>
std::string_view nearest_id(std::string_view written, const std::vector<Row>& rows) {
  std::vector<std::string_view> names;
  names.reserve(rows.size());
  for (const Row& row : rows) names.emplace_back(row.id.text);
  return nearest_name(written, names);
}

/// Every id, name and alias of a catalogue. A word that stands for several movements
/// (`Catalogue::ambiguous_words`) is not among them unless it is also somebody's alias.
class MovementNames {
 public:
  explicit MovementNames(const Catalogue& catalogue);

  /// The movement of that name, or null. As written first, then by `normal_name`, then without blanks
  /// ("dead lift" for "deadlift") where that leaves no doubt.
  const MovementId* find(std::string_view written) const;

  /// Normal names and the movement of each, for readers that look for the longest one in a line.
  const std::map<std::string, MovementId, std::less<>>& by_normal_name() const { return normal_; }

 private:
  std::map<std::string, MovementId, std::less<>> written_;
  std::map<std::string, MovementId, std::less<>> normal_;
  std::map<std::string, MovementId, std::less<>> squeezed_;
};

}  // namespace repwright::domain
