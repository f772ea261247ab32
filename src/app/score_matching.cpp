#include "app/score_matching.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace repwright::app {
namespace {

using domain::PieceOutcome;
using domain::ScoreEntry;

std::optional<double> cap_of(const ScoreEntry& entry, const PieceOutcome& piece) {
  const auto& capped = std::get<domain::CappedScore>(entry.value);
  if (piece.measure != domain::Measure::Seconds) return std::nullopt;
  if (capped.cap) return capped.cap->si();
  return piece.capped > 0 ? std::optional(piece.score.p90) : std::nullopt;
}

bool is_capped(const ScoreEntry& entry) {
  return std::holds_alternative<domain::CappedScore>(entry.value);
}

/// The score as the piece measures it, at the cap as far as it is known; nothing where it cannot be.
std::optional<double> in_measure(const ScoreEntry& entry, const PieceOutcome& piece) {
  const auto value = is_capped(entry) ? cap_of(entry, piece) : score_in_measure(entry.value, piece);
  return value && *value > 0 ? value : std::nullopt;
}

/// The piece that the entry was scored in, or why there is none.
tl::expected<const PieceOutcome*, const char*> piece_of(const ScoreEntry& entry,
                                                        const std::vector<PieceOutcome>& pieces,
                                                        const std::vector<std::string>& names) {
  std::vector<const PieceOutcome*> fitting;
  for (const PieceOutcome& piece : pieces)
    if (is_of_piece(entry, piece, names)) fitting.push_back(&piece);
  if (fitting.empty()) return tl::unexpected<const char*>("the board has no such piece");
  std::erase_if(fitting, [&](const PieceOutcome* piece) { return !in_measure(entry, *piece); });
  if (fitting.empty()) return tl::unexpected<const char*>("nothing that can be compared with the forecast");
  if (fitting.size() > 1) return tl::unexpected<const char*>("names no piece, and the board has several");
  return fitting.front();
}

}  // namespace

Matches match_scores(const Entries& entries, const ClassRehearsal& played, std::size_t person) {
  Matches out;
  const domain::PersonOutcome& outcome = played.rehearsal.people[person];
  const std::string versions = versions_done(played.fitted.people[person]);
  for (const ScoreEntry* entry : entries) {
    if (entry->person != outcome.person) continue;
    const auto left_out = [&](const char* why) {
      out.notes.push_back(fmt::format("{}: {}", outcome.name, why));
    };
    const auto piece = piece_of(*entry, outcome.pieces, played.rehearsal.piece_names);
    if (!piece) {
      left_out(piece.error());
      continue;
    }
    if (std::ranges::find(out.scores, *piece, &MatchedScore::piece) != out.scores.end()) {
      left_out("a second score of the same piece");
      continue;
    }
    const auto value = in_measure(*entry, **piece);
    if (!value) {
      left_out("a score in another measure");
      continue;
    }
    const bool same = entry->version.empty() || entry->version == versions;
    if (!same) left_out("another version than the forecast's; it does not teach");
    out.scores.push_back({.entry = entry,
                          .piece = *piece,
                          .value = *value,
                          .beyond = is_capped(*entry),
                          .teaches = same && entry->flag == domain::DayFlag::None,
                          .key = {entry->board_id, (*piece)->piece, versions}});
  }
  return out;
}

rehearsal::VersionsSaid versions_said(const Entries& entries, const domain::Catalogue& catalogue) {
  constexpr std::string_view between = " / ";
  rehearsal::VersionsSaid said;
  for (const ScoreEntry* entry : entries) {
    std::string_view left = entry->version;
    while (!left.empty()) {
      const std::size_t end = left.find(between);
      const domain::MovementId id{std::string(left.substr(0, end))};
      if (catalogue.find(id) != nullptr) said[entry->person].push_back(id);
      left.remove_prefix(end == std::string_view::npos ? left.size() : end + between.size());
    }
  }
  return said;
}

}  // namespace repwright::app
