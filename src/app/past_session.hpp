#pragma once

#include <chrono>
#include <map>
#include <optional>
#include <stop_token>
#include <string>
#include <utility>
#include <vector>

#include "app/rehearse_class.hpp"
#include "base/result.hpp"

/// Sessions of the past, as the gym's scores know them.
namespace repwright::app {

/// The same board on the same day.
using SessionKey = std::pair<std::chrono::sys_days, std::string>;

/// Those of `people` who scored in it, in the order of `people`.
std::vector<domain::Person> those_of(const std::vector<const domain::ScoreEntry*>& entries,
                                     const std::vector<domain::Person>& people);

/// How a past session is played again: by the likeliest bodies once, or by bodies drawn for each run.
enum class Bodies : std::uint8_t { Likeliest, Drawn };
struct Replay {
  Bodies bodies = Bodies::Likeliest;
  int runs = 1;
  std::stop_token stop{};
  std::map<domain::PersonId, body::BodyEstimate> known{};  // what was known of them; else their marks
  rehearsal::VersionsSaid said{};                          // what they did; else as fitted
  bool keep_draws = false;
  int threads = 1;
  base::Seed seed{1};
};

/// The session once more, with the marks that people have now. The gym must have its board, which `reader`
/// reads. Fails as `rehearse_class`.
base::Result<ClassRehearsal> played_again(const GymKnowledge& gym, const board::Reader& reader,
                                          const SessionKey& session,
                                          const std::vector<domain::Person>& people, const Replay& replay);

/// The score in the measure of the outcome, where it can be said in it.
std::optional<double> score_in_measure(const domain::ScoreValue& score, const domain::PieceOutcome& piece);

/// Whether the entry was scored in that piece, one of `piece_names`; an entry that names none stands for all.
bool is_of_piece(const domain::ScoreEntry& entry, const domain::PieceOutcome& piece,
                 const std::vector<std::string>& piece_names);

}  // namespace repwright::app
