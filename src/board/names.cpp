#include "board/names.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "domain/movement_names.hpp"

namespace repwright::board {
namespace {

using Entry = std::pair<std::string_view, std::string_view>;

/// Shorthand of the trade that the catalogue leaves out.
constexpr std::array shorthand{Entry{"sit", "sit-up"},
                               Entry{"sits", "sit-up"},
                               Entry{"wallshot", "mb-wall-shot"},
                               Entry{"sprint", "run"},
                               Entry{"kettlebell clean", "kb-clean-press"},
                               Entry{"kb clean", "kb-clean-press"},
                               Entry{"goblet lunge", "db-lunge"},
                               Entry{"bob", "burpee-over-line"}};

/// Words before or behind a name that leave the movement what it is.
constexpr std::array<std::string_view, 54> modifiers{
    "tempo",   "pause",       "paused",

    "alt",     "alternating", "unbroken", "ub",     "heavy", "light",  "slow",     "fast",       "easy",
    "hard",    "big",         "quality",  "strict", "good",  "steady", "smooth",   "controlled", "full",
    "deep",    "relay",       "sprint",   "lap",    "laps",  "loop",   "outside",  "inside",     "moderate",
    "perfect", "clean",       "your",     "my",     "the",   "a",      "an",       "more",       "single",
    "arm",     "arms",        "weighted", "rep",    "reps",  "of",     "standing", "medium",     "touch",
    "go",      "crisp",       "nice",     "tough",  "brisk", "erg"};
constexpr std::array<std::string_view, 54> stops{
    "p1",       "p2",     "p3",        "ft",

    "each",     "per",    "for",       "rest",   "then",  "in",    "or",    "at",   "sync", "synced",
    "together", "split",  "partition", "until",  "with",  "max",   "kg",    "lb",   "lbs",  "score",
    "cap",      "tempo",  "rpe",       "into",   "from",  "every", "while", "as",   "ea",   "on",
    "scale",    "shared", "after",     "before", "total", "amrap", "emom",  "swap", "and",  "e",
    "l",        "scaled", "unless",    "if",     "but",   "w",     "cal",   "cals", "kcal", "calories"};

/// How fast, behind a run or a machine: for the rule of paces.
constexpr std::array<std::string_view, 8> pace_words{"easy",     "talk", "steady", "hard",
                                                     "moderate", "fast", "slow",   "recovery"};

/// Words of the floor that are one letter from a movement's name and never a slip of the pen.
constexpr std::array<std::string_view, 32> plain_words{
    "talk", "test",  "rest",  "best",  "pace",  "team", "teams", "time",  "times", "last", "half",
    "home", "lane",  "lanes", "heat",  "heats", "kids", "hand",  "hands", "head",  "feet", "foot",
    "side", "sides", "part",  "parts", "wide",  "bars", "long",  "short", "coach", "race"};

template <std::size_t N>
bool among(const std::array<std::string_view, N>& list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}

std::string squeezed(std::string_view words) {
  std::string out = domain::normal_name(words);
  std::erase(out, ' ');
  return out;
}

bool is_number(std::string_view word) {
  return word.empty() || word.front() == '.' || (word.front() >= '0' && word.front() <= '9');
}

bool moves_along(const domain::Movement& movement) {
  return movement.category == "run" || movement.category == "ergometer" || movement.category == "carry";
}

}  // namespace

Kit kit_of(std::string_view word) {
  if (word == "db" || word == "dbs" || word == "dumbbell" || word == "dumbbells") return Kit::Dumbbell;
  if (word == "kb" || word == "kbs" || word == "kettlebell" || word == "kettlebells") return Kit::Kettlebell;
  if (word == "bb" || word == "bar" || word == "barbell") return Kit::Barbell;
  return Kit::Unsaid;
}

/// The words of a line from one mark on, each with the mark behind it.
struct Names::Words {
  std::vector<std::string> word;
  std::vector<std::size_t> marks;  // taken once that word is
  std::vector<bool> glued_back;    // hyphen or nothing stands before it

