#include "board/names.hpp"

#include <algorithm>
#include <array>
#include <ranges>
#include <tuple>
#include <utility>

#include "board/name_words.hpp"
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

std::string squeezed(std::string_view words) {
  std::string out = domain::normal_name(words);
  std::erase(out, ' ');
  return out;
}

bool is_number(std::string_view word) {
  return word.empty() || word.front() == '.' || (word.front() >= '0' && word.front() <= '9');
}

/// Whether a pair of what the movement is done with can be held, one in each hand.
bool is_bell(const domain::Movement* movement) {
  return movement != nullptr && (movement->category == "dumbbell" || movement->category == "kettlebell");
}

bool moves_along(const domain::Movement& movement) {
  return movement.category == "run" || movement.category == "ergometer" || movement.category == "carry";
}

/// How far the words are from the nearest name of the movement: the share of letters to change, less where
/// the last word is the name's own.
double distance_of(const std::string& normal, const domain::Movement& movement) {
  const std::size_t blank = normal.rfind(' ');
  const std::string tail = blank == std::string::npos ? normal : normal.substr(blank + 1);
  double best = 1;
  const auto weigh = [&](std::string_view name) {
    const std::string other = domain::normal_name(name);
    const double longer =
        static_cast<double>(std::max<std::size_t>(1, std::max(normal.size(), other.size())));
    double distance = static_cast<double>(domain::edit_distance(normal, other)) / longer;
    if (tail.size() > 2 && (" " + other).ends_with(" " + tail)) distance *= 0.6;
    best = std::min(best, distance);
  };
  weigh(movement.name);
  for (const std::string& alias : movement.aliases) weigh(alias);
  return best;
}

}  // namespace

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
  /// Shortened words in full, and whether there were any.
  bool spell_out() {
    bool any = false;
    for (std::string& written : word)
      if (const std::string_view full = in_full(written); !full.empty()) {
        written = full;
        any = true;
      }
    return any;
  }
};

Names::Names(const domain::Catalogue& catalogue, const domain::House& house) : catalogue_(&catalogue) {
  vocabulary_.reserve(1024);
  by_name_.reserve(4096);
  meanings_.reserve(house.words.size() + catalogue.movements.size() + catalogue.ambiguous_words.size() +
                    shorthand.size());
  const auto keep = [&](std::vector<domain::MovementId> movements, bool ambiguous) {
    meanings_.push_back({.movements = std::move(movements), .ambiguous = ambiguous});
    return meanings_.size() - 1;
  };
  const auto add = [&](std::string_view name, std::size_t meaning) {
    std::string normal = domain::normal_name(name);
    add_words(normal);
    std::erase(normal, ' ');
    by_name_.try_emplace(std::move(normal), meaning);
  };
  const auto add_known = [&](std::string_view name, const domain::MovementId& id) {
    if (catalogue.find(id) != nullptr) add(name, keep({id}, false));
  };
  for (const auto& [word, id] : house.words) add_known(word, domain::MovementId{id});
  const std::size_t first = meanings_.size();
  for (const domain::Movement& movement : catalogue.movements)
    add(movement.id.text, keep({movement.id}, false));
  for (std::size_t i = 0; i < catalogue.movements.size(); ++i) {
    add(catalogue.movements[i].name, first + i);
    for (const std::string& alias : catalogue.movements[i].aliases) add(alias, first + i);
  }
  for (const auto& [word, ids] : catalogue.ambiguous_words) {
    const bool stepped = word.starts_with("down-up") || word.starts_with("up-down");
    const std::size_t meaning = keep(ids, ids.size() > 1);
    if (stepped && ids.size() > 1) meanings_[meaning].movements = {ids[1], ids[0]};
    add(word, meaning);
  }
  for (const auto& [word, id] : shorthand) add_known(word, domain::MovementId{std::string(id)});
}

/// Each word of a normal name, once.
void Names::add_words(std::string_view normal) {
  for (std::size_t at = 0; at < normal.size();) {
    const std::size_t blank = std::min(normal.find(' ', at), normal.size());
    const std::string_view word = normal.substr(at, blank - at);
    at = blank + 1;
    if (vocabulary_.contains(word)) continue;
    const std::string& kept = *vocabulary_.emplace(word).first;
    if (by_length_.size() <= word.size()) by_length_.resize(word.size() + 1);
    by_length_[word.size()].push_back(kept);
  }
}

