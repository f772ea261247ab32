#include "store/accounts.hpp"

namespace repwright::store {

tl::unexpected<base::Error> no_account(const std::string& name) {
  return base::failure(base::ErrorCode::NotFound, "no account is called '" + name + "'");
}

std::string trail_words(const domain::Account& account, const std::optional<domain::Account>& before) {
  std::string words = "account " + account.name + ": ";
  const std::string role(name_of(account.role));
  if (!before) return words + "made as " + role;
  if (before->role != account.role)
    words += "now " + role + ", was " + std::string(name_of(before->role)) + ", ";
  if (before->class_id != account.class_id && !account.class_id.empty())
    words += "takes class " + account.class_id + ", ";
  return words + (account.role == domain::Role::Person ? "new link and PIN" : "new password");
}

}  // namespace repwright::store
