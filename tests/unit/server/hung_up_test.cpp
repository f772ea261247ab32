#include "server/hung_up.hpp"

#include <gtest/gtest.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>

namespace repwright {
namespace {

using server::has_hung_up;

struct HungUp : testing::Test {
  HungUp() { EXPECT_EQ(::socketpair(AF_UNIX, SOCK_STREAM, 0, ends.data()), 0); }
  ~HungUp() override {
    for (const int end : ends) ::close(end);
  }
  int ours() const { return ends[0]; }
  int theirs() const { return ends[1]; }
  std::array<int, 2> ends{};
};

TEST_F(HungUp, IsNobodyWhoIsSilentOrStillSends) {
  EXPECT_FALSE(has_hung_up(ours()));
  ASSERT_EQ(::send(theirs(), "more", 4, 0), 4);
  EXPECT_FALSE(has_hung_up(ours()));
}

TEST_F(HungUp, IsWhoEndedTheirSideAlsoBehindUnreadWords) {
  ASSERT_EQ(::send(theirs(), "bye", 3, 0), 3);
  ASSERT_EQ(::shutdown(theirs(), SHUT_WR), 0);
  EXPECT_TRUE(has_hung_up(ours()));
}

TEST(HungUpSocket, IsOneThatIsNone) {
  EXPECT_TRUE(has_hung_up(1'000'000));
}

}  // namespace
}  // namespace repwright
