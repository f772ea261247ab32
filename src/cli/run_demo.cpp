#include <fmt/format.h>

#include <cstdio>
#include <filesystem>

#include "app/demo_history.hpp"
#include "cli/commands.hpp"
#include "cli/say.hpp"
#include "store/body_file.hpp"
#include "store/catalogue_file.hpp"
#include "store/data_folder.hpp"
#include "store/demo_past_json.hpp"
#include "store/gym_folder.hpp"
#include "store/read_file.hpp"

namespace repwright::cli {
namespace {

/// A gym of people's own is not written over by mistake.
base::Result<void> check_folder(const DemoOptions& options) {
  namespace fs = std::filesystem;
  std::error_code ignored;
  if (!fs::exists(options.folder, ignored)) return {};
  if (!fs::is_directory(options.folder, ignored))
    return base::failure(base::ErrorCode::Invalid, options.folder + ": is a file, expected a folder");
  if (!options.anew && !fs::is_empty(options.folder, ignored))
    return base::failure(base::ErrorCode::Conflict,
                         options.folder +
                             ": is not empty; name a new folder, or say --anew to write the "
                             "demo's files over those of the same names");
  return {};
}

/// The demo gym with its history played; how many scores it has.
base::Result<std::size_t> write_demo(const std::string& folder) {
  const auto data = store::data_folder();
  if (!data) return tl::unexpected(data.error());
  app::GymKnowledge gym;
  auto catalogue = store::load_catalogue(*data / "catalogue", std::nullopt);
  if (!catalogue) return tl::unexpected(catalogue.error());
  gym.catalogue = std::move(*catalogue);
  auto constants = store::load_body_constants(*data / "body.toml", gym.catalogue);
  if (!constants) return tl::unexpected(constants.error());
  gym.constants = std::move(*constants);
  auto demo = store::read_gym(*data / "demo", gym.catalogue);
  if (!demo) return tl::unexpected(demo.error());
  gym.house = demo->house;
  gym.hall = demo->hall;
  const auto plan = store::read_file(*data / "demo" / "history.json");
  if (!plan) return tl::unexpected(plan.error());
  const auto past = store::read_demo_past(*plan, "history.json", demo->boards);
  if (!past) return tl::unexpected(past.error());
  auto history = app::demo_history(*past, gym, demo->people);
  if (!history) return tl::unexpected(history.error());
  demo->scores = std::move(history->scores);
  if (const auto written = store::write_gym(folder, *demo); !written) return tl::unexpected(written.error());
  return demo->scores.size();
}

}  // namespace

int run_demo(const DemoOptions& options) {
  const auto scores = check_folder(options).and_then([&] { return write_demo(options.folder); });
  if (!scores) {
    refuse(scores.error());
    return 1;
  }
  std::fputs(
      fmt::format("The demo gym, all of it invented, is in {}: people, hall, house, boards, classes and {} "
                  "scores of its past.\n",
                  options.folder, *scores)
          .c_str(),
      stderr);
  return 0;
}

}  // namespace repwright::cli