const Meaning* Names::exact(std::string_view words) const {
  const auto at = by_name_.find(squeezed(words));
  return at == by_name_.end() ? nullptr : &meanings_[at->second];
}

bool Names::knows(std::string_view word) const {
  return vocabulary_.contains(domain::normal_name(word));
}

std::size_t limb_marks(const Cursor& cursor) {
  if (!cursor.at_number() || (cursor.peek().text != "1" && cursor.peek().text != "2")) return 0;
  const std::size_t hyphen = cursor.at_symbol('-', 1) && cursor.glued(1) && cursor.glued(2) ? 1 : 0;
  const bool limb =
      cursor.at_any({"arm", "arms", "armed", "hand", "hands", "handed", "leg", "legs", "legged"}, 1 + hyphen);
  return limb ? 2 + hyphen : 0;
}

std::optional<Named> Names::find(const Cursor& cursor) const {
  Words words;
  std::size_t ahead = limb_marks(cursor);
  const auto pass_dot = [&] {  // `alt. DB snatch`
    if (cursor.at_symbol('.', ahead) && cursor.glued(ahead) && cursor.at_word(ahead + 1) &&
        !cursor.glued(ahead + 1) && is_shortened(words.word.back()))
      ++ahead;
  };
  if (ahead > 0) {  // `1-arm` is `single arm`, `2-hand` is how it is done anyway
    const std::string& limb = cursor.peek(ahead - 1).text;
    words.word = {cursor.peek().text == "1" ? "single" : "both", limb.starts_with("leg")     ? "leg"
                                                                 : cursor.peek().text == "1" ? "arm"
                                                                                             : "arms"};
    words.glued_back = {false, false};
    words.marks = {ahead, ahead};
  }
  while (words.word.size() < 9) {
    const bool hyphen = cursor.at_symbol('-', ahead) && cursor.glued(ahead) && cursor.glued(ahead + 1);
    const std::size_t at = ahead + (hyphen && !words.word.empty() ? 1 : 0);
    const bool number_inside = cursor.at_number(at) && !words.word.empty() && cursor.at_word(at + 1);
    if (!cursor.at_word(at) && !cursor.at_symbol('&', at) && !number_inside) break;
    words.word.push_back(cursor.peek(at).text);
    words.glued_back.push_back(hyphen);
    ahead = at + 1;
    words.marks.push_back(ahead);
    pass_dot();
  }
  if (words.word.empty() || words.word.front() == "&") return std::nullopt;
  if (auto named = match(words)) return named;
  if (words.spell_out())
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
    const std::string name = squeezed(words.joined(start, length));
    auto at = by_name_.find(name);
    if (const std::size_t sign = name.find('&'); at == by_name_.end() && sign != std::string::npos)
      at = by_name_.find(std::string(name).replace(sign, 1, "and"));
    if (at != by_name_.end()) return {&meanings_[at->second], length};
  }
  return {nullptr, 0};
}

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
      const bool bells = named.kit == Kit::Dumbbell || named.kit == Kit::Kettlebell ||
                         std::ranges::any_of(meaning->movements, [&](const domain::MovementId& id) {
                           return is_bell(movement(id));
                         });
      if (named.doubled && !bells) return std::nullopt;
      whole.doubled |= bells && is_double(word);
      const std::size_t behind = words_around(words, start + length, whole);
      auto found = words_behind(words, behind, length, std::move(whole));
      // `single arm row`: here the word is no skip with the rope.
      if (found || word != "single") return found;
    }
    if (kit_of(word) != Kit::Unsaid) {
      named.kit = kit_of(word);
    } else if (!is_modifier(word) && !is_double(word)) {
      return std::nullopt;
    }
    named.alternating |= word.starts_with("alt");
    named.strict |= word == "strict";
    named.doubled |= is_double(word);
  }
  return std::nullopt;
}

