#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "domain/account.hpp"
#include "domain/gym_class.hpp"
#include "domain/people.hpp"
#include "domain/score.hpp"

/// Somebody leaves and is to be forgotten: what stays of what is kept, the same for every kind of store.
namespace repwright::store {

/// Who goes by what names.
struct Leaver {
  domain::PersonId person;
  std::string name;
  std::set<std::string> accounts;  // the person's own, by name
};

/// Nobody's name or id: stands for whoever is forgotten.
inline constexpr const char* somebody = "somebody";

/// What the trail says of it.
inline constexpr const char* somebody_forgotten = "somebody was forgotten";

/// Who did it, or `somebody` if it was the leaver.
std::string nameless_writer(const std::string& who, const Leaver& leaver);

/// Where the words stand in the text, from `from` on, with no letter or digit before or behind them; npos if
/// nowhere.
std::size_t find_words(std::string_view text, std::string_view words, std::size_t from);

/// The text with the leaver's full name replaced, wherever it stands as words of its own. A name of one word
/// stays: it may well be another word ('Max', 'Rose'), and only who wrote the text can tell.
std::string nameless_text(const std::string& text, const Leaver& leaver);

/// What the trail says: of an account of the leaver that it was somebody's.
std::string nameless_trail(const std::string& what, const Leaver& leaver);

/// Takes the leaver off the lists of the class. Whether they were on any.
bool take_off(domain::GymClass& gym_class, const Leaver& leaver);

/// An id that none of `taken` has: `somebody-1` and so on.
domain::PersonId nameless_id(const std::set<domain::PersonId>& taken);

/// The score sheet as it is to be: every line of the leaver is somebody's, another somebody's in each
/// session, so that a class keeps its sums and nobody puts a history together. The lines that changed, by
/// their places.
std::vector<std::size_t> make_nameless(std::vector<domain::ScoreEntry>& sheet, const Leaver& leaver);

}  // namespace repwright::store
