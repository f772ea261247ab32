#pragma once

#include <map>
#include <mutex>

#include "store/accounts.hpp"

namespace repwright::store {

/// Accounts that end with the program: for a gym folder, which has no place for them, and for tests.
class MemoryAccounts final : public Accounts {
 public:
  base::Result<std::vector<domain::Account>> all() override;
  base::Result<void> put(const domain::Account& account) override;
  base::Result<void> put_first_owner(const domain::Account& account) override;
  base::Result<void> sign_in(const domain::SignedIn& browser) override;
  base::Result<std::optional<domain::SignedIn>> find(const std::string& token_hash) override;
  base::Result<void> sign_out(const std::string& token_hash) override;

 private:
  std::mutex busy_;
  std::map<std::string, domain::Account> accounts_;   // by name
  std::map<std::string, domain::SignedIn> browsers_;  // by token hash
};

}  // namespace repwright::store
