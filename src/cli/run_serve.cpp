#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <filesystem>
#include <string>

#include "api/route_table.hpp"
#include "cli/commands.hpp"
#include "server/page_files.hpp"
#include "server/server.hpp"
#include "server/sodium_vault.hpp"
#include "store/body_file.hpp"
#include "store/catalogue_file.hpp"
#include "store/data_folder.hpp"
#include "store/folder_store.hpp"
#include "store/memory_accounts.hpp"

namespace repwright::cli {
namespace {

namespace fs = std::filesystem;

void say(const std::string& line) {
  std::fputs((line + "\n").c_str(), stdout);
  std::fflush(stdout);
}

base::Result<app::OpenGym> open_folder(store::Store& store, const fs::path& folder, const fs::path& data) {
  auto catalogue = store::load_catalogue(data / "catalogue", store::gyms_own_movements(folder));
  if (!catalogue) return tl::unexpected(catalogue.error());
  auto constants = store::load_body_constants(data / "body.toml", *catalogue);
  if (!constants) return tl::unexpected(constants.error());
  auto gym = store.gym(*catalogue);
  if (!gym) return tl::unexpected(gym.error());
  return app::open_gym(std::move(*gym), std::move(*catalogue), std::move(*constants));
}

base::Result<server::PageFiles> page() {
  const auto folder = server::page_folder();
  return folder ? server::load_page(*folder) : server::PageFiles();
}

std::chrono::sys_seconds now() {
  return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
}

base::Result<void> serve(const ServeOptions& options) {
  const auto data = store::data_folder();
  if (!data) return tl::unexpected(data.error());
  store::FolderStore store(options.gym);
  auto gym = open_folder(store, options.gym, *data);
  if (!gym) return tl::unexpected(gym.error());
  auto files = page();
  if (!files) return tl::unexpected(files.error());
  const bool built = !files->empty();

  app::Desk desk(std::make_shared<const app::OpenGym>(std::move(*gym)));
  store::MemoryAccounts accounts;
  server::SodiumVault vault;
  app::Gate gate(accounts, vault, now);
  const api::Services services{desk, gate, store};
  server::Site site{
      .answer = [&](const api::Request& request,
                    const std::stop_token& stop) { return api::respond(request, services, stop); },
      .takes_long = [](const api::Request& request) { return api::cost_of(request) == api::Cost::Long; },
      .page = std::move(*files),
      .log = [](std::string_view line) { std::fputs(fmt::format("repwright: {}\n", line).c_str(), stderr); }};
  const auto listening =
      server::Server::listen({.port = options.port,
                              .reach = options.open ? server::Reach::Network : server::Reach::Loopback,
                              .signals = server::Signals::StopOnInterruptAndTerminate},
                             std::move(site));
  if (!listening) return tl::unexpected(listening.error());

  const std::string address = fmt::format("http://127.0.0.1:{}/", (*listening)->port());
  say(fmt::format("Repwright is at {}", address));
  say(fmt::format("The owner signs in with this link, once: {}#owner={}", address, gate.new_owner_token()));
  if (!built) say("The page is not built; the addresses below /api answer all the same.");
  if (options.open)
    say("Everybody on the network can reach it, and reads along: there is no encryption yet.");
  say("Ctrl-C ends it.");
  (*listening)->run();
  return {};
}

}  // namespace

int run_serve(const ServeOptions& options) {
  const auto served = serve(options);
  if (served) return 0;
  std::fputs(fmt::format("repwright: {}\n", served.error().message).c_str(), stderr);
  return 1;
}

}  // namespace repwright::cli
