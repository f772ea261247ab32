#pragma once

#include <functional>
#include <map>
#include <mutex>
#include <set>
#include <string>
#include <utility>

#include "store/accounts.hpp"

namespace repwright::store {

/// Accounts that end with the program: for a gym folder, which has no place for them, and for tests.
class MemoryAccounts final : public Accounts {
 public:
  /// `leave_trail` is told what is done to accounts.
  using Trail = std::function<void(const domain::Stamp& by, const std::string& what)>;
  explicit MemoryAccounts(Trail leave_trail = {}) : leave_trail_(std::move(leave_trail)) {}

  base::Result<std::vector<domain::Account>> all() override;
  base::Result<std::optional<domain::Account>> called(const std::string& name) override;
  base::Result<void> put(const domain::Account& account, const domain::Stamp& by) override;
  base::Result<void> put_first_owner(const domain::Account& account, const domain::Stamp& by) override;
  base::Result<void> sign_out_everywhere(const std::string& name, const domain::Stamp& by) override;
  base::Result<void> remove(const std::string& name, const domain::Stamp& by) override;
  /// Takes away the accounts of a person, signed out; their names.
  std::set<std::string> remove_those_of(const domain::PersonId& person);
  base::Result<void> sign_in(const domain::SignedIn& browser) override;
  base::Result<std::optional<domain::SignedIn>> find(const std::string& token_hash) override;
  base::Result<void> sign_out(const std::string& token_hash) override;

 private:
  void told(const domain::Stamp& by, const std::string& what) const;
  void sign_out_of(const std::string& name);

  Trail leave_trail_;
  std::mutex busy_;
  std::map<std::string, domain::Account> accounts_;   // by name
  std::map<std::string, domain::SignedIn> browsers_;  // by token hash
};

}  // namespace repwright::store