/// Kit and modifiers behind the name; returns the first word that is neither.
std::size_t Names::words_around(const Words& words, std::size_t at, Named& named) const {
  const domain::Movement* first = movement(named.meaning.movements.front());
  named.class_word = named.written == "pull" || named.written == "pulls" || named.written == "push";
  named.alternating |= named.written.starts_with("alt");
  const bool over_something = named.written.ends_with("over");
  for (; at < words.word.size() && !parts_names(words.word[at]); ++at) {
    const std::string& word = words.word[at];
    if (is_number(word) || word == "&") break;
    if (first != nullptr && moves_along(*first) && is_pace_word(word)) break;
    const bool own = own_word(first, word);
    const bool kit = kit_of(word) != Kit::Unsaid;
    if (kit && !own) named.kit = kit_of(word);
    const bool over = word == "ovr" || word == "over";
    const bool kit_place = over_something && (word == "rower" || word == "box" || word == "line");
    if (!is_modifier(word) && !kit && !own && !over && !kit_place) break;
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
    return i >= words.word.size() || parts_names(words.word[i]) || words.word[i] == "&" ||
           is_number(words.word[i]);
  };
  if (!ends(at)) {
    const domain::Movement* first = movement(named.meaning.movements.front());
    const bool along = first != nullptr && moves_along(*first);
    const bool name_like = vocabulary_.contains(domain::normal_name(words.word[at]));
    if (words.glued_back[at]) return std::nullopt;
    if (!along && (length == 1 || named.meaning.ambiguous || name_like)) return std::nullopt;
    if (along && named.meaning.ambiguous && name_like) return std::nullopt;
    for (; !ends(at) && !is_pace_word(words.word[at]); ++at) {
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
  const std::pair<const std::string, std::size_t>* found = nullptr;
  for (const auto& entry : by_name_) {
    if (entry.first.size() + 1 < key.size() || entry.first.size() > key.size() + 1 ||
        entry.first.front() != key.front())
      continue;
    if (domain::edit_distance(key, entry.first) != 1) continue;
    if (found != nullptr && meanings_[found->second].movements != meanings_[entry.second].movements)
      return std::nullopt;
    found = &entry;
  }
  if (found == nullptr) return std::nullopt;
  Named named;
  named.meaning = meanings_[found->second];
  named.written = found->first;
  named.marks = words.marks[glued - 1];
  const domain::Movement* read = movement(named.meaning.movements.front());
  named.slip = {written, read == nullptr ? found->first : read->name};
  return named;
}

/// `burpess`: one slip from the plural, whose singular is two away.
bool slip_of_plural(const std::string& word, std::string_view known) {
  return word.ends_with("ss") && domain::edit_distance(word, std::string(known) + "s") == 1;
}

/// The one known word that a single slip explains, or empty.
std::string Names::corrected(const std::string& word) const {
  if (is_plain_word(word)) return {};
  if (domain::normal_name(word).size() < 4 || vocabulary_.contains(domain::normal_name(word))) return {};
  if (is_modifier(word) || parts_names(word) || kit_of(word) != Kit::Unsaid) return {};
  const std::string normal = domain::normal_name(word);
  std::string found;
  for (std::size_t length = normal.size() - 1; length <= normal.size() + 1; ++length) {
    if (length >= by_length_.size()) break;
    for (const std::string_view known : by_length_[length]) {
      const bool ends = known.front() == normal.front() || known.back() == normal.back();
      const bool slip = domain::edit_distance(normal, known) == 1 || slip_of_plural(word, known);
      if (known.size() < 3 || !ends || !slip) continue;
      if (!found.empty()) return {};
      found = known;
    }
  }
  return found;
}

std::vector<std::string> Names::nearest(std::string_view words, std::size_t count,
                                        std::optional<domain::Unit> unit) const {
  struct Near {
    double distance = 0;
    std::string name;
    bool fits = false;
  };
  constexpr double farthest = 0.6;
  const std::string normal = domain::normal_name(words);
  std::vector<Near> ranked;
  for (const domain::Movement& movement : catalogue_->movements) {
    const bool fits = !unit || movement.pace.contains(*unit);
    if (const double distance = distance_of(normal, movement); distance <= farthest)
      ranked.push_back({distance, movement.aliases.empty() ? movement.name : movement.aliases.front(), fits});
  }
  if (std::ranges::any_of(ranked, &Near::fits))
    std::erase_if(ranked, [](const Near& near) { return !near.fits; });
  std::ranges::sort(ranked, {}, [](const Near& near) { return std::tie(near.distance, near.name); });
  std::vector<std::string> names;
  for (const Near& near : ranked | std::views::take(count)) names.push_back(near.name);
  return names;
}

}  // namespace repwright::board
