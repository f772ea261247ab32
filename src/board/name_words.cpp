#include "board/name_words.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace repwright::board {
namespace {

/// Words before or behind a name that leave the movement what it is.
constexpr std::array<std::string_view, 55> modifiers{
    "tempo",   "pause",       "paused",

    "alt",     "alternating", "unbroken", "ub",     "heavy", "light",  "slow",     "fast",       "easy",
    "hard",    "big",         "quality",  "strict", "good",  "steady", "smooth",   "controlled", "full",
    "deep",    "relay",       "sprint",   "lap",    "laps",  "loop",   "outside",  "inside",     "moderate",
    "perfect", "clean",       "your",     "my",     "the",   "a",      "an",       "more",       "single",
    "arm",     "arms",        "weighted", "rep",    "reps",  "of",     "standing", "medium",     "touch",
    "go",      "crisp",       "nice",     "tough",  "brisk", "erg",    "both"};
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

/// Words of names as they are shortened on a wall.
constexpr std::array<std::pair<std::string_view, std::string_view>, 22> shortened{
    {{"oh", "overhead"},   {"ovhd", "overhead"},  {"pwr", "power"},     {"pow", "power"},
     {"sq", "squat"},      {"sqt", "squat"},      {"sqts", "squats"},   {"cl", "clean"},
     {"cln", "clean"},     {"sn", "snatch"},      {"dead", "deadlift"}, {"deads", "deadlift"},
     {"ext", "extension"}, {"exts", "extension"}, {"lat", "lateral"},   {"thru", "through"},
     {"thrus", "through"}, {"wtd", "weighted"},   {"sgl", "single"},    {"bk", "back"},
     {"fr", "front"},      {"mtn", "mountain"}}};

template <std::size_t N>
bool among(const std::array<std::string_view, N>& list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}

}  // namespace

bool is_modifier(std::string_view word) {
  return among(modifiers, word);
}

bool parts_names(std::string_view word) {
  return among(stops, word);
}

bool is_pace_word(std::string_view word) {
  return among(pace_words, word);
}

bool is_plain_word(std::string_view word) {
  return among(plain_words, word);
}

std::string_view in_full(std::string_view word) {
  const auto* const at =
      std::ranges::find(shortened, word, &std::pair<std::string_view, std::string_view>::first);
  return at == shortened.end() ? std::string_view{} : at->second;
}

bool is_shortened(std::string_view word) {
  return word == "alt" || word == "db" || word == "kb" || word == "bb" || !in_full(word).empty();
}

bool is_double(std::string_view word) {
  return word == "double" || word == "dbl" || word == "dual";
}

Kit kit_of(std::string_view word) {
  if (word == "db" || word == "dbs" || word == "dumbbell" || word == "dumbbells") return Kit::Dumbbell;
  if (word == "kb" || word == "kbs" || word == "kettlebell" || word == "kettlebells") return Kit::Kettlebell;
  if (word == "bb" || word == "bar" || word == "barbell") return Kit::Barbell;
  return Kit::Unsaid;
}

}  // namespace repwright::board
