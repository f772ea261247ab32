#include <fmt/chrono.h>
#include <fmt/format.h>

#include <cstdio>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <span>
#include <string_view>

#include "calibration/agreement.hpp"
#include "calibration/constants_file.hpp"
#include "calibration/fit.hpp"
#include "calibration/regression.hpp"
#include "calibration/tunables.hpp"
#include "store/body_file.hpp"
#include "store/catalogue_file.hpp"
#include "store/read_file.hpp"

/// calibrate DATA MARKS.csv [--write | --report | --folds]: DATA is the folder of body.toml. Prints the
/// errors of its constants; with --write fits them first, cross-validated, and rewrites the file; with
/// --report leaves them and rewrites what the head of the file says of them; with --folds the same, each fold
/// fitted anew, which takes a quarter of an hour.
namespace repwright::calibration {
namespace {

struct World {
  std::vector<Profile> profiles;
  domain::Catalogue catalogue;
  domain::BodyConstants constants;
};

base::Result<World> load(const std::filesystem::path& data, const std::filesystem::path& marks) {
  auto catalogue = store::load_catalogue(data / "catalogue", std::nullopt);
  if (!catalogue) return tl::unexpected(catalogue.error());
  auto constants = store::load_body_constants(data / "body.toml", *catalogue);
  if (!constants) return tl::unexpected(constants.error());
  auto profiles = load_profiles(marks);
  if (!profiles) return tl::unexpected(profiles.error());
  return World{std::move(*profiles), std::move(*catalogue), std::move(*constants)};
}

std::string study_table(const World& world) {
  std::string out;
  for (const Measured& at : all_studies({world.catalogue, world.constants}))
    out += fmt::format("{:<44} {:>9.3f}  {}\n", at.name, at.value,
                       at.ideal.holds(at.value)    ? "ideal"
                       : at.accept.holds(at.value) ? "accepted"
                                                   : "missed");
  return out;
}

FitPlan told_plan() {
  return {.told = [](int round, double sum) { std::fprintf(stderr, "round %d: %.1f\n", round + 1, sum); }};
}

/// The table of everybody but the held-out part.
std::string fitted_table(const World& world, const std::vector<Forecast>& said) {
  std::vector<Profile> profiles;
  std::vector<Forecast> forecasts;
  for (std::size_t i = 0; i < said.size(); ++i)
    if (part_of(world.profiles[i].id) != held_out) {
      profiles.push_back(world.profiles[i]);
      forecasts.push_back(said[i]);
    }
  return agreement_table(profiles, forecasts);
}

std::string held_out_report(const World& world) {
  const auto held = those_in(world.profiles, [](int part) { return part == held_out; });
  const auto drawn = drawn_forecasts(held, world.catalogue, world.constants, draws_of_a_forecast, 0);
  return agreement_table(held, middles_of(drawn)) + coverage_table(held, drawn);
}

void evaluate(const World& world) {
  const auto drawn =
      drawn_forecasts(world.profiles, world.catalogue, world.constants, draws_of_a_forecast, 0);
  fmt::print("All profiles:\n{}\n", agreement_table(world.profiles, middles_of(drawn)));
  fmt::print("A regression fitted to the piece itself, cross-validated:\n{}\n",
             agreement_table(world.profiles, regressed(world.profiles)));
  fmt::print("Drawn forecasts:\n{}\n", coverage_table(world.profiles, drawn));
  const auto fitting = those_in(world.profiles, [](int part) { return part != held_out; });
  fmt::print("Squares of what a fit makes small: {}\n", misfit(fitting, world.catalogue, world.constants));
  fmt::print("Published measurements:\n{}", study_table(world));
}

/// What each fold is forecast by, and how that is said.
struct Crossed {
  std::vector<Forecast> said;
  std::string how;
};

Crossed by_one_step(const World& world) {
  const domain::BodyConstants by_hand = moved(world.constants, std::vector<double>(tunables().size()));
  return {cross_validated_near(world.profiles, world.catalogue, by_hand, world.constants, {}),
          fmt::format("by these constants less what one Gauss-Newton step says that its\n"
                      "own errors had moved all {} tunables",
                      tunables().size())};
}

/// The best of all others is near the best of all: a few rounds find it.
Crossed by_refits(const World& world) {
  FitPlan plan = told_plan();
  plan.rounds = 3;
  return {cross_validated(world.profiles, world.catalogue, world.constants, plan),
          fmt::format("by constants of which all {} tunables were\n"
                      "fitted anew without it, in {} rounds from these",
                      tunables().size(), plan.rounds)};
}

/// The folded tables of constants that stay as they are.
void report(const World& world, const Crossed& crossed, const std::filesystem::path& file,
            const std::string& text) {
  const auto fitting = those_in(world.profiles, [](int part) { return part != held_out; });
  const std::string said = fmt::format(
      "Reported {:%Y-%m-%d} by tools/calibrate on public self-reported profiles collected by S. Swift 2015;\n"
      "the constants were fitted to them and to the published measurements of tests/calibration/studies.cpp\n"
      "before, in steps; docs/models/body.md explains.\n"
      "Five-fold cross-validation, each fold {}:\n{}"
      "Drawn forecasts of those fitted to:\n{}Held out, never fitted to:\n{}",
      fmt::gmtime(std::time(nullptr)), crossed.how, fitted_table(world, crossed.said),
      coverage_table(fitting,
                     drawn_forecasts(fitting, world.catalogue, world.constants, draws_of_a_forecast, 0)),
      held_out_report(world));
  std::ofstream(file) << with_constants(text, world.constants, said);
  fmt::print("{}\n", said);
}

int run(std::span<char*> words) {
  const std::string_view how = words.size() == 4 ? words[3] : "";
  const bool write = how == "--write", reports = how == "--report", folded = how == "--folds";
  if (words.size() != 3 && !write && !reports && !folded)
    return std::fputs("usage: calibrate DATA MARKS.csv [--write | --report | --folds]\n", stderr), 2;
  auto world = load(words[1], words[2]);
  const std::filesystem::path file = std::filesystem::path(words[1]) / "body.toml";
  const auto text = store::read_file(file);
  if (!world || !text)
    return std::fprintf(stderr, "%s\n", (world ? text.error() : world.error()).message.c_str()), 1;
  if (write) {
    const auto fitting = those_in(world->profiles, [](int part) { return part != held_out; });
    world->constants = fitted(fitting, world->catalogue, world->constants, told_plan());
  }
  if (write || reports || folded)
    return report(*world, folded ? by_refits(*world) : by_one_step(*world), file, *text), 0;
  evaluate(*world);
  return 0;
}

}  // namespace
}  // namespace repwright::calibration

int main(int count, char** words) {
  return repwright::calibration::run({words, static_cast<std::size_t>(count)});
}
