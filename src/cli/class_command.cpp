#include "cli/class_command.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>

#include "app/lately.hpp"
#include "sheets/diagnostics_text.hpp"

namespace repwright::cli {

void say(std::string_view text) {
  std::fwrite(text.data(), 1, text.size(), stdout);
}
void remark(std::string_view text) {
  std::fwrite(text.data(), 1, text.size(), stderr);
}

int refuse(const base::Error& error) {
  remark(fmt::format("repwright: {}\n", error.message));
  return input_at_fault;
}

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
          .stop = {},
          .history = app::lately(inputs.gym, inputs.people, inputs.gym_class)};
}

int with_class(const ClassOptions& options, const std::function<int(const ClassAsked&)>& command) {
  const auto inputs = load_class(options);
  if (!inputs) return refuse(inputs.error());
  const board::Reading reading = board::read(inputs->board.text, inputs->gym.catalogue, inputs->gym.house);
  remark(remarks_of(inputs->board, reading));
  if (has_errors(reading)) return input_at_fault;
  return command({options, *inputs, reading});
}

}  // namespace repwright::cli
