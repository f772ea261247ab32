#include "cli/class_command.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <optional>
#include <vector>

#include "app/briefing.hpp"
#include "app/lately.hpp"
#include "cli/say.hpp"
#include "sheets/diagnostics_text.hpp"

namespace repwright::cli {
namespace {

/// Nothing is known before a class without a day.
std::map<domain::PersonId, rehearsal::History> history_of(const ClassInputs& inputs) {
  const auto& day = inputs.gym_class.date;
  if (!day) return {};
  return app::lately(inputs.gym, inputs.people, *day);
}

/// What is doubtful of the reading. Notes tell what was taken for granted; a gym with a house has answered
/// those, and `read` shows them.
std::string doubts_of(const ClassInputs& inputs, const ClassOptions& options, const board::Reading& reading) {
  if (!options.gym && !options.house) return remarks_of(inputs.board, reading);
  std::vector<domain::Diagnostic> doubts;
  std::ranges::copy_if(reading.diagnostics, std::back_inserter(doubts),
                       [](const domain::Diagnostic& one) { return one.severity != domain::Severity::Note; });
  return sheets::diagnostics_text({inputs.board.name, inputs.board.text}, doubts);
}

}  // namespace

bool has_errors(const board::Reading& reading) {
  return std::ranges::any_of(reading.diagnostics, [](const domain::Diagnostic& diagnostic) {
    return diagnostic.severity == domain::Severity::Error;
  });
}

std::string remarks_of(const BoardText& board, const board::Reading& reading) {
  return sheets::diagnostics_text({board.name, board.text}, reading.diagnostics);
}

app::ClassRequest ClassAsked::request() const {
  return {.reading = reading,
          .gym = inputs.gym,
          .people = inputs.people,
          .gym_class = inputs.gym_class,
          .heads = options.heads,
          .rule = options.as_written ? rehearsal::FitRule::AsWritten : rehearsal::FitRule::WithinLimits,
          .seed = {options.seed},
          .runs = options.runs,
          .threads = options.threads,
          .keep_draws = options.draws,
          .stop = stop_key.stop(),
          .known = taught.known.bodies,
          .done = &taught.known.done,
          .history = history_of(inputs)};
}

int with_class(const ClassOptions& options, const std::function<int(const ClassAsked&)>& command) {
  auto inputs = load_class(options);
  if (!inputs) return refuse(inputs.error());
  const board::Reading reading = board::read(inputs->board.text, inputs->gym.catalogue, inputs->gym.house);
  remark(doubts_of(*inputs, options, reading));
  if (has_errors(reading)) return input_at_fault;
  const auto taught = taught_by_scores(options, *inputs);
  if (!taught) return refuse(taught.error());
  if (const auto pace = options.words_per_minute)
    app::brief_at(inputs->gym_class, *pace, reading.board, inputs->gym);
  const StopKey stop_key;
  return command({options, *inputs, reading, *taught, stop_key});
}

}  // namespace repwright::cli
