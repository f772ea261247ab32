#include "server/sodium_vault.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace repwright::server {
namespace {

TEST(SodiumVault, HashesWithArgon2idAndItsOwnSalt) {
  SodiumVault vault;
  const std::string hash = vault.secret_hash("ten letters");
  // The form of RFC 9106's reference implementation; 64 MiB and two passes are libsodium's INTERACTIVE.
  EXPECT_THAT(hash, testing::StartsWith("$argon2id$v=19$m=65536,t=2,p=1$"));
  EXPECT_NE(hash, vault.secret_hash("ten letters"));
  EXPECT_TRUE(vault.matches(hash, "ten letters"));
  EXPECT_FALSE(vault.matches(hash, "ten lettersx"));
  EXPECT_FALSE(vault.matches("nonsense", "ten letters"));
}

TEST(SodiumVault, MakesTokensThatAreNeverTheSame) {
  SodiumVault vault;
  const std::string token = vault.random_token();
  EXPECT_THAT(token, testing::MatchesRegex("[A-Za-z0-9_-]{43}"));
  EXPECT_NE(token, vault.random_token());
}

TEST(SodiumVault, KeepsOfATokenItsBlake2bHash) {
  SodiumVault vault;
  // BLAKE2b with 32 bytes of output, of "abc"; reckoned with Python's hashlib.blake2b (RFC 7693).
  EXPECT_EQ(vault.token_hash("abc"), "vd2BPGNCOXIxce8_7phXm5SWTjuxyz5CcmLIwGjVIxk");
}

}  // namespace
}  // namespace repwright::server
