#pragma once

#include <atomic>
#include <chrono>
#include <string>
#include <utility>

#include "api/cookies.hpp"
#include "api/route_table.hpp"
#include "app/memory_accounts.hpp"
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

/// Remembers what it was told to keep, or refuses.
class NoteKeeper final : public app::Keeper {
 public:
  base::Result<void> keep_board(const std::string& id, const std::string& text) override {
    return note("board " + id + ": " + text);
  }
  base::Result<void> keep_class(const domain::GymClass& gym_class) override {
    return note("class " + gym_class.id);
  }
  base::Result<void> keep_people(const std::vector<domain::Person>& people) override {
    return note(std::to_string(people.size()) + " people");
  }
  base::Result<void> keep_hall(const domain::Hall& hall) override { return note("hall " + hall.name); }
  base::Result<void> keep_house(const domain::House&) override { return note("house"); }

  std::vector<std::string> notes;
  bool full = false;

 private:
  base::Result<void> note(std::string words) {
    if (full) return base::failure(base::ErrorCode::Unavailable, "the disk is full");
    notes.push_back(std::move(words));
    return {};
  }
};

/// The demo gym with everything that the routes need, at a time that the test sets.
class FrontDesk {
 public:
  FrontDesk() : desk(demo_gym()), gate(accounts, vault, [this] { return now; }) {}

  /// The browser of somebody of that role, signed in: its header Cookie. Relief takes `sat-24`, the person is
  /// `a07`.
  std::string cookie_of(app::Role role) {
    const std::string name(app::name_of(role));
    app::Account account{
        .name = name, .role = role, .secret_hash = {}, .link_hash = {}, .class_id = {}, .person = {}};
    if (role == app::Role::Relief) account.class_id = "sat-24";
    if (role == app::Role::Person) account.person = {"a07"};
    const std::string token = vault.random_token();
    if (!accounts.put(account) ||
        !accounts.sign_in({vault.token_hash(token), name, now + std::chrono::hours(1)}))
      throw std::runtime_error("cannot sign in");
    return std::string(api::session_cookie_name) + "=" + token;
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
  api::Response ask(const api::Request& request) { return api::respond(request, {desk, gate, keeper}, {}); }

  std::chrono::sys_seconds now{std::chrono::sys_days{std::chrono::year{2027} / 5 / 14}};
  GlassVault vault;
  app::MemoryAccounts accounts;
  app::Desk desk;
  app::Gate gate;
  NoteKeeper keeper;
};

}  // namespace repwright::test
