#include "store/accounts.hpp"

namespace repwright::store {

tl::unexpected<base::Error> no_account(const std::string& name) {
  return base::failure(base::ErrorCode::NotFound, "no account is called '" + name + "'");
}

namespace {

std::string way_in(const domain::Account& account) {
  if (account.link_hash.empty()) return "new password";
  return account.secret_hash.empty() ? "new link" : "new link and PIN";
}

}  // namespace

std::string trail_words(const domain::Account& account, const std::optional<domain::Account>& before) {
  std::string words = "account " + account.name + ": ";
  const std::string role(name_of(account.role));
  if (!before) return words + "made as " + role;
  if (before->role != account.role)
    words += "now " + role + ", was " + std::string(name_of(before->role)) + ", ";
  if (before->class_id != account.class_id && !account.class_id.empty())
    words += "takes class " + account.class_id + ", ";
  return words + way_in(account);
}

}  // namespace repwright::store
