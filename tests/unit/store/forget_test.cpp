#include "store/forget.hpp"

#include <gtest/gtest.h>

namespace repwright::store {
namespace {

const Leaver leaver{{"a01"}, "Ann Other", {"Ann"}};

TEST(NamelessText, TakesOutTheNameWhereItStandsAlone) {
  EXPECT_EQ(nameless_text("Ann Other leads, then Ann Other.", leaver), "somebody leads, then somebody.");
  EXPECT_EQ(nameless_text("Joann Other and Ann Others", leaver), "Joann Other and Ann Others");
  EXPECT_EQ(nameless_text("Ann Othere, Ann Other", leaver), "Ann Othere, somebody");
  EXPECT_EQ(nameless_text("Ann Other\xC3\xA9", leaver), "Ann Other\xC3\xA9");
  EXPECT_EQ(nameless_text("", leaver), "");
}

TEST(NamelessText, LeavesANameOfOneWordWhichMayBeAnotherWord) {
  EXPECT_EQ(nameless_text("Max reps in 2:00", {{"a02"}, "Max", {}}), "Max reps in 2:00");
}

TEST(NamelessTrail, HidesTheirAccountsAlone) {
  EXPECT_EQ(nameless_trail("account Ann: new link and PIN", leaver), "account somebody: new link and PIN");
  EXPECT_EQ(nameless_trail("account Anna: made as coach", leaver), "account Anna: made as coach");
  EXPECT_EQ(nameless_trail("board Ann: x", leaver), "board Ann: x");
}

TEST(NamelessWriter, HidesTheirAccountsAndTheirName) {
  EXPECT_EQ(nameless_writer("Ann", leaver), "somebody");
  EXPECT_EQ(nameless_writer("Ann Other", leaver), "somebody");
  EXPECT_EQ(nameless_writer("Anna", leaver), "Anna");
  EXPECT_EQ(nameless_writer("", leaver), "");
}

TEST(TakeOff, SaysWhetherTheyWereOnAnyList) {
  domain::GymClass gym_class;
  gym_class.booked = {{"a02"}, {"a01"}};
  gym_class.walk_ins = {{"a01"}};
  EXPECT_TRUE(take_off(gym_class, leaver));
  EXPECT_EQ(gym_class.booked, std::vector<domain::PersonId>{{"a02"}});
  EXPECT_TRUE(gym_class.walk_ins.empty());
  EXPECT_FALSE(take_off(gym_class, leaver));
}

}  // namespace
}  // namespace repwright::store
