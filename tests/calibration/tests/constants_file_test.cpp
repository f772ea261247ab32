#include "calibration/constants_file.hpp"

#include <gmock/gmock.h>

#include "calibration/tunables.hpp"
#include "store/body_file.hpp"
#include "store/read_file.hpp"
#include "support/shipped.hpp"
#include "support/source_dir.hpp"

namespace repwright::calibration {
namespace {

std::string shipped_text() {
  return store::read_file(test::source_dir() / "data/body.toml").value();
}

TEST(ConstantsFile, ReadsBackWhatWasWritten) {
  std::vector<double> deviations(tunables().size(), .25);
  domain::BodyConstants wished = moved(test::shipped_constants(), deviations);
  const std::string text = with_constants(shipped_text(), wished, "One line.\nAnother.\n");
  EXPECT_THAT(text, testing::HasSubstr("#| One line.\n#| Another.\nversion = 1"));
  auto read = store::read_body_constants(text, "body.toml", test::shipped_catalogue());
  ASSERT_TRUE(read) << read.error().message;
  for (const Tunable& tunable : tunables()) {
    const double wish = constant_of(wished, tunable);
    EXPECT_NEAR(constant_of(*read, tunable), wish, 1e-3 * std::abs(wish))
        << tunable.table << " " << tunable.key;
  }
}

TEST(ConstantsFile, ChangesNothingButItsReportWhenWrittenTwice) {
  const std::string once = with_constants(shipped_text(), test::shipped_constants(), "First.\n");
  const auto read = store::read_body_constants(once, "body.toml", test::shipped_catalogue()).value();
  std::string twice = with_constants(once, read, "First.\n");
  EXPECT_EQ(twice, once);
}

TEST(Tunables, AreCountedInPlausibleDeviationsFromWhereTheyWereSetByHand) {
  std::vector<double> deviations(tunables().size(), .25);
  const std::vector<double> back = deviations_of(moved(test::shipped_constants(), deviations));
  // What is not allowed to go on, such as a share above one, stops where it must.
  for (std::size_t i = 0; i < back.size(); ++i) EXPECT_LE(back[i], .25 + 1e-9) << tunables()[i].key;
  EXPECT_NEAR(back[0], .25, 1e-9);
}

}  // namespace
}  // namespace repwright::calibration