  std::string joined(std::size_t from, std::size_t count) const {
    std::string out;
    for (std::size_t i = from; i < from + count; ++i) {
      if (i > from) out += ' ';
      out += word[i];
    }
    return out;
  }
};

Names::Names(const domain::Catalogue& catalogue, const domain::House& house) : catalogue_(&catalogue) {
  vocabulary_.reserve(1024);
  meanings_.reserve(2048);
  const auto add_words = [&](const std::string& normal) {
    for (std::size_t at = 0; at < normal.size();) {
      const std::size_t blank = std::min(normal.find(' ', at), normal.size());
      vocabulary_.emplace(normal.substr(at, blank - at), true);
      at = blank + 1;
    }
  };
  const auto add = [&](std::string_view name, const Meaning& meaning) {
    std::string normal = domain::normal_name(name);
    add_words(normal);
    std::erase(normal, ' ');
    meanings_.try_emplace(std::move(normal), meaning);
  };
  for (const auto& [word, id] : house.words)
    if (catalogue.find(domain::MovementId{id}) != nullptr) add(word, {{domain::MovementId{id}}, false});
  for (const domain::Movement& movement : catalogue.movements) add(movement.id.text, {{movement.id}, false});
  for (const domain::Movement& movement : catalogue.movements) {
    add(movement.name, {{movement.id}, false});
    for (const std::string& alias : movement.aliases) add(alias, {{movement.id}, false});
  }
  for (const auto& [word, ids] : catalogue.ambiguous_words) {
    Meaning meaning{ids, ids.size() > 1};
    const bool stepped = word.starts_with("down-up") || word.starts_with("up-down");
    if (stepped && ids.size() > 1) meaning = {{ids[1], ids[0]}, true};
    add(word, meaning);
  }
  for (const auto& [word, id] : shorthand)
    if (catalogue.find(domain::MovementId{std::string(id)}) != nullptr)
      add(word, {{domain::MovementId{std::string(id)}}, false});
  for (const auto& [word, seen] : vocabulary_) {
    if (by_length_.size() <= word.size()) by_length_.resize(word.size() + 1);
    by_length_[word.size()].push_back(word);
  }
  for (auto& words : by_length_) std::ranges::sort(words);
}

const Meaning* Names::exact(std::string_view words) const {
  const auto at = meanings_.find(squeezed(words));
  return at == meanings_.end() ? nullptr : &at->second;
}

bool Names::knows(std::string_view word) const {
  return vocabulary_.contains(domain::normal_name(word));
}

std::optional<Named> Names::find(const Cursor& cursor) const {
  Words words;
  std::size_t ahead = 0;
  while (words.word.size() < 9) {
    const bool hyphen = cursor.at_symbol('-', ahead) && cursor.glued(ahead) && cursor.glued(ahead + 1);
    const std::size_t at = ahead + (hyphen && !words.word.empty() ? 1 : 0);
    const bool number_inside = cursor.at_number(at) && !words.word.empty() && cursor.at_word(at + 1);
    if (!cursor.at_word(at) && !cursor.at_symbol('&', at) && !number_inside) break;
    words.word.push_back(cursor.peek(at).text);
    words.glued_back.push_back(hyphen);
    ahead = at + 1;
    words.marks.push_back(ahead);
  }
  if (words.word.empty() || words.word.front() == "&") return std::nullopt;
  if (auto named = match(words)) return named;
  Words guessed = words;
  std::optional<std::pair<std::string, std::string>> slip;
  for (std::string& word : guessed.word) {
    if (std::string known = corrected(word); !known.empty()) {
      slip = {word, known};
      word = std::move(known);
    }
  }
  if (!slip) return joined_slip(words);
  auto named = match(guessed);
  if (named) named->slip = slip;
  return named;
}

/// The longest name that begins with that word: what it means and how many words it takes; null and 0 if
/// none.
std::pair<const Meaning*, std::size_t> Names::longest(const Words& words, std::size_t start) const {
  for (std::size_t length = std::min<std::size_t>(6, words.word.size() - start); length > 0; --length) {
    const auto at = meanings_.find(squeezed(words.joined(start, length)));
    if (at != meanings_.end()) return {&at->second, length};
  }
  return {nullptr, 0};
}

/// Whether the word is one of the movement's own, in its name or an alias.
bool own_word(const domain::Movement* movement, std::string_view word) {
  const std::string normal = domain::normal_name(word);
  if (movement == nullptr || normal.empty()) return false;
  const auto has = [&](const std::string& name) {
    return (" " + domain::normal_name(name) + " ").find(" " + normal + " ") != std::string::npos;
  };
  return has(movement->name) || std::ranges::any_of(movement->aliases, has);
}

std::optional<Named> Names::match(const Words& words) const {
  Named named;
  for (std::size_t start = 0; start < words.word.size(); ++start) {
    const auto [meaning, length] = longest(words, start);
    const std::string& word = words.word[start];
    if (meaning != nullptr) {
      Named whole = named;
      whole.meaning = *meaning;
      whole.written = words.joined(start, length);
      const std::size_t behind = words_around(words, start + length, whole);
      auto found = words_behind(words, behind, length, std::move(whole));
      // `single arm row`: here the word is no skip with the rope.
      if (found || word != "single") return found;
    }
    if (kit_of(word) != Kit::Unsaid) {
      named.kit = kit_of(word);
    } else if (!among(modifiers, word)) {
      return std::nullopt;
    }
    named.alternating |= word.starts_with("alt");
    named.strict |= word == "strict";
  }
  return std::nullopt;
}

/// Kit and modifiers behind the name; returns the first word that is neither.
std::size_t Names::words_around(const Words& words, std::size_t at, Named& named) const {
  const domain::Movement* first = movement(named.meaning.movements.front());
  named.class_word = named.written == "pull" || named.written == "pulls" || named.written == "push";
  named.alternating |= named.written.starts_with("alt");
  const bool over_something = named.written.ends_with("over");
  for (; at < words.word.size() && !among(stops, words.word[at]); ++at) {
    const std::string& word = words.word[at];
    if (is_number(word) || word == "&") break;
    if (first != nullptr && moves_along(*first) && among(pace_words, word)) break;
    const bool own = own_word(first, word);
    const bool kit = kit_of(word) != Kit::Unsaid;
    if (kit && !own) named.kit = kit_of(word);
    const bool over = word == "ovr" || word == "over";
    const bool kit_place = over_something && (word == "rower" || word == "box" || word == "line");
    if (!among(modifiers, word) && !kit && !own && !over && !kit_place) break;
    named.alternating |= word.starts_with("alt");
    if (word == "ovr") named.slip = {"ovr", "over"};
  }
  return at;
}

/// The name as it ends before `at`, with words to people behind it where the name is sure; nothing where the
/// next word makes it another name, which no catalogue has.
std::optional<Named> Names::words_behind(const Words& words, std::size_t at, std::size_t length,
                                         Named named) const {
  const auto ends = [&](std::size_t i) {
    return i >= words.word.size() || among(stops, words.word[i]) || words.word[i] == "&" ||
           is_number(words.word[i]);
  };
  if (!ends(at)) {
    const domain::Movement* first = movement(named.meaning.movements.front());
    const bool along = first != nullptr && moves_along(*first);
    const bool name_like = vocabulary_.contains(domain::normal_name(words.word[at]));
    if (words.glued_back[at]) return std::nullopt;
    if (!along && (length == 1 || named.meaning.ambiguous || name_like)) return std::nullopt;
    if (along && named.meaning.ambiguous && name_like) return std::nullopt;
    for (; !ends(at) && !among(pace_words, words.word[at]); ++at) {
      if (!named.trailing.empty()) named.trailing += ' ';
      named.trailing += words.word[at];
    }
  }
  named.marks = words.marks[at - 1];
  return named;
}

/// A slip in a short half of a hyphenated name: `push-usp`.
std::optional<Named> Names::joined_slip(const Words& words) const {
  std::size_t glued = 1;
  while (glued < words.word.size() && words.glued_back[glued]) ++glued;
  if (glued < 2) return std::nullopt;
  const std::string written = words.joined(0, glued);
  const std::string key = squeezed(written);
  if (key.size() < 5) return std::nullopt;
  const std::pair<const std::string, Meaning>* found = nullptr;
  for (const auto& entry : meanings_) {
    if (entry.first.size() + 1 < key.size() || entry.first.size() > key.size() + 1 ||
        entry.first.front() != key.front())
      continue;
    if (domain::edit_distance(key, entry.first) != 1) continue;
    if (found != nullptr && found->second.movements != entry.second.movements) return std::nullopt;
    found = &entry;
  }
  if (found == nullptr) return std::nullopt;
  Named named;
  named.meaning = found->second;
  named.written = found->first;
  named.marks = words.marks[glued - 1];
  const domain::Movement* read = movement(named.meaning.movements.front());
  named.slip = {written, read == nullptr ? found->first : read->name};
  return named;
}

/// The one known word that a single slip explains, or empty.
std::string Names::corrected(const std::string& word) const {
  if (among(plain_words, word)) return {};
  if (domain::normal_name(word).size() < 4 || vocabulary_.contains(domain::normal_name(word))) return {};
  if (among(modifiers, word) || among(stops, word) || kit_of(word) != Kit::Unsaid) return {};
  const std::string normal = domain::normal_name(word);
  std::string found;
  for (std::size_t length = normal.size() - 1; length <= normal.size() + 1; ++length) {
    if (length >= by_length_.size()) break;
    for (const std::string& known : by_length_[length]) {
      const bool ends = known.front() == normal.front() || known.back() == normal.back();
      if (known.size() < 3 || !ends || domain::edit_distance(normal, known) != 1) continue;
      if (!found.empty()) return {};
      found = known;
    }
  }
  return found;
}

std::vector<std::string> Names::nearest(std::string_view words, std::size_t count) const {
  const std::string normal = domain::normal_name(words);
  std::vector<std::pair<double, std::string>> ranked;
  for (const domain::Movement& movement : catalogue_->movements) {
    double best = 1;
    const auto weigh = [&](std::string_view name) {
      const std::string other = domain::normal_name(name);
      const double longer =
          static_cast<double>(std::max<std::size_t>(1, std::max(normal.size(), other.size())));
      double distance = static_cast<double>(domain::edit_distance(normal, other)) / longer;
      const std::size_t blank = normal.rfind(' ');
      const std::string tail = blank == std::string::npos ? normal : normal.substr(blank + 1);
      if (tail.size() > 2 && (" " + other).ends_with(" " + tail)) distance *= 0.6;
      best = std::min(best, distance);
    };
    weigh(movement.name);
    for (const std::string& alias : movement.aliases) weigh(alias);
    if (best <= 0.6)
      ranked.emplace_back(best, movement.aliases.empty() ? movement.name : movement.aliases.front());
  }
  std::ranges::sort(ranked);
  std::vector<std::string> names;
  for (const auto& [distance, name] : ranked) {
    if (names.size() == count) break;
    names.push_back(name);
  }
  return names;
}

}  // namespace repwright::board
