#include "timetable/box_words.hpp"

#include <array>
#include <cctype>
#include <cmath>
#include <optional>
#include <utility>

namespace repwright::timetable {

namespace {

using domain::BlockKind;

std::string lower(std::string_view words) {
  std::string text;
  for (const char c : words) text += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

/// Where the word begins in the text, at the beginning of a word; npos if nowhere.
std::size_t find_word(const std::string& text, std::string_view word) {
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1))
    if (at == 0 || std::isalnum(static_cast<unsigned char>(text[at - 1])) == 0) return at;
  return std::string::npos;
}

std::string clock_text(base::Duration length) {
  const long seconds = std::lround(length.si());
  const std::string rest = std::to_string(seconds % 60);
  return std::to_string(seconds / 60) + ":" + (rest.size() < 2 ? "0" + rest : rest);
}

std::string with_length(std::string_view name, std::optional<base::Duration> length) {
  return length ? std::string(name) + " " + clock_text(*length) : std::string(name);
}

}  // namespace

BoxKind box_kind(std::string_view words, BoxKind otherwise) {
  static constexpr std::array<std::pair<std::string_view, BoxKind>, 21> known{{
      {"brief", BoxKind::Briefing},     {"talk", BoxKind::Briefing},  {"welcome", BoxKind::Briefing},
      {"roll call", BoxKind::Briefing}, {"warm", BoxKind::WarmUp},    {"wu", BoxKind::WarmUp},
      {"change", BoxKind::Change},      {"set out", BoxKind::Change}, {"set up", BoxKind::Change},
      {"set-up", BoxKind::Change},      {"score", BoxKind::Scores},   {"cool", BoxKind::CoolDown},
      {"stretch", BoxKind::CoolDown},   {"clean", BoxKind::Clean},    {"wipe", BoxKind::Clean},
      {"tidy", BoxKind::Clean},         {"reset", BoxKind::Clean},    {"put away", BoxKind::Clean},
      {"rest", BoxKind::Rest},          {"water", BoxKind::Rest},     {"break", BoxKind::Rest},
  }};
  const std::string text = lower(words);
  std::size_t first = std::string::npos;
  for (const auto& [word, kind] : known) {
    const std::size_t at = find_word(text, word);
    if (at >= first) continue;
    first = at;
    otherwise = kind;
  }
  return otherwise;
}

std::string piece_name(const domain::Block& block) {
  switch (block.kind) {
    case BlockKind::ForTime:
      return with_length("For time", block.duration);
    case BlockKind::Amrap:
      return with_length("AMRAP", block.duration);
    case BlockKind::Every:
      return with_length("Every", block.every);
    case BlockKind::Intervals:
      return "Intervals";
    case BlockKind::Sets:
      return "Sets";
    case BlockKind::Superset:
      return "Superset";
    case BlockKind::Circuit:
      return "Stations";
    case BlockKind::Ladder:
      return with_length("Ladder", block.duration);
    case BlockKind::Partner:
      return block.team_sizes.empty() || block.team_sizes.front() == 2
                 ? "Pairs"
                 : "Teams of " + std::to_string(block.team_sizes.front());
    case BlockKind::Relay:
      return "Relay";
    case BlockKind::Build:
      return with_length("Build", block.duration);
    case BlockKind::Accumulate:
      return "Accumulate";
    case BlockKind::ForDistance:
      return with_length("For distance", block.duration);
    case BlockKind::MaxEffort:
      return with_length("Max effort", block.duration);
    default:
      return "Piece";
  }
}

std::string box_name(BoxKind kind) {
  switch (kind) {
    case BoxKind::Briefing:
      return "Briefing";
    case BoxKind::WarmUp:
      return "Warm-up";
    case BoxKind::Work:
      return "Work";
    case BoxKind::Rest:
      return "Rest";
    case BoxKind::Change:
      return "Change-over";
    case BoxKind::Scores:
      return "Scores";
    case BoxKind::CoolDown:
      return "Cool-down";
    case BoxKind::Clean:
      return "Clean";
    case BoxKind::Note:
      return "Note";
  }
  return {};
}

}  // namespace repwright::timetable
