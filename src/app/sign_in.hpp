#pragma once

#include <chrono>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/attempts.hpp"
#include "app/vault.hpp"
#include "domain/account.hpp"
#include "store/accounts.hpp"

/// Signing in and out: the owner's first start, coaches by name and password, people by their link and PIN.
namespace repwright::app {

using domain::Account;
using domain::Role;

inline constexpr std::chrono::seconds coach_stays = std::chrono::hours(24 * 30);
inline constexpr std::chrono::seconds person_stays = std::chrono::hours(24 * 180);
inline constexpr std::chrono::seconds screen_stays = std::chrono::hours(24 * 365);

/// How a sign-in ended well: what the browser keeps, for how long.
struct Ticket {
  std::string token;
  Account account;
  std::chrono::seconds stays{};
};

/// A sign-in that was refused; `rest` is above zero if the name or link must wait so long.
struct Refusal {
  base::Error error;
  std::chrono::seconds rest{};
  bool wrong_secret = false;
};

class Gate {
 public:
  Gate(store::Accounts& accounts, Vault& vault, std::function<std::chrono::sys_seconds()> now)
      : accounts_(accounts), vault_(vault), now_(std::move(now)) {}

  std::chrono::sys_seconds now() const { return now_(); }
  /// The day of the gym's clock (UTC).
  std::chrono::year_month_day today() const { return std::chrono::floor<std::chrono::days>(now_()); }

  /// A token that signs in the owner once, while this program runs; an earlier one is of no use any more.
  std::string new_owner_token();
  /// Whether nobody owns the gym yet.
  base::Result<bool> first_start();

  /// Takes the one-time token and makes the owner, or signs in as the owner who is there. An empty password:
  /// an owner who can only come by such a token.
  tl::expected<Ticket, Refusal> enter_as_owner(const std::string& token, const std::string& name,
                                               const std::string& password);
  tl::expected<Ticket, Refusal> enter(const std::string& name, const std::string& password);
  /// A person with their own link and PIN; a screen, or who takes one class, with their link alone.
  tl::expected<Ticket, Refusal> enter_by_link(const std::string& link, const std::string& pin);

  /// The account of a browser, if it is signed in.
  base::Result<std::optional<Account>> who(const std::string& token);
  base::Result<void> leave(const std::string& token);

  base::Result<std::vector<Account>> accounts() { return accounts_.all(); }
  /// Makes or replaces an account. Returns the link of a person, of a screen, and of a relief coach without a
  /// password; else nothing. Fails with Invalid for a password under 10 characters, a PIN that is not 4 to 8
  /// digits, or a name that is empty; with Conflict for a change that leaves the gym without an owner. `by`
  /// is who does it.
  base::Result<std::string> keep(Account account, const std::string& secret, const std::string& by);
  /// Signs an account out wherever it is signed in. Fails with NotFound.
  base::Result<void> sign_out(const std::string& name, const std::string& by);
  /// Takes an account away. Fails with NotFound, and with Conflict for the last owner.
  base::Result<void> remove(const std::string& name, const std::string& by);

 private:
  tl::expected<Ticket, Refusal> ticket_for(const Account& account);
  tl::expected<Ticket, Refusal> checked(const std::string& key, const std::optional<Account>& account,
                                        const std::string& secret);
  base::Result<void> leaves_an_owner(const std::string& name);

  store::Accounts& accounts_;
  Vault& vault_;
  std::function<std::chrono::sys_seconds()> now_;
  Attempts attempts_;
  std::mutex busy_;
  std::string owner_token_hash_;  // empty: none is out
};

}  // namespace repwright::app
