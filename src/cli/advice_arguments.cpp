#include "cli/advice_arguments.hpp"

#include "app/team_class.hpp"
#include "cli/commands.hpp"

namespace repwright::cli {
namespace {

std::vector<app::Apart> apart_in(const std::vector<std::string>& texts) {
  std::vector<app::Apart> apart;
  for (const std::string& text : texts) {
    auto two = app::apart_of(text);
    if (!two) throw CLI::ValidationError("--apart", "`" + text + "` is not ONE+OTHER, as in a01+a07");
    apart.push_back(std::move(*two));
  }
  return apart;
}

void add_warm_up(CLI::App& app, WarmUpOptions& options, std::vector<std::string>& out, Chosen& chosen) {
  CLI::App* command = app.add_subcommand("warmup", "the drills that prepare what is on the board");
  add_who_and_where(*command, options.of_class, out);
  command->add_option("--minutes", options.minutes, "how long (else what the board gives it)")
      ->check(CLI::Range(0.5, 60.0));
  command->add_option("--kit", options.kit, "KIT: out today though the board does not use it, as in band");
  command->callback([&] {
    options.of_class.out = places_out(out);
    chosen = [&] { return run_warm_up(options); };
  });
}

void add_away(CLI::App& app, AwayOptions& options, Chosen& chosen) {
  CLI::App* command = app.add_subcommand("away", "the same session at home, in a hotel room, outside");
  ClassOptions& of_class = options.of_class;
  add_board(*command, of_class.board);
  command->add_option("--people", of_class.people, "people.csv, for --who");
  command->add_option("--house", of_class.house, "the gym's defaults: house.json");
  command->add_option("--gym", of_class.gym,
                      "a gym folder: whatever of the above is not named is taken from it");
  command->add_option("--who", options.who, "whom it is for, by name or id (else somebody unknown)");
  command->add_option("--kit", options.kit, "KIT: what is there, as in dumbbell");
  command->add_option("--room", options.room, "square metres of free floor")
      ->check(CLI::Range(0.5, 500.0))
      ->capture_default_str();
  command->add_option("--minutes", options.minutes, "at most so long")->check(CLI::Range(1.0, 240.0));
  command->add_flag("--quiet", options.quiet, "people live below: nothing that lands");
  command->add_flag("--outside", options.outside, "runs are possible");
  add_seed(*command, of_class.seed);
  command->add_flag("--json", of_class.json, "one JSON document on the standard output");
  command->callback([&] { chosen = [&] { return run_away(options); }; });
}

void add_pairs(CLI::App& app, AdviceOptions& options, Chosen& chosen) {
  CLI::App* command = app.add_subcommand("pairs", "who works with whom so that all end together");
  add_who_and_where(*command, options.pairs.of_class, options.pairs_out);
  add_seed(*command, options.pairs.of_class.seed);
  command->add_option("--apart", options.pairs_apart, "ONE+OTHER: not in one team, as last time or by wish");
  command->callback([&] {
    options.pairs.of_class.out = places_out(options.pairs_out);
    options.pairs.apart = apart_in(options.pairs_apart);
    chosen = [&] { return run_pairs(options.pairs); };
  });
}

}  // namespace

void add_advice(CLI::App& app, AdviceOptions& options, Chosen& chosen) {
  add_played(app, {"repairs", "the small changes of the board that would help this class most", run_repairs},
             options.repairs, chosen);
  add_played(app, {"fit", "what each does so that a piece is what it is meant to be", run_fit}, options.fit,
             chosen);
  add_warm_up(app, options.warm_up, options.warm_up_out, chosen);
  add_pairs(app, options, chosen);
  add_away(app, options.away, chosen);
  add_played(app, {"timetable", "what happens when, box by box, and what to cut", run_timetable},
             options.timetable, chosen)
      ->add_option(
          "--words-per-minute", options.timetable.of_class.words_per_minute,
          "how fast you speak: the briefing lasts as long as the board read out (else as the class says)")
      ->check(CLI::Range(60, 240));
}

}  // namespace repwright::cli
