#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <exception>
#include <functional>
#include <optional>
#include <string>

#include "cli/advice_arguments.hpp"
#include "cli/class_arguments.hpp"
#include "cli/commands.hpp"

namespace repwright::cli {
namespace {

constexpr int output_lost = 1;
constexpr int usage_error = 2;
constexpr int bug_of_ours = 70;

void add_reading(CLI::App& command, ReadOptions& options) {
  add_board(command, options.board);
  command.add_option("--house", options.house, "the gym's defaults: house.json");
  command.add_option("--gym", options.gym, "a gym folder: its defaults and its own movements");
}

/// The names of the commands, as the help lists them.
std::string command_names(const CLI::App& app) {
  std::string names;
  for (const CLI::App* command : app.get_subcommands({}))
    names += (names.empty() ? "" : ", ") + command->get_name();
  return names;
}

/// The exit code if there is nothing to do: help was asked for, or the line is not understood.
std::optional<int> parse(CLI::App& app, int argc, char** argv) {
  const std::string first = argc > 1 ? argv[1] : "";
  const bool is_option = first.starts_with('-');
  const auto commands = app.get_subcommands({});
  if (!is_option && std::ranges::none_of(commands, [&](const CLI::App* c) { return c->check_name(first); })) {
    const std::string what =
        first.empty() ? "name a command" : "no command is called `" + first + "`; there are";
    std::fprintf(stderr, "repwright: %s: %s\nRun with --help for more information.\n", what.c_str(),
                 command_names(app).c_str());
    return usage_error;
  }
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? 0 : usage_error;
  }
  return std::nullopt;
}

/// The code, unless what was said could not be written (a full disk).
int written(int code) {
  if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0) return code;
  std::fputs("repwright: the standard output cannot be written\n", stderr);
  return output_lost;
}

void add_serve(CLI::App& command, ServeOptions& options) {
  command.add_option("--gym", options.gym,
                     "a gym folder or a database file (.db), where changes are kept; a file that is not "
                     "there yet begins an empty gym; without it, a database file of your own");
  command.add_option("--port", options.port, "0: any free one")->capture_default_str();
  command.add_flag("--open", options.open, "let other machines of the network in, too");
  command.add_flag("--new-owner-link", options.new_owner_link,
                   "print a link for the owner also if there is one, for who is locked out");
}

/// One of the commands that carry a gym from one place to another.
CLI::App* add_move(CLI::App& app, const std::string& name, const char* what, MoveOptions& options) {
  CLI::App* command = app.add_subcommand(name, what);
  command->add_option(name == "import" ? "DIR" : "FILE", options.from, "where it is kept now")->required();
  command->add_option("--to", options.to, "where it is to be")->required();
  return command;
}

void add_text_commands(CLI::App& app, ReadOptions& read, ReadOptions& tidy, Chosen& chosen) {
  CLI::App* command = app.add_subcommand("read", "say the board back in words, with what is doubtful");
  add_reading(*command, read);
  command->add_flag("--json", read.json, "one JSON document on the standard output");
  command->callback([&] { chosen = [&] { return run_read(read); }; });

  command = app.add_subcommand("tidy", "write the board in one clean form");
  add_reading(*command, tidy);
  command->callback([&] { chosen = [&] { return run_tidy(tidy); }; });
}

void add_demo(CLI::App& app, DemoOptions& demo, Chosen& chosen) {
  CLI::App* command = app.add_subcommand("demo", "write the demo gym (all invented) as a gym folder");
  command->add_option("DIR", demo.folder, "the folder to write: a new one, or an empty one")->required();
  command->add_flag("--anew", demo.anew, "write the demo's files over those of the same names");
  command->callback([&] { chosen = [&] { return run_demo(demo); }; });
}

CLI::App* add_learning(CLI::App& app, const char* name, const char* what, LearnOptions& options) {
  CLI::App* command = app.add_subcommand(name, what);
  command->add_option("--gym", options.gym, "a gym folder or a database file")->required();
  command->add_option("--runs", options.runs, "how often each session is played")
      ->check(CLI::Range(40, 100000))
      ->capture_default_str();
  add_seed(*command, options.seed);
  add_threads(*command, options.threads);
  return command;
}

