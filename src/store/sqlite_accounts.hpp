#pragma once

#include "store/accounts.hpp"
#include "store/sqlite_file.hpp"

namespace repwright::store {

/// Accounts and signed-in browsers in the tables of a database file.
class SqliteAccounts final : public Accounts {
 public:
  explicit SqliteAccounts(SqliteFile& file) : file_(file) {}
  base::Result<std::vector<domain::Account>> all() override;
  base::Result<std::optional<domain::Account>> called(const std::string& name) override;
  base::Result<void> put(const domain::Account& account, const domain::Stamp& by) override;
  base::Result<void> put_first_owner(const domain::Account& account, const domain::Stamp& by) override;
  base::Result<void> sign_out_everywhere(const std::string& name, const domain::Stamp& by) override;
  base::Result<void> remove(const std::string& name, const domain::Stamp& by) override;
  base::Result<void> sign_in(const domain::SignedIn& browser) override;
  base::Result<std::optional<domain::SignedIn>> find(const std::string& token_hash) override;
  base::Result<void> sign_out(const std::string& token_hash) override;

 private:
  SqliteFile& file_;
};

}  // namespace repwright::store
