#include "app/sign_in.hpp"

#include <algorithm>
#include <utility>

#include "base/text.hpp"

namespace repwright::app {
namespace {

using base::ErrorCode;
using domain::SignedIn;
using Outcome = tl::expected<Ticket, Refusal>;

constexpr std::size_t shortest_password = 10;
constexpr std::size_t longest_secret = 200;

tl::unexpected<Refusal> refused(ErrorCode code, std::string message) {
  return tl::unexpected<Refusal>(Refusal{{code, std::move(message)}, {}, false});
}
tl::unexpected<Refusal> refused(const base::Error& error) {
  return tl::unexpected<Refusal>(Refusal{error, {}, false});
}

bool is_pin(std::string_view secret) {
  return secret.size() >= 4 && secret.size() <= 8 &&
         std::ranges::all_of(secret, [](char c) { return c >= '0' && c <= '9'; });
}

/// Whether a link is all that such an account signs in with: nobody types on a screen, and a class is over
/// soon.
bool opens_by_link(Role role, std::string_view secret) {
  return secret.empty() && (role == Role::Screen || role == Role::Relief);
}

std::chrono::seconds stay_of(Role role) {
  if (role == Role::Screen) return screen_stays;
  return role == Role::Person ? person_stays : coach_stays;
}

/// What is wrong with the secret of such an account; empty if nothing.
std::string fault_of(Role role, std::string_view secret) {
  if (role == Role::Person) return is_pin(secret) ? "" : "a PIN has 4 to 8 digits";
  if (opens_by_link(role, secret)) return "";
  if (role == Role::Screen) return "a screen has a link and no password";
  if (secret.size() < shortest_password) return "a password has at least 10 characters";
  return secret.size() > longest_secret ? "a password has at most 200 characters" : "";
}

template <class Fits>
std::optional<Account> first(const std::vector<Account>& accounts, Fits fits) {
  const auto found = std::ranges::find_if(accounts, fits);
  return found == accounts.end() ? std::nullopt : std::optional(*found);
}

}  // namespace

std::string Gate::new_owner_token() {
  std::string token = vault_.random_token();
  const std::scoped_lock lock(busy_);
  owner_token_hash_ = vault_.token_hash(token);
  return token;
}

base::Result<bool> Gate::first_start() {
  return accounts_.all().map([](const std::vector<Account>& all) {
    return std::ranges::none_of(all, [](const Account& each) { return each.role == Role::Owner; });
  });
}

Outcome Gate::ticket_for(const Account& account) {
  Ticket ticket{vault_.random_token(), account, stay_of(account.role)};
  const auto kept = accounts_.sign_in({vault_.token_hash(ticket.token), account.name, now_() + ticket.stays});
  if (!kept) return refused(kept.error());
  return ticket;
}

Outcome Gate::enter_as_owner(const std::string& token, const std::string& name, const std::string& password) {
  const std::scoped_lock lock(busy_);
  if (owner_token_hash_.empty() || vault_.token_hash(token) != owner_token_hash_)
    return refused(ErrorCode::NotFound, "this link was used before, or the program was started again since");
  const auto all = accounts_.all();
  if (!all) return refused(all.error());
  auto owner = first(*all, [](const Account& each) { return each.role == Role::Owner; });
  if (!owner) {
    owner = Account{
        .name = name, .role = Role::Owner, .secret_hash = {}, .link_hash = {}, .class_id = {}, .person = {}};
    if (base::trim(name).empty()) return refused(ErrorCode::Invalid, "a name is missing");
    if (!password.empty()) {
      if (std::string fault = fault_of(Role::Owner, password); !fault.empty())
        return refused(ErrorCode::Invalid, std::move(fault));
      owner->secret_hash = vault_.secret_hash(password);
    }
    if (const auto made = accounts_.put_first_owner(*owner, {name, now_()}); !made)
      return refused(made.error());
  }
  owner_token_hash_.clear();
  return ticket_for(*owner);
}

Outcome Gate::checked(const std::string& key, const std::optional<Account>& account,
                      const std::string& secret) {
  const auto rest = attempts_.begin(key, now_());
  if (rest > std::chrono::seconds::zero())
    return tl::unexpected<Refusal>(Refusal{{ErrorCode::Unavailable, "too many wrong attempts"}, rest, false});
  // A name that nobody has takes as long as one that somebody has.
  if (!account || account->secret_hash.empty()) vault_.secret_hash(secret);
  if (!account || account->secret_hash.empty() || !vault_.matches(account->secret_hash, secret))
    return tl::unexpected<Refusal>(
        Refusal{{ErrorCode::Invalid, "the name, link, password or PIN is not right"}, {}, true});
  attempts_.succeeded(key);
  return ticket_for(*account);
}

Outcome Gate::enter(const std::string& name, const std::string& password) {
  const auto all = accounts_.all();
  if (!all) return refused(all.error());
  return checked(
      "name " + name,
      first(*all, [&](const Account& each) { return each.role != Role::Person && each.name == name; }),
      password);
}

Outcome Gate::enter_by_link(const std::string& link, const std::string& pin) {
  const auto all = accounts_.all();
  if (!all) return refused(all.error());
  const std::string hash = vault_.token_hash(link);
  const auto account = first(*all, [&](const Account& each) { return each.link_hash == hash; });
  if (account && opens_by_link(account->role, account->secret_hash)) return ticket_for(*account);
  return checked("link " + hash, account, pin);
}

base::Result<std::optional<Account>> Gate::who(const std::string& token) {
  if (token.empty()) return std::optional<Account>();
  const auto browser = accounts_.find(vault_.token_hash(token));
  if (!browser) return tl::unexpected(browser.error());
  const SignedIn known = browser->value_or(SignedIn{});
  if (known.account.empty() || known.until <= now_()) return std::optional<Account>();
  return accounts_.called(known.account);
}

base::Result<void> Gate::leave(const std::string& token) {
  return accounts_.sign_out(vault_.token_hash(token));
}

/// Whether somebody owns the gym without the account of that name.
base::Result<void> Gate::leaves_an_owner(const std::string& name) {
  const auto all = accounts_.all();
  if (!all) return tl::unexpected(all.error());
  bool is_owner = false;
  bool another = false;
  for (const Account& each : *all) {
    if (each.role != Role::Owner) continue;
    is_owner = is_owner || each.name == name;
    another = another || each.name != name;
  }
  if (is_owner && !another)
    return base::failure(ErrorCode::Conflict, "the gym needs an owner: make another one first");
  return {};
}

base::Result<void> Gate::sign_out(const std::string& name, const std::string& by) {
  return accounts_.sign_out_everywhere(name, {by, now_()});
}

base::Result<void> Gate::remove(const std::string& name, const std::string& by) {
  const std::scoped_lock lock(busy_);
  if (auto owned = leaves_an_owner(name); !owned) return owned;
  return accounts_.remove(name, {by, now_()});
}

base::Result<std::string> Gate::keep(Account account, const std::string& secret, const std::string& by) {
  if (base::trim(account.name).empty()) return base::failure(ErrorCode::Invalid, "a name is missing");
  if (std::string fault = fault_of(account.role, secret); !fault.empty())
    return base::failure(ErrorCode::Invalid, std::move(fault));
  const bool by_link = opens_by_link(account.role, secret);
  account.secret_hash = by_link ? "" : vault_.secret_hash(secret);
  const std::scoped_lock lock(busy_);
  if (account.role != Role::Owner)
    if (auto owned = leaves_an_owner(account.name); !owned) return tl::unexpected(owned.error());
  std::string link;
  account.link_hash.clear();
  if (by_link || account.role == Role::Person) {
    link = vault_.random_token();
    account.link_hash = vault_.token_hash(link);
  }
  return accounts_.put(account, {by, now_()}).map([&] { return std::move(link); });
}

}  // namespace repwright::app