void add_learning(CLI::App& app, LearnOptions& options, Chosen& chosen) {
  CLI::App* command = add_learning(app, "learn", "what the gym's scores tell of its people", options);
  CLI::Option* next =
      command
          ->add_option("--next", options.next,
                       "which tests would tell most of that person, for the forecast of that board: one of "
                       "the gym's, or a file")
          ->type_name("NAME BOARD")
          ->expected(2);
  command->add_flag("--json", options.json, "with --next: one JSON document on the standard output")
      ->needs(next);
  command->callback([&] { chosen = [&] { return run_learn(options); }; });
  command = add_learning(app, "hindsight", "how far the forecasts of past scores were off", options);
  command->add_flag("--json", options.json, "one JSON document on the standard output");
  command->callback([&] { chosen = [&] { return run_hindsight(options); }; });
}

void add_keeping(CLI::App& app, MoveOptions& move, Chosen& chosen) {
  CLI::App* command = add_move(app, "import", "put a gym folder into a new database file", move);
  command->callback([&] { chosen = [&] { return run_import(move); }; });
  command = add_move(app, "backup", "copy a database file, also while it is served", move);
  command->callback([&] { chosen = [&] { return run_backup(move); }; });
  command = add_move(app, "restore", "bring a backup back as a database file", move);
  command->add_flag("--anew", move.anew, "in place of what is kept there");
  command->callback([&] { chosen = [&] { return run_restore(move); }; });
}

/// `export` writes the gym, or all that it keeps of one person.
void add_export(CLI::App& app, MoveOptions& move, PersonOptions& person, Chosen& chosen) {
  CLI::App* command = app.add_subcommand(
      "export", "write the gym of a database file as a gym folder, or all that is kept of one person");
  CLI::Option* from = command->add_option("FILE", move.from, "where the gym is kept now");
  CLI::Option* to = command->add_option("--to", move.to, "a new folder");
  CLI::Option* who =
      command->add_option("--person", person.person, "all that is kept of that person, by name or id");
  CLI::Option* gym =
      command->add_option("--gym", person.gym, "with --person: a gym folder or a database file");
  who->needs(gym)->excludes(from);
  gym->needs(who);
  command->callback([&, from, to, who] {
    if (who->count() == 0 && from->count() == 0) throw CLI::RequiredError("FILE");
    if (who->count() == 0 && to->count() == 0) throw CLI::RequiredError("--to");
    if (to->count() > 0) person.to = move.to;
    if (who->count() > 0)
      chosen = [&] { return run_export_person(person); };
    else
      chosen = [&] { return run_export(move); };
  });
}

void add_forget(CLI::App& app, PersonOptions& person, Chosen& chosen) {
  CLI::App* command = app.add_subcommand("forget", "take one person out of all that a gym keeps, for good");
  command->add_option("--person", person.person, "by name or id")->required();
  command->add_option("--gym", person.gym, "a gym folder or a database file")->required();
  command->add_flag("--yes", person.yes, "do it; without it, only say what would be done");
  command->callback([&] { chosen = [&] { return run_forget(person); }; });
}

int run(int argc, char** argv) {
  CLI::App app{"Reads a session as chalked on the board and rehearses it with the people who are coming."};
  app.name("repwright");
  app.require_subcommand(1);
  app.footer("Exit codes: 0 fine, 1 the input is at fault, 2 usage, 70 a fault of the program.");
  Chosen chosen;

  ReadOptions read, tidy;
  add_text_commands(app, read, tidy, chosen);

  PlayedOptions rehearse;
  CLI::App* command = add_played(
      app, {"rehearse", "play the class with these people: scores, queues, slack, findings", run_rehearse},
      rehearse, chosen);
  command->add_flag("--draws", rehearse.of_class.draws, "with --json: every person's score in every run")
      ->needs(command->get_option("--json"));
  command->add_option("--why", rehearse.of_class.why, "NAME: also why that person is forecast what they are");

  AdviceOptions advice;
  add_advice(app, advice, chosen);

  DemoOptions demo;
  add_demo(app, demo, chosen);

  LearnOptions learn;
  add_learning(app, learn, chosen);

  MoveOptions move;
  add_keeping(app, move, chosen);
  PersonOptions exported, forgotten;
  add_export(app, move, exported, chosen);
  add_forget(app, forgotten, chosen);

  ServeOptions serve;
  command = app.add_subcommand("serve", "open the gym in the browser of this machine");
  add_serve(*command, serve);
  command->callback([&] { chosen = [&] { return run_serve(serve); }; });

  if (const auto code = parse(app, argc, argv)) return *code;
  return written(chosen());
}

}  // namespace
}  // namespace repwright::cli

int main(int argc, char** argv) {
  try {
    return repwright::cli::run(argc, argv);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "repwright: a fault of the program, please report it: %s\n", error.what());
    return repwright::cli::bug_of_ours;
  }
}
