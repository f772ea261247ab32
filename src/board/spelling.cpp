#include "board/spelling.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <unordered_map>

#include "domain/movement_names.hpp"

namespace repwright::board {
namespace {

constexpr std::array<std::string_view, 40> trade_words{
    "amrap",    "rounds",   "round",    "minutes",   "minute",     "seconds",      "every",     "partner",
    "partners", "teams",    "stations", "station",   "finisher",   "strength",     "optional",  "superset",
    "between",  "distance", "relay",    "waterfall", "accumulate", "ladder",       "chipper",   "score",
    "tempo",    "heats",    "lanes",    "intent",    "pairs",      "remaining",    "unbroken",  "together",
    "warmup",   "cooldown", "cashout",  "circuit",   "extra",      "conditioning", "intervals", "skill"};

/// Words one letter from a trade word that are no slips.
constexpr std::array<std::string_view, 36> own_words{
    "pounds", "sounds", "bounds", "grounds",  "found",    "founds", "sound",   "bound",   "pound",
    "ground", "wound",  "delay",  "heat",     "beats",    "seats",  "meats",   "planes",  "lines",
    "lands",  "hairs",  "stairs", "chairs",   "pair",     "team",   "lane",    "store",   "scores",
    "scored", "still",  "skills", "circuits", "interval", "second", "pounded", "rounded", "extras"};

bool one_of(std::span<const std::string_view> list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}

/// The one trade word that a single slip explains, or empty.
std::string_view meant(std::string_view word) {
  std::string_view found;
  for (const std::string_view known : trade_words) {
    const std::size_t longer = std::max(known.size(), word.size());
    if (longer - std::min(known.size(), word.size()) > 1) continue;
    if (known.front() != word.front() && known.back() != word.back()) continue;
    if (domain::edit_distance(word, known) != 1) continue;
    if (!found.empty()) return {};
    found = known;
  }
  return found;
}

}  // namespace

void mend_trade_words(Lexed& source, const Names& names, Remarks& remarks) {
  std::unordered_map<std::string, std::string_view> looked_up;
  for (Token& token : source.tokens) {
    if (token.kind != TokenKind::Word || token.text.size() < 5 || token.text.size() > 14) continue;
    auto [at, fresh] = looked_up.try_emplace(token.text);
    if (fresh && !one_of(trade_words, token.text) && !one_of(own_words, token.text) &&
        !names.knows(token.text))
      at->second = meant(token.text);
    if (at->second.empty()) continue;
    remarks.add({"spelling-guess",
                 token.span,
                 fmt::format("`{}` was read as {}", token.text, at->second),
                 "mend the word if that is wrong",
                 {std::string(at->second)}});
    token.text = at->second;
  }
}

}  // namespace repwright::board
