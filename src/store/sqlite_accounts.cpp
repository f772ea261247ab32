#include "store/sqlite_accounts.hpp"

namespace repwright::store {

using base::ErrorCode;
using base::Result;
using domain::Account;
using domain::SignedIn;

namespace {

Account account_of(const SqlRow& row) {
  return {.name = text_in(row[0]),
          .role = domain::role_of(text_in(row[1])).value_or(domain::Role::Person),
          .secret_hash = text_in(row[2]),
          .link_hash = text_in(row[3]),
          .class_id = text_in(row[4]),
          .person = {text_in(row[5])}};
}

constexpr const char* columns = "SELECT name, role, secret_hash, link_hash, class, person FROM account ";

std::optional<Account> account_called(Sqlite& db, const std::string& name) {
  const auto found = db.rows(std::string(columns) + "WHERE name = ?1", {name});
  return found.empty() ? std::nullopt : std::optional(account_of(found[0]));
}

void sign_out_of(Sqlite& db, const std::string& name) {
  db.rows("DELETE FROM browser WHERE account = ?1", {name});
}

void put_in(Sqlite& db, const Account& account) {
  sign_out_of(db, account.name);
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
    for (const SqlRow& row : db.rows(std::string(columns) + "ORDER BY name")) out.push_back(account_of(row));
    return out;
  });
}

Result<std::optional<Account>> SqliteAccounts::called(const std::string& name) {
  return file_.read([&](Sqlite& db) -> Result<std::optional<Account>> { return account_called(db, name); });
}

Result<void> SqliteAccounts::put(const Account& account, const domain::Stamp& by) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    leave_trail(db, by, trail_words(account, account_called(db, account.name)));
    put_in(db, account);
    return {};
  });
}

Result<void> SqliteAccounts::put_first_owner(const Account& account, const domain::Stamp& by) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    if (db.number("SELECT count(*) FROM account WHERE role = 'owner'") > 0)
      return base::failure(ErrorCode::Conflict, "this gym has its owner");
    put_in(db, account);
    leave_trail(db, by, trail_words(account, std::nullopt));
    return {};
  });
}

Result<void> SqliteAccounts::sign_out_everywhere(const std::string& name, const domain::Stamp& by) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    if (!account_called(db, name)) return no_account(name);
    sign_out_of(db, name);
    leave_trail(db, by, "account " + name + ": signed out everywhere");
    return {};
  });
}

Result<void> SqliteAccounts::remove(const std::string& name, const domain::Stamp& by) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    if (!account_called(db, name)) return no_account(name);
    sign_out_of(db, name);
    db.rows("DELETE FROM account WHERE name = ?1", {name});
    leave_trail(db, by, "account " + name + ": taken away");
    return {};
  });
}

Result<void> SqliteAccounts::sign_in(const SignedIn& browser) {
  return file_.write([&](Sqlite& db) -> Result<void> {
    if (!account_called(db, browser.account)) return no_account(browser.account);
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
