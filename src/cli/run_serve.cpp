#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "api/changed_by_others.hpp"
#include "api/route_table.hpp"
#include "cli/commands.hpp"
#include "cli/open_store.hpp"
#include "server/page_files.hpp"
#include "server/server.hpp"
#include "server/sodium_vault.hpp"
#include "server/trust_page.hpp"
#include "solver/cbc_solver.hpp"
#include "store/memory_accounts.hpp"

namespace repwright::cli {
namespace {

void say(const std::string& line) {
  std::fputs((line + "\n").c_str(), stdout);
  std::fflush(stdout);
}

std::chrono::sys_seconds now() {
  return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
}

std::chrono::sys_time<std::chrono::milliseconds> now_in_ms() {
  return std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now());
}

/// The store that was named, or the user's own file, with an empty gym if it is new.
base::Result<std::unique_ptr<store::Store>> store_to_serve(const ServeOptions& options) {
  if (options.gym && may_be_made(*options.gym)) {
    say(fmt::format("{} is new: an empty gym begins there", *options.gym));
    return open_or_make_database(*options.gym, now());
  }
  if (options.gym)
    return open_store(*options.gym).map_error([&](base::Error error) {
      if (error.code == base::ErrorCode::NotFound)
        error.message += fmt::format(
            "; a name that ends in .db begins a new gym, `repwright demo {}` writes one "
            "to try",
            *options.gym);
      return error;
    });
  const auto file = own_database();
  if (!file) return tl::unexpected(file.error());
  say(fmt::format("The gym is kept in {}", file->string()));
  return open_or_make_database(*file, now());
}

base::Result<server::PageFiles> page() {
  const auto folder = server::page_folder();
  return folder ? server::load_page(*folder) : server::PageFiles();
}

/// What this machine shows to others of the network when it talks to them encrypted; nothing if it does not.
base::Result<std::optional<server::TlsIdentity>> identity(const ServeOptions& options,
                                                          const server::MachineNames& names) {
  if (!options.open) return std::nullopt;
  return own_database()
      .and_then([&](const std::filesystem::path& file) {
        return server::tls_identity(file.parent_path() / "tls", names, now());
      })
      .map([](server::TlsIdentity made) { return std::optional(std::move(made)); });
}

/// What to tell others of the network.
base::Result<void> say_how_to_reach(const server::MachineNames& names, std::uint16_t port,
                                    const std::string& authority) {
  const auto fingerprint = server::fingerprint_of(authority);
  if (!fingerprint) return tl::unexpected(fingerprint.error());
  std::vector<std::string> places;
  for (const auto& known : {names.hosts, names.addresses})
    for (const std::string& name : known)
      if (name != "localhost" && name != "127.0.0.1") places.push_back(fmt::format("{}:{}", name, port));
  if (places.empty()) places.push_back(fmt::format("ADDRESS:{}", port));
  say(fmt::format("Others of the network reach it, encrypted, at https://{}/",
                  fmt::join(places, "/ or https://")));
  say(fmt::format("Each of them trusts it once: http://{}{} says how. The fingerprint there is\n{}",
                  places.back(), server::trust_path, *fingerprint));
  say("Over plain http it works as well, with less, and whoever shares the network reads along.");
  return {};
}

/// A gym folder keeps no accounts: those of the memory end with the program.
bool ends_with_the_program(store::Store& store) {
  return store.accounts() == nullptr;
}

/// The link that makes or signs in the owner, where one is to be printed.
base::Result<std::optional<std::string>> owner_link(app::Gate& gate, const ServeOptions& options,
                                                    const std::string& address) {
  return gate.first_start().map([&](bool first) {
    return first || options.new_owner_link ? std::optional(address + "#owner=" + gate.new_owner_token())
                                           : std::nullopt;
  });
}

base::Result<void> serve(const ServeOptions& options) {
  const auto store = store_to_serve(options);
  if (!store) return tl::unexpected(store.error());
  const auto desk =
      app::Desk::open({.mark = [&] { return (*store)->mark(); }, .load = [&] { return load_gym(**store); }});
  if (!desk) return tl::unexpected(desk.error());
  (*desk)->learn_beside();
  const server::MachineNames names = server::names_of_this_machine();
  const auto tls = identity(options, names);
  if (!tls) return tl::unexpected(tls.error());
  auto files = page();
  if (!files) return tl::unexpected(files.error());
  const bool built = !files->empty();
  if (const auto& known = *tls) files = server::with_trust_page(std::move(*files), known->authority);
  if (!files) return tl::unexpected(files.error());

  store::MemoryAccounts passing;
  server::SodiumVault vault;
  app::Gate gate(ends_with_the_program(**store) ? passing : *(*store)->accounts(), vault, now);
  solver::CbcSolver solver;
  const api::Services services{**desk, gate, **store, now_in_ms, solver};
  server::Site site{
      .answer = [&](const api::Request& request,
                    const std::stop_token& stop) { return api::respond(request, services, stop); },
      .cost = api::cost_of,
      .look = [&] { return api::changed_by_others(**desk).changed; },
      .page = std::move(*files),
      .log = [](std::string_view line) { std::fputs(fmt::format("repwright: {}\n", line).c_str(), stderr); }};
  const auto listening =
      server::Server::listen({.port = options.port,
                              .reach = options.open ? server::Reach::Network : server::Reach::Loopback,
                              .signals = server::Signals::StopOnInterruptAndTerminate,
                              .tls = *tls},
                             std::move(site));
  if (!listening) return tl::unexpected(listening.error());

  const std::string address = fmt::format("http://127.0.0.1:{}/", (*listening)->port());
  say(fmt::format("Repwright is at {}", address));
  const auto link = owner_link(gate, options, address);
  if (!link) return tl::unexpected(link.error());
  if (const auto& words = *link) say("The owner signs in with this link, once: " + *words);
  if (!built) say("The page is not built; the addresses below /api answer all the same.");
  if (const auto& known = *tls)
    if (auto said = say_how_to_reach(names, (*listening)->port(), known->authority); !said) return said;
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
