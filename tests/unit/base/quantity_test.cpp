#include "base/quantity.hpp"

#include <gtest/gtest.h>

#include <concepts>

namespace repwright::base {
namespace {

template <class A, class B>
concept Addable = requires(A a, B b) { a + b; };
template <class A, class B>
concept Comparable = requires(A a, B b) { a < b; };
template <class To, class From>
concept AssignableFrom = requires(To to, From from) { to = from; };

// What must not compile: an answer in the wrong dimension is found before it runs.
static_assert(Addable<Mass, Mass>);
static_assert(!Addable<Mass, Length>);
static_assert(!Addable<Duration, double>);
static_assert(Comparable<Duration, Duration>);
static_assert(!Comparable<Duration, Length>);
static_assert(!Comparable<Duration, int>);
static_assert(AssignableFrom<Mass&, Mass>);
static_assert(!AssignableFrom<Mass&, double>);
static_assert(!AssignableFrom<double&, Mass>);
static_assert(!Addable<SimTime, Duration>);

static_assert(std::same_as<decltype(metre / second), Speed>);
static_assert(std::same_as<decltype(metre * metre), Area>);
static_assert(std::same_as<decltype(Speed() * second), Length>);
static_assert(std::same_as<decltype(minute / second), double>);
static_assert(sizeof(Speed) == sizeof(double));

TEST(Quantity, CalculatesInSiUnits) {
  EXPECT_EQ((1600 * metre / (8 * minute)).si(), 1600.0 / 480.0);
  EXPECT_EQ(minute / second, 60.0);
  EXPECT_EQ((3 * metre - metre) / 2.0, metre);
  EXPECT_EQ(-(2 * second), -2 * second);
  Duration time = minute;
  time += second;
  time -= 2 * second;
  EXPECT_EQ(time, 59 * second);
}

// International yard and pound agreement, 1959 (US Federal Register 24 (1959) 5348): 1 lb = 0.45359237 kg.
TEST(Quantity, HoldsThePoundExactly) {
  EXPECT_EQ((100 * pound).si(), 45.359237);
}

TEST(Quantity, ComparesByValue) {
  EXPECT_LT(20 * kilogram, 50 * pound);
  EXPECT_GT(24 * kilogram, 50 * pound);
}

TEST(SimTime, RoundsToTheNearestMillisecondHalvesAwayFromZero) {
  EXPECT_EQ(sim_time(1.2344 * second).ms, 1234);
  EXPECT_EQ(sim_time(0.0625 * second).ms, 63);
  EXPECT_EQ(sim_time(-0.0625 * second).ms, -63);
  EXPECT_EQ(sim_time(-1.2344 * second).ms, -1234);
  EXPECT_EQ(sim_time(0 * second).ms, 0);
}

TEST(SimTime, AddsExactlyWhereSecondsWouldNot) {
  SimTime sum;
  for (int i = 0; i < 10; ++i) sum = sum + sim_time(0.1 * second);
  EXPECT_EQ(sum, sim_time(1 * second));
  EXPECT_EQ((sum - sim_time(0.25 * second)).duration(), 0.75 * second);
}

}  // namespace
}  // namespace repwright::base
