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

base::Result<void> MemoryAccounts::put(const Account& account) {
  const std::scoped_lock lock(busy_);
  accounts_[account.name] = account;
  std::erase_if(browsers_, [&](const auto& each) { return each.second.account == account.name; });
  return {};
}

base::Result<void> MemoryAccounts::put_first_owner(const Account& account) {
  const std::scoped_lock lock(busy_);
  const bool owned =
      std::ranges::any_of(accounts_, [](const auto& each) { return each.second.role == Role::Owner; });
  if (owned) return base::failure(base::ErrorCode::Conflict, "this gym has its owner");
  accounts_[account.name] = account;
  return {};
}

base::Result<void> MemoryAccounts::sign_in(const SignedIn& browser) {
  const std::scoped_lock lock(busy_);
  if (!accounts_.contains(browser.account))
    return base::failure(base::ErrorCode::NotFound, "no account is called '" + browser.account + "'");
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
