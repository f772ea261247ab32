#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <string>

#include "base/civil_date.hpp"
#include "base/clock_text.hpp"
#include "base/text.hpp"
#include "base/utf8.hpp"

namespace repwright::base {
namespace {

/// Words over three letters, so that distances are small and swaps common.
rc::Gen<std::string> words() {
  return rc::gen::container<std::string>(rc::gen::element('a', 'b', 'c'));
}

RC_GTEST_PROP(EditDistance, IsZeroForEqualWordsOnly, ()) {
  const auto a = *words();
  const auto b = *words();
  RC_ASSERT((edit_distance(a, b, 1000) == 0) == (a == b));
}

RC_GTEST_PROP(EditDistance, IsTheSameBothWays, ()) {
  const auto a = *words();
  const auto b = *words();
  RC_ASSERT(edit_distance(a, b, 1000) == edit_distance(b, a, 1000));
}

RC_GTEST_PROP(EditDistance, LiesBetweenTheDifferenceInLengthAndTheLongerLength, ()) {
  const auto a = *words();
  const auto b = *words();
  const int distance = edit_distance(a, b, 1000);
  RC_ASSERT(distance <= static_cast<int>(std::max(a.size(), b.size())));
  RC_ASSERT(distance >= std::abs(static_cast<int>(a.size()) - static_cast<int>(b.size())));
}

RC_GTEST_PROP(EditDistance, IsCutAtItsLimitAndNowhereElse, ()) {
  const auto a = *words();
  const auto b = *words();
  const int limit = *rc::gen::inRange(0, 8);
  RC_ASSERT(edit_distance(a, b, limit) == std::min(edit_distance(a, b, 1000), limit + 1));
}

RC_GTEST_PROP(Utf8, IsValidAfterRepairAndKeepsItsLength, (const std::string& bytes)) {
  const std::string repaired = repair_utf8(bytes);
  RC_ASSERT(is_valid_utf8(repaired));
  RC_ASSERT(repair_utf8(repaired) == repaired);
  RC_ASSERT(utf8_length(repaired) == utf8_length(bytes));
  RC_ASSERT(is_valid_utf8(bytes) == (repaired == bytes));
}

RC_GTEST_PROP(Split, IsUndoneByJoining, (const std::string& text)) {
  std::string joined;
  for (const auto part : split(text, 'a')) joined += "a" + std::string(part);
  RC_ASSERT(joined == "a" + text);
}

RC_GTEST_PROP(Clock, ReadsBackTheWholeSecondsThatItShows, ()) {
  const int seconds = *rc::gen::inRange(0, 100 * 3600);
  RC_ASSERT(parse_clock(format_clock(seconds * second)).value() == seconds * second);
}

RC_GTEST_PROP(Clock, NeverTripsOverWhatPeopleType, ()) {
  const auto text =
      *rc::gen::container<std::string>(rc::gen::element('0', '5', '9', ':', '.', ',', ' ', 'x'));
  const auto time = parse_clock(text);
  if (time) RC_ASSERT(time->si() >= 0 && std::isfinite(time->si()));
}

RC_GTEST_PROP(Date, IsReadBackAsWrittenAndDaysAddUp, ()) {
  const std::chrono::sys_days first =
      std::chrono::sys_days(std::chrono::days(*rc::gen::inRange(-700000, 2900000)));
  const int later = *rc::gen::inRange(-10000, 10000);
  const std::chrono::year_month_day from(first);
  const std::chrono::year_month_day to(first + std::chrono::days(later));
  RC_ASSERT(parse_date(format_date(from)).value() == from);
  RC_ASSERT(days_between(from, to) == later);
}

RC_GTEST_PROP(TimeOfDay, IsReadBackAsWritten, ()) {
  const int minute_of_day = *rc::gen::inRange(0, 1440);
  RC_ASSERT(parse_time_of_day(format_time_of_day(minute_of_day)).value() == minute_of_day);
}

}  // namespace
}  // namespace repwright::base
