#include "api/cookies.hpp"

#include <gtest/gtest.h>

namespace repwright::api {
namespace {

TEST(CookieValue, IsFoundByItsWholeName) {
  EXPECT_EQ(cookie_value("session=abc", "session"), "abc");
  EXPECT_EQ(cookie_value("a=1; session=abc=d; b=2", "session"), "abc=d");
  EXPECT_EQ(cookie_value("mysession=abc; session2=x", "session"), "");
  EXPECT_EQ(cookie_value("", "session"), "");
  EXPECT_EQ(cookie_value("session", "session"), "");
  EXPECT_EQ(cookie_value(";;=;session=", "session"), "");
}

TEST(SessionCookie, IsKeptFromScriptsAndOtherSites) {
  EXPECT_EQ(session_cookie({}, "abc", 60), "session=abc; Path=/; HttpOnly; SameSite=Strict; Max-Age=60");
}

TEST(SessionCookie, OfAnEncryptedPageIsNotThatOfAPlainOne) {
  Request encrypted;
  encrypted.secure = true;
  encrypted.cookies = "session=plain; __Host-session=encrypted";
  Request plain = encrypted;
  plain.secure = false;
  EXPECT_EQ(session_in(encrypted), "encrypted");
  EXPECT_EQ(session_in(plain), "plain");
  EXPECT_EQ(session_cookie(encrypted, "abc", 60),
            "__Host-session=abc; Path=/; HttpOnly; SameSite=Strict; Max-Age=60; Secure");
}

Request from(std::string origin, std::string fetch_site, std::string type) {
  Request request;
  request.host = "127.0.0.1:8750";
  request.origin = std::move(origin);
  request.fetch_site = std::move(fetch_site);
  request.content_type = std::move(type);
  return request;
}

TEST(IsFromOurPage, BelievesWhatTheBrowserSaysOfTheOtherSite) {
  EXPECT_TRUE(is_from_our_page(from("http://127.0.0.1:8750", "same-origin", "text/plain")));
  EXPECT_TRUE(is_from_our_page(from("", "same-origin", "")));
  EXPECT_TRUE(is_from_our_page(from("https://127.0.0.1:8750", "", "")));
  EXPECT_FALSE(is_from_our_page(from("http://elsewhere", "", "application/json")));
  EXPECT_FALSE(is_from_our_page(from("null", "", "application/json")));
  EXPECT_FALSE(is_from_our_page(from("http://127.0.0.1:8751", "same-site", "application/json")));
  EXPECT_FALSE(is_from_our_page(from("http://127.0.0.1:8750", "cross-site", "application/json")));
  EXPECT_FALSE(is_from_our_page(from("", "none", "application/json")));
}

TEST(IsFromOurPage, BelievesNoPlainPageOnceItIsEncrypted) {
  Request encrypted = from("http://127.0.0.1:8750", "", "application/json");
  encrypted.secure = true;
  EXPECT_FALSE(is_from_our_page(encrypted));
  encrypted.origin = "https://127.0.0.1:8750";
  EXPECT_TRUE(is_from_our_page(encrypted));
}

TEST(IsFromOurPage, AsksWithoutThatForAContentThatNoFormSends) {
  EXPECT_TRUE(is_from_our_page(from("", "", "application/json; charset=utf-8")));
  EXPECT_TRUE(is_from_our_page(from("", "", "text/csv")));
  for (const char* type : {"", "text/plain", "Text/Plain; charset=utf-8", "application/x-www-form-urlencoded",
                           "multipart/form-data; boundary=x"})
    EXPECT_FALSE(is_from_our_page(from("", "", type))) << type;
}

}  // namespace
}  // namespace repwright::api
