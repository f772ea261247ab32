#include "cli/class_arguments.hpp"

namespace repwright::cli {
namespace {

std::string not_negative(const std::string& text) {
  return text.starts_with('-') ? text + " is below 0" : "";
}

/// How the class is played.
void add_class(CLI::App& command, ClassOptions& options, std::vector<std::string>& out) {
  add_who_and_where(command, options, out);
  command.add_option("--runs", options.runs, "how often the class is played")
      ->check(CLI::Range(1, 100000))
      ->capture_default_str();
  add_seed(command, options.seed);
  add_threads(command, options.threads);
  command.add_flag("--as-written", options.as_written, "ignore limits and versions; for outside checks only");
}

}  // namespace

std::vector<PlaceOut> places_out(const std::vector<std::string>& texts) {
  std::vector<PlaceOut> out;
  for (const std::string& text : texts) {
    const auto equals = text.find('=');
    int count = 0;
    if (equals == std::string::npos || equals == 0 ||
        !CLI::detail::lexical_cast(text.substr(equals + 1), count) || count < 0)
      throw CLI::ValidationError("--out", "`" + text + "` is not PLACE=N, as in pull-up-bar=1");
    out.push_back({text.substr(0, equals), count});
  }
  return out;
}

void add_board(CLI::App& command, std::string& board) {
  command.add_option("BOARD", board, "the board's text: a file, or - for the standard input")->required();
}

void add_who_and_where(CLI::App& command, ClassOptions& options, std::vector<std::string>& out) {
  add_board(command, options.board);
  command.add_option("--people", options.people, "who comes: people.csv");
  command.add_option("--hall", options.hall,
                     "room, places, kit and routes: hall.json (without it nobody waits)");
  command.add_option("--house", options.house, "the gym's defaults: house.json");
  command.add_option("--class", options.gym_class,
                     "date, bookings, arrivals, faults, weather: a classes/*.json");
  command.add_option("--gym", options.gym,
                     "a gym folder: whatever of the above is not named is taken from it");
  command.add_option("--heads", options.heads, "fill up to so many people from the house prior")
      ->check(CLI::Range(1, 2000));
  command.add_option("--out", out, "PLACE=N: so many places of that kind are out today");
  command.add_flag("--indoors", options.indoors, "no route outside today");
  command.add_flag("--json", options.json, "one JSON document on the standard output");
}

void add_seed(CLI::App& command, std::uint64_t& seed) {
  command.add_option("--seed", seed, "same seed, same answer")->check(not_negative)->capture_default_str();
}

void add_threads(CLI::App& command, int& threads) {
  command.add_option("--threads", threads, "0: as many as the machine has; never changes the answer")
      ->check(CLI::Range(0, 256))
      ->capture_default_str();
}

CLI::App* add_played(CLI::App& app, PlayedCommand played, PlayedOptions& options, Chosen& chosen) {
  CLI::App* command = app.add_subcommand(played.name, played.what);
  add_class(*command, options.of_class, options.out);
  command->callback([&options, &chosen, run = played.run] {
    options.of_class.out = places_out(options.out);
    chosen = [&options, run] { return run(options.of_class); };
  });
  return command;
}

}  // namespace repwright::cli
