#pragma once

#include <compare>
#include <cstdint>

namespace repwright::base {

/// The powers of the base units that a quantity is made of.
struct Dimension {
  int mass = 0;
  int length = 0;
  int time = 0;
  constexpr bool operator==(const Dimension&) const = default;
};

/// A number with its dimension in the type, held in SI units. Costs what a double costs.
template <Dimension D>
class Quantity {
 public:
  constexpr Quantity() = default;
  static constexpr Quantity from_si(double value) { return Quantity(value); }
  constexpr double si() const { return value_; }

  constexpr auto operator<=>(const Quantity&) const = default;
  constexpr Quantity operator-() const { return Quantity(-value_); }
  constexpr Quantity& operator+=(Quantity other) { return value_ += other.value_, *this; }
  constexpr Quantity& operator-=(Quantity other) { return value_ -= other.value_, *this; }
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_ + b.value_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_ - b.value_); }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.value_ * k); }
  friend constexpr Quantity operator*(double k, Quantity a) { return Quantity(k * a.value_); }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.value_ / k); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.value_ / b.value_; }

 private:
  explicit constexpr Quantity(double value) : value_(value) {}
  double value_ = 0;
};

template <Dimension A, Dimension B>
constexpr auto operator*(Quantity<A> a, Quantity<B> b) {
  return Quantity<Dimension{A.mass + B.mass, A.length + B.length, A.time + B.time}>::from_si(a.si() * b.si());
}

template <Dimension A, Dimension B>
  requires(!(A == B))
constexpr auto operator/(Quantity<A> a, Quantity<B> b) {
  return Quantity<Dimension{A.mass - B.mass, A.length - B.length, A.time - B.time}>::from_si(a.si() / b.si());
}

using Mass = Quantity<Dimension{.mass = 1}>;
using Length = Quantity<Dimension{.length = 1}>;
using Duration = Quantity<Dimension{.time = 1}>;
using Speed = Quantity<Dimension{.length = 1, .time = -1}>;
using Area = Quantity<Dimension{.length = 2}>;

inline constexpr Mass kilogram = Mass::from_si(1);
inline constexpr Mass pound =
    Mass::from_si(0.45359237);  // exact: international yard and pound agreement, 1959
inline constexpr Length metre = Length::from_si(1);
inline constexpr Duration second = Duration::from_si(1);
inline constexpr Duration minute = Duration::from_si(60);

/// An instant of simulated time in whole milliseconds, so that ties are real ties.
struct SimTime {
  std::int64_t ms = 0;
  constexpr auto operator<=>(const SimTime&) const = default;
  friend constexpr SimTime operator+(SimTime a, SimTime b) { return {a.ms + b.ms}; }
  friend constexpr SimTime operator-(SimTime a, SimTime b) { return {a.ms - b.ms}; }
  constexpr Duration duration() const { return Duration::from_si(static_cast<double>(ms) / 1000.0); }
};

/// The nearest whole millisecond.
constexpr SimTime sim_time(Duration d) {
  const double ms = d.si() * 1000.0;
  return {static_cast<std::int64_t>(ms < 0 ? ms - 0.5 : ms + 0.5)};
}

}  // namespace repwright::base
