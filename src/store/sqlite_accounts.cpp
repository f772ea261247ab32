#include "store/sqlite_accounts.hpp"

namespace repwright::store {

using base::ErrorCode;
using base::Result;
using domain::Account;
using domain::SignedIn;

namespace {

void put_in(Sqlite& db, const Account& account) {
  db.rows("DELETE FROM browser WHERE account = ?1", {account.name});
  db.rows(
      "INSERT INTO account (name, role, secret_hash, link_hash, class, person) VALUES (?1, ?2, ?3, ?4, ?5, "
      "?6) "
      "ON CONFLICT (name) DO UPDATE SET role = ?2, secret_hash = ?3, link_hash = ?4, class = ?5, person = ?6",
      {account.name, std::string(name_of(account.role)), account.secret_hash, account.link_hash,
       account.class_id, account.person.text});
}

}  // namespace

Result<std::vector<Account>> SqliteAccounts::all() {
  return file_.read([](Sqlite& db) -> Result<std::vector<Account>> {
    std::vector<Account> out;
    for (const SqlRow& row :
         db.rows("SELECT name, role, secret_hash, link_hash, class, person FROM account ORDER BY name"))
      out.push_back({.name = text_in(row[0]),
                     .role = domain::role_of(text_in(row[1])).value_or(domain::Role::Person),
                     .secret_hash = text_in(row[2]),
                     .link_hash = text_in(row[3]),
                     .class_id = text_in(row[4]),
                     .person = {text_in(row[5])}});
    return out;
  });
}

Result<void> SqliteAccounts::put(const Account& account) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    put_in(db, account);
    return {};
  });
}

Result<void> SqliteAccounts::put_first_owner(const Account& account) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    if (db.number("SELECT count(*) FROM account WHERE role = 'owner'") > 0)
      return base::failure(ErrorCode::Conflict, "this gym has its owner");
    put_in(db, account);
    return {};
  });
}

Result<void> SqliteAccounts::sign_in(const SignedIn& browser) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    if (db.number("SELECT count(*) FROM account WHERE name = ?1", {browser.account}) == 0)
      return base::failure(ErrorCode::NotFound, "no account is called '" + browser.account + "'");
    db.rows("INSERT OR REPLACE INTO browser (token_hash, account, until) VALUES (?1, ?2, ?3)",
            {browser.token_hash, browser.account, seconds_of(browser.until)});
    return {};
  });
}

Result<std::optional<SignedIn>> SqliteAccounts::find(const std::string& token_hash) {
  return file_.read([&](Sqlite& db) -> Result<std::optional<SignedIn>> {
    const auto found =
        db.rows("SELECT token_hash, account, until FROM browser WHERE token_hash = ?1", {token_hash});
    if (found.empty()) return std::optional<SignedIn>();
    const SqlRow& row = found[0];
    return SignedIn{text_in(row[0]), text_in(row[1]), instant_of(row[2])};
  });
}

Result<void> SqliteAccounts::sign_out(const std::string& token_hash) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    db.rows("DELETE FROM browser WHERE token_hash = ?1", {token_hash});
    return {};
  });
}

}  // namespace repwright::store
