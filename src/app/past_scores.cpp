#include "app/past_scores.hpp"

#include <algorithm>
#include <map>

#include "app/past_session.hpp"

namespace repwright::app {
namespace {

using domain::PieceOutcome;
using domain::ScoreEntry;

/// Enough for a range of four in five.
constexpr int runs_of_a_session = 60;

std::vector<const ScoreEntry*> latest_of(const std::vector<ScoreEntry>& scores,
                                         const domain::PersonId& person, std::size_t most) {
  std::vector<const ScoreEntry*> own;
  for (const ScoreEntry& entry : scores)
    if (entry.person == person) own.push_back(&entry);
  std::ranges::stable_sort(own, std::ranges::greater{},
                           [](const ScoreEntry* entry) { return std::chrono::sys_days{entry->date}; });
  own.resize(std::min(own.size(), most));
  return own;
}

/// The same session rehearsed once, however many of its pieces were scored.
class Sessions {
 public:
  Sessions(const OpenGym& gym, const board::Reader& reader, const std::stop_token& stop)
      : gym_(gym), reader_(reader), stop_(stop) {}

  /// The person's outcome of the piece that the entry was scored in, or nothing.
  std::optional<PieceOutcome> forecast_of(const ScoreEntry& entry) {
    if (!gym_.knowledge.boards.contains(entry.board_id)) return std::nullopt;
    const auto& rehearsed = rehearsal_of({std::chrono::sys_days{entry.date}, entry.board_id});
    if (!rehearsed) return std::nullopt;
    for (const domain::PersonOutcome& outcome : rehearsed->people) {
      if (outcome.person != entry.person) continue;
      for (const PieceOutcome& piece : outcome.pieces)
        if (is_of_piece(entry, piece, rehearsed->piece_names)) return piece;
    }
    return std::nullopt;
  }

 private:
  const std::optional<domain::Rehearsal>& rehearsal_of(const SessionKey& session) {
    const auto [at, is_new] = rehearsed_.try_emplace(session);
    if (!is_new) return at->second;
    std::vector<const ScoreEntry*> entries;
    for (const ScoreEntry& each : gym_.knowledge.scores)
      if (std::chrono::sys_days{each.date} == session.first && each.board_id == session.second)
        entries.push_back(&each);
    const auto played = played_again(gym_.knowledge, reader_, session, those_of(entries, gym_.people),
                                     {.bodies = Bodies::Drawn, .runs = runs_of_a_session, .stop = stop_});
    if (played) at->second = played->rehearsal;
    return at->second;
  }

  const OpenGym& gym_;
  const board::Reader& reader_;
  const std::stop_token& stop_;
  std::map<SessionKey, std::optional<domain::Rehearsal>> rehearsed_;
};

/// The spread of days is that of the forecast, as a share of it.
std::pair<double, double> days_around(double value, const PieceOutcome& forecast) {
  constexpr double four_in_five = 1.2816;
  const double share = forecast.score.p50 > 0 ? forecast.sd_day / forecast.score.p50 : 0;
  const double margin = four_in_five * share * value;
  return {std::max(0.0, value - margin), value + margin};
}

std::string title_of(const OpenGym& gym, const board::Reader& reader, const std::string& board_id) {
  const auto board = gym.knowledge.boards.find(board_id);
  if (board == gym.knowledge.boards.end()) return board_id;
  const std::string title = reader.read(board->second).board.title;
  return title.empty() ? board_id : title;
}

}  // namespace

std::vector<PastScore> past_scores(const OpenGym& gym, const domain::PersonId& person, std::size_t most,
                                   const std::stop_token& stop) {
  const board::Reader reader(gym.knowledge.catalogue, gym.knowledge.house);
  Sessions sessions(gym, reader, stop);
  std::vector<PastScore> out;
  for (const ScoreEntry* entry : latest_of(gym.knowledge.scores, person, most)) {
    PastScore past{*entry, title_of(gym, reader, entry->board_id), sessions.forecast_of(*entry), std::nullopt,
                   std::nullopt};
    if (past.forecast) {
      past.forecast->steps.clear();
      past.value = score_in_measure(entry->value, *past.forecast);
      if (past.value) past.days = days_around(*past.value, *past.forecast);
    }
    out.push_back(std::move(past));
  }
  return out;
}

}  // namespace repwright::app
