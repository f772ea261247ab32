#pragma once

#include <atomic>
#include <chrono>
#include <string>
#include <utility>

#include "api/cookies.hpp"
#include "api/route_table.hpp"
#include "solver/cbc_solver.hpp"
#include "store/memory_store.hpp"
#include "support/demo_gym.hpp"

namespace repwright::test {

/// A vault that anybody can look into; quick.
class GlassVault final : public app::Vault {
 public:
  std::string secret_hash(std::string_view secret) override { return "hash of " + std::string(secret); }
  bool matches(const std::string& hash, std::string_view secret) override {
    return hash == "hash of " + std::string(secret);
  }
  std::string random_token() override { return "token-" + std::to_string(++count_); }
  std::string token_hash(std::string_view token) override { return "kept " + std::string(token); }

 private:
  std::atomic<int> count_ = 0;
};

/// The demo gym with everything that the routes need, at a time that the test sets.
class FrontDesk {
 public:
  FrontDesk() : opened_desk(opened()), desk(*opened_desk), gate(accounts, vault, [this] { return now; }) {}

  static constexpr const char* front_desk = "front desk";  // makes the accounts of the tests

  /// The browser of somebody of that role, signed in: its header Cookie. Relief takes `sat-24`, the person is
  /// `a07`.
  std::string cookie_of(domain::Role role) {
    const std::string name(domain::name_of(role));
    domain::Account account{
        .name = name, .role = role, .secret_hash = {}, .link_hash = {}, .class_id = {}, .person = {}};
    if (role == domain::Role::Relief) account.class_id = "sat-24";
    if (role == domain::Role::Person) account.person = {"a07"};
    const std::string token = vault.random_token();
    if (!accounts.put(account, {front_desk, now}) ||
        !accounts.sign_in({vault.token_hash(token), name, now + std::chrono::hours(1)}))
      throw std::runtime_error("cannot sign in");
    return std::string(api::session_cookie_name({})) + "=" + token;
  }

  /// What was changed since the gym was put there, oldest first.
  std::vector<std::string> changes() {
    std::vector<std::string> out;
    const auto trail = store.trail({.most = 100});
    for (const domain::TrailLine& line : trail.value())
      if (line.by.who != front_desk) out.insert(out.begin(), line.by.who + ": " + line.what);
    out.erase(out.begin());
    return out;
  }

  api::Response ask(api::Method method, std::string path, std::string body, std::string cookies) {
    api::Request request;
    request.method = method;
    request.path = std::move(path);
    request.body = std::move(body);
    request.cookies = std::move(cookies);
    request.content_type = "application/json";
    return ask(request);
  }
  api::Response ask(const api::Request& request) {
    return api::respond(request, {desk, gate, store, [this] { return now + ms; }, solver}, {});
  }

  std::chrono::sys_seconds now{std::chrono::sys_days{std::chrono::year{2027} / 5 / 14}};
  std::chrono::milliseconds ms{0};  // beyond `now`
  GlassVault vault;
  solver::CbcSolver solver;
  store::MemoryStore store;
  store::Accounts& accounts = *store.accounts();
  std::unique_ptr<app::Desk> opened_desk;
  app::Desk& desk;
  app::Gate gate;

 private:
  std::unique_ptr<app::Desk> opened() {
    const auto put = store.put_gym(demo_folder(), std::nullopt, {"owner", now});
    auto made =
        app::Desk::open({.mark = [this] { return store.mark(); }, .load = [this] { return loaded(); }});
    if (!put || !made) throw std::runtime_error("cannot open the demo gym");
    return std::move(*made);
  }
  base::Result<app::OpenGym> loaded() {
    const auto& knows = demo_gym()->knowledge;
    return store.gym(knows.catalogue).map([&](store::KeptGym kept) {
      return app::open_gym(std::move(kept), knows.catalogue, knows.constants);
    });
  }
};

}  // namespace repwright::test
