#include "api/away_json.hpp"
#include "api/fit_json.hpp"
#include "api/repairs_json.hpp"
#include "api/team_json.hpp"
#include "api/warm_up_json.hpp"
#include "app/away_class.hpp"
#include "app/fit_class.hpp"
#include "app/kit_named.hpp"
#include "app/repair_class.hpp"
#include "app/team_class.hpp"
#include "app/warm_up_class.hpp"
#include "cli/class_command.hpp"
#include "cli/commands.hpp"
#include "cli/say.hpp"
#include "sheets/away_text.hpp"
#include "sheets/fit_text.hpp"
#include "sheets/repairs_text.hpp"
#include "sheets/team_text.hpp"
#include "sheets/warm_up_text.hpp"
#include "solver/cbc_solver.hpp"

namespace repwright::cli {
int run_repairs(const ClassOptions& options) {
  return with_class(options, [](const ClassAsked& asked) {
    const auto plan = app::repair_class(asked.request(), asked.inputs.board.text,
                                        [&](int done, int of) { asked.stop_key.come(done, of); });
    if (!plan) return refuse(plan.error());
    say(asked.options.json ? api::repairs_json(*plan) : sheets::repairs_text(*plan));
    return fine;
  });
}

int run_warm_up(const WarmUpOptions& options) {
  return with_class(options.of_class, [&](const ClassAsked& asked) {
    app::WarmUpWishes wishes;
    if (options.minutes) wishes.length = *options.minutes * base::minute;
    const auto kit = app::kit_named(options.kit, asked.inputs.gym.catalogue);
    if (!kit) return refuse(kit.error());
    wishes.also_out = *kit;
    solver::CbcSolver solver;
    const auto plan = app::warm_up_class(asked.request(), wishes, solver);
    if (!plan) return refuse(plan.error());
    say(asked.options.json ? api::warm_up_json(*plan) : sheets::warm_up_text(*plan));
    return fine;
  });
}

int run_pairs(const PairsOptions& options) {
  return with_class(options.of_class, [&](const ClassAsked& asked) {
    solver::CbcSolver solver;
    const auto plan = app::team_class(asked.request(), options.apart, solver);
    if (!plan) return refuse(plan.error());
    say(asked.options.json ? api::team_json(*plan) : sheets::team_text(*plan));
    return fine;
  });
}

int run_fit(const ClassOptions& options) {
  return with_class(options, [](const ClassAsked& asked) {
    solver::CbcSolver solver;
    const auto fit = app::fit_class(asked.request(), solver);
    if (!fit) return refuse(fit.error());
    say(asked.options.json ? api::fit_json(fit->plan) : sheets::fit_text(fit->plan));
    return fine;
  });
}

int run_away(const AwayOptions& options) {
  return with_class(options.of_class, [&](const ClassAsked& asked) {
    const auto kit = app::kit_named(options.kit, asked.inputs.gym.catalogue);
    if (!kit) return refuse(kit.error());
    app::AwayWishes wishes{
        .place = {.kit = {kit->begin(), kit->end()}, .quiet = options.quiet, .outside = options.outside},
        .who = options.who,
        .length = {}};
    wishes.place.room = options.room * base::metre * base::metre;
    if (options.minutes) wishes.length = *options.minutes * base::minute;
    solver::CbcSolver solver;
    const auto plan = app::away_class(asked.request(), wishes, solver);
    if (!plan) return refuse(plan.error());
    say(asked.options.json ? api::away_json(*plan) : sheets::away_text(*plan));
    return fine;
  });
}

}  // namespace repwright::cli
