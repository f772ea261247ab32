#include <gmock/gmock.h>

#include "filled_store.hpp"

/// What every store promises of who may sign in; a gym folder has no place for it.
namespace repwright {
namespace {

using base::ErrorCode;
using test::kim;
using test::lou;
using testing::ElementsAre;

class AccountsContract : public test::FilledStore {};

TEST_P(AccountsContract, KeepsWhoMaySignIn) {
  if (in_a_folder()) {
    EXPECT_EQ(store_->accounts(), nullptr);
    return;
  }
  store::Accounts& accounts = *store_->accounts();
  const domain::Account owner{"Kim", domain::Role::Owner, "hash", "", "", {}};
  const domain::Account person{"Hyun-ae", domain::Role::Person, "pin", "link", "", {"a07"}};
  ASSERT_TRUE(accounts.put_first_owner(owner, kim));
  EXPECT_EQ(code(accounts.put_first_owner(owner, kim)), ErrorCode::Conflict);
  ASSERT_TRUE(accounts.put(person, kim));
  const domain::Account screen{"The wall", domain::Role::Screen, "", "link of the wall", "", {}};
  ASSERT_TRUE(accounts.put(screen, kim));
  EXPECT_THAT(*reopened().accounts()->all(), ElementsAre(person, owner, screen));
  EXPECT_EQ(*reopened().accounts()->called("Kim"), owner);
  EXPECT_EQ(*reopened().accounts()->called("nobody"), std::nullopt);
}

TEST_P(AccountsContract, KeepsWhichBrowsersAreSignedIn) {
  if (in_a_folder()) {
    EXPECT_EQ(store_->accounts(), nullptr);
    return;
  }
  store::Accounts& accounts = *store_->accounts();
  const domain::Account kim_account{"Kim", domain::Role::Owner, "hash", "", "", {}};
  const domain::SignedIn browser{"token", "Kim", kim.when};
  EXPECT_EQ(code(accounts.sign_in(browser)), ErrorCode::NotFound);
  ASSERT_TRUE(accounts.put(kim_account, kim));
  ASSERT_TRUE(accounts.sign_in(browser));
  EXPECT_EQ(*reopened().accounts()->find("token"), browser);
  ASSERT_TRUE(accounts.put(kim_account, kim));
  EXPECT_EQ(*accounts.find("token"), std::nullopt) << "a replaced account is signed out everywhere";
  ASSERT_TRUE(accounts.sign_in(browser));
  ASSERT_TRUE(accounts.sign_out("token"));
  EXPECT_EQ(*reopened().accounts()->find("token"), std::nullopt);
}

TEST_P(AccountsContract, LeavesInTheTrailWhatWasDoneToAccounts) {
  if (in_a_folder()) {
    EXPECT_EQ(store_->accounts(), nullptr);
    return;
  }
  store::Accounts& accounts = *store_->accounts();
  domain::Account jo{"Jo", domain::Role::Relief, "hash", "", "sat-24", {}};
  EXPECT_EQ(code(accounts.sign_out_everywhere("Jo", kim)), ErrorCode::NotFound);
  EXPECT_EQ(code(accounts.remove("Jo", kim)), ErrorCode::NotFound);
  ASSERT_TRUE(accounts.put(jo, kim));
  ASSERT_TRUE(accounts.sign_in({"token", "Jo", kim.when}));
  ASSERT_TRUE(accounts.sign_out_everywhere("Jo", lou));
  EXPECT_EQ(*accounts.find("token"), std::nullopt);
  jo.role = domain::Role::Coach;
  jo.class_id.clear();
  ASSERT_TRUE(accounts.put(jo, kim));
  ASSERT_TRUE(accounts.put(jo, kim));
  ASSERT_TRUE(accounts.sign_in({"token", "Jo", kim.when}));
  ASSERT_TRUE(accounts.remove("Jo", lou));
  EXPECT_EQ(*accounts.find("token"), std::nullopt);
  EXPECT_TRUE(reopened().accounts()->all()->empty());
  std::vector<std::string> told;
  const auto trail = reopened().trail({});
  for (const domain::TrailLine& line : trail.value()) told.push_back(line.by.who + ", " + line.what);
  EXPECT_THAT(told, ElementsAre("Lou, account Jo: taken away", "Kim, account Jo: new password",
                                "Kim, account Jo: now coach, was relief, new password",
                                "Lou, account Jo: signed out everywhere", "Kim, account Jo: made as relief",
                                "Kim, gym"));
}

INSTANTIATE_TEST_SUITE_P(Every, AccountsContract, test::every_store, test::name_of_store);

}  // namespace
}  // namespace repwright
