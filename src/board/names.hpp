#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "board/cursor.hpp"
#include "board/name_words.hpp"
#include "domain/catalogue.hpp"
#include "domain/house.hpp"

namespace repwright::board {

/// What a name stands for: one movement, or several of which the first is the likeliest.
struct Meaning {
  std::vector<domain::MovementId> movements;
  bool ambiguous = false;
};

/// A name found in the text.
struct Named {
  Meaning meaning;
  std::string written;    // the words that matched, as the catalogue compares them
  std::size_t marks = 0;  // how many marks the name takes, words around it included
  Kit kit = Kit::Unsaid;
  bool alternating = false;
  bool strict = false;             // 'strict' stood before a name that does not say so itself
  bool doubled = false;            // 'double': one in each hand
  bool class_word = false;         // 'pull', 'push' alone: each person's own version
  std::vector<std::string> extra;  // words that belong to the name but change nothing: 'heavy', 'big'
  std::string trailing;            // words behind a sure name that say something to people only
  std::optional<std::pair<std::string, std::string>> slip;  // written, read as
};

/// Whether the word is one of the movement's own, in its name or an alias.
bool own_word(const domain::Movement* movement, std::string_view word);

/// How many marks `1-arm`, `1 arm` or `2-hand` takes here, or 0: a number that begins a name.
std::size_t limb_marks(const Cursor& cursor);

/// Finds the catalogue's names in a line of chalk: the longest first, spelling variety forgiven.
class Names {
 public:
  Names(const domain::Catalogue& catalogue, const domain::House& house);
  Names(const Names&) = delete;  // its lists point into its sets
  Names& operator=(const Names&) = delete;
  Names(Names&&) = default;
  Names& operator=(Names&&) = default;
  ~Names() = default;

  const domain::Catalogue& catalogue() const { return *catalogue_; }
  /// The name that begins here, or nothing.
  std::optional<Named> find(const Cursor& cursor) const;
  /// What those words mean exactly, or null.
  const Meaning* exact(std::string_view squeezed) const;
  /// At most `count` names of movements, the nearest to those words first; of movements that are counted in
  /// `unit`, where that is said and one of them is near.
  std::vector<std::string> nearest(std::string_view words, std::size_t count,
                                   std::optional<domain::Unit> unit = {}) const;
  /// Whether that single word is part of a name.
  bool knows(std::string_view word) const;
  const domain::Movement* movement(const domain::MovementId& id) const { return catalogue_->find(id); }

 private:
  struct Words;
  std::pair<const Meaning*, std::size_t> longest(const Words& words, std::size_t start) const;
  std::optional<Named> match(const Words& words) const;
  std::size_t words_around(const Words& words, std::size_t at, Named& named) const;
  std::optional<Named> words_behind(const Words& words, std::size_t at, std::size_t length,
                                    Named named) const;
  std::optional<Named> joined_slip(const Words& words) const;
  std::string corrected(const std::string& word) const;

  void add_words(std::string_view normal);

  struct Hash : std::hash<std::string_view> {
    using is_transparent = void;  // NOLINT(readability-identifier-naming): the library looks for it
  };
  const domain::Catalogue* catalogue_;
  std::vector<Meaning> meanings_;
  std::unordered_map<std::string, std::size_t, Hash, std::equal_to<>> by_name_;  // normal, without blanks
  std::unordered_set<std::string, Hash, std::equal_to<>> vocabulary_;            // single words of names
  std::vector<std::vector<std::string_view>> by_length_;                         // the same, by their length
};

}  // namespace repwright::board
