#include "store/memory_accounts.hpp"

#include <algorithm>

namespace repwright::store {

using domain::Account;
using domain::Role;
using domain::SignedIn;

base::Result<std::vector<Account>> MemoryAccounts::all() {
  const std::scoped_lock lock(busy_);
  std::vector<Account> out;
  out.reserve(accounts_.size());
  for (const auto& [name, account] : accounts_) out.push_back(account);
  return out;
}

base::Result<std::optional<Account>> MemoryAccounts::called(const std::string& name) {
  const std::scoped_lock lock(busy_);
  const auto known = accounts_.find(name);
  return known == accounts_.end() ? std::nullopt : std::optional(known->second);
}

void MemoryAccounts::told(const domain::Stamp& by, const std::string& what) const {
  if (leave_trail_) leave_trail_(by, what);
}

void MemoryAccounts::sign_out_of(const std::string& name) {
  std::erase_if(browsers_, [&](const auto& each) { return each.second.account == name; });
}

base::Result<void> MemoryAccounts::put(const Account& account, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  const auto known = accounts_.find(account.name);
  const auto before = known == accounts_.end() ? std::nullopt : std::optional(known->second);
  accounts_[account.name] = account;
  sign_out_of(account.name);
  told(by, trail_words(account, before));
  return {};
}

base::Result<void> MemoryAccounts::put_first_owner(const Account& account, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  const bool owned =
      std::ranges::any_of(accounts_, [](const auto& each) { return each.second.role == Role::Owner; });
  if (owned) return base::failure(base::ErrorCode::Conflict, "this gym has its owner");
  accounts_[account.name] = account;
  told(by, trail_words(account, std::nullopt));
  return {};
}

base::Result<void> MemoryAccounts::sign_out_everywhere(const std::string& name, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  if (!accounts_.contains(name)) return no_account(name);
  sign_out_of(name);
  told(by, "account " + name + ": signed out everywhere");
  return {};
}

base::Result<void> MemoryAccounts::remove(const std::string& name, const domain::Stamp& by) {
  const std::scoped_lock lock(busy_);
  if (accounts_.erase(name) == 0) return no_account(name);
  sign_out_of(name);
  told(by, "account " + name + ": taken away");
  return {};
}

std::set<std::string> MemoryAccounts::remove_those_of(const domain::PersonId& person) {
  const std::scoped_lock lock(busy_);
  std::set<std::string> names;
  for (const auto& [name, account] : accounts_)
    if (account.person == person) names.insert(name);
  for (const std::string& name : names) {
    accounts_.erase(name);
    sign_out_of(name);
  }
  return names;
}

base::Result<void> MemoryAccounts::sign_in(const SignedIn& browser) {
  const std::scoped_lock lock(busy_);
  if (!accounts_.contains(browser.account)) return no_account(browser.account);
  browsers_[browser.token_hash] = browser;
  return {};
}

base::Result<std::optional<SignedIn>> MemoryAccounts::find(const std::string& token_hash) {
  const std::scoped_lock lock(busy_);
  const auto known = browsers_.find(token_hash);
  return known == browsers_.end() ? std::nullopt : std::optional(known->second);
}

base::Result<void> MemoryAccounts::sign_out(const std::string& token_hash) {
  const std::scoped_lock lock(busy_);
  browsers_.erase(token_hash);
  return {};
}

}  // namespace repwright::store
