#include "domain/finding_help.hpp"

#include <gmock/gmock.h>

#include <algorithm>

#include "domain/rehearsal_names.hpp"

namespace repwright::domain {
namespace {

TEST(FindingHelp, IsMissingOnlyWhereNothingHasToBeDone) {
  std::vector<std::string_view> without;
  for (const FindingKind kind : all_finding_kinds())
    if (help_with(kind).empty()) without.push_back(name_of(kind));
  EXPECT_THAT(without, testing::ElementsAre("limit-swapped", "much-more-than-lately", "uneven-heats"));
}

TEST(FindingHelp, ChalksBetweenPairsOfBackticksAndEndsWithoutAFullStop) {
  for (const FindingKind kind : all_finding_kinds()) {
    const std::string_view help = help_with(kind);
    EXPECT_EQ(std::ranges::count(help, '`') % 2, 0) << name_of(kind);
    EXPECT_FALSE(help.ends_with('.')) << name_of(kind);
  }
}

}  // namespace
}  // namespace repwright::domain
