#pragma once

#include <map>
#include <mutex>

#include "app/accounts.hpp"

namespace repwright::app {

/// Accounts that end with the program: for a gym folder, which has no place for them, and for tests.
class MemoryAccounts final : public Accounts {
 public:
  base::Result<std::vector<Account>> all() override;
  base::Result<void> put(const Account& account) override;
  base::Result<void> put_first_owner(const Account& account) override;
  base::Result<void> sign_in(const SignedIn& browser) override;
  base::Result<std::optional<SignedIn>> find(const std::string& token_hash) override;
  base::Result<void> sign_out(const std::string& token_hash) override;

 private:
  std::mutex busy_;
  std::map<std::string, Account> accounts_;   // by name
  std::map<std::string, SignedIn> browsers_;  // by token hash
};

}  // namespace repwright::app
