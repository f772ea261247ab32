#pragma once

#include <bit>
#include <cstdint>

/// Elementary functions with the same bits on every machine that has IEEE 754 doubles: the C library's
/// differ between its versions. Only + - * / and bit moves, no branch and no table, so that a compiler
/// turns a loop of them into vector instructions. Both polynomials are minimax fits made for this file (Remez
/// exchange in 50 digits, coefficients then rounded to double); reduction by a two-part ln 2 after
/// W. J. Cody and W. Waite, Software Manual for the Elementary Functions, Prentice-Hall 1980.
namespace repwright::base {

/// Two doubles that every x86-64 computes in one go; operators work on both, with the bits that each alone
/// would give.
using Pair = double __attribute__((vector_size(16)));

namespace math_detail {

using Words = std::uint64_t __attribute__((vector_size(16)));

// ln 2 in two parts: the upper has 12 trailing zero bits, so that its product with an exponent is exact.
inline constexpr double ln2_upper = 0x1.62e42fefa3000p-1;
inline constexpr double ln2_lower = 0x1.3de6af278ece6p-42;

// Added to a small double it rounds to a whole number, which then stands in the low bits of the sum.
inline constexpr double rounder = 0x1.8p52;

inline constexpr std::uint64_t sign_bit = std::uint64_t{1} << 63;

constexpr std::uint64_t bits_of(double x) {
  return std::bit_cast<std::uint64_t>(x);
}
constexpr double double_of(std::uint64_t bits) {
  return std::bit_cast<double>(bits);
}
inline Words bits_of(Pair x) {
  return std::bit_cast<Words>(x);
}
inline Pair double_of(Words bits) {
  return std::bit_cast<Pair>(bits);
}

/// (e^r - 1 - r) / r^2 for |r| <= ln(2)/2, so close that e^r is off by less than 1.8e-17 of itself.
template <class Number>
constexpr Number exp_tail(Number r) {
  const Number r2 = r * r;
  const Number r4 = r2 * r2;
  const Number c01 = 0.5000000000000001 + r * 0.16666666666666674;
  const Number c23 = 0.04166666666662416 + r * 0.008333333333322215;
  const Number c45 = 0.0013888888917198555 + r * 0.00019841269886566103;
  const Number c67 = 2.4801521319906184e-05 + r * 2.755724236518595e-06;
  const Number c89 = 2.762007691684484e-07 + r * 2.511003905203408e-08;
  return (c01 + r2 * c23) + r4 * ((c45 + r2 * c67) + r4 * c89);
}

/// The one formula of both forms of `exp`.
template <class Number>
constexpr Number exp_of(Number x) {
  constexpr double log2_e = 1.4426950408889634;
  const Number farthest = Number{} + 746.0;
  const Number size = double_of(bits_of(x) & ~sign_bit);
  const Number inside = double_of(bits_of(size > farthest ? farthest : size) | (bits_of(x) & sign_bit));
  const Number n = (inside * log2_e + rounder) - rounder;
  const Number r = (inside - n * ln2_upper) - n * ln2_lower;
  const Number mantissa = 1.0 + (r + r * r * exp_tail(r));
  // 2^n in two factors, because a double reaches neither 2^1024 nor, at full precision, below 2^-1022.
  constexpr double biased_rounder = rounder + 1023;
  const Number half = n * 0.5 + biased_rounder;
  const Number rest = (n - (half - biased_rounder)) + biased_rounder;
  return mantissa * double_of(bits_of(half) << 52) * double_of(bits_of(rest) << 52);
}

/// 2 atanh(s) / s - 2 as a function of z = s^2 <= 0.02944, so close that a logarithm is off by less than
/// 1.9e-18 of itself.
constexpr double log_tail(double z) {
  const double z2 = z * z;
  const double c12 = 0.6666666666666734 + z * 0.39999999999414676;
  const double c34 = 0.2857142874238819 + z * 0.22222198573113802;
  const double c56 = 0.18183564330340374 + z * 0.15314050431815648;
  return z * (c12 + z2 * (c34 + z2 * (c56 + z2 * 0.14795951016756437)));
}

}  // namespace math_detail

/// e to the power x, within 1.1 ulp where that is a normal double (x in [-708, 709]). Infinity above 709.79,
/// zero below -745.14, not a number for not a number.
constexpr double exp(double x) {
  return math_detail::exp_of(x);
}

/// Of each of the two.
inline Pair exp(Pair x) {
  return math_detail::exp_of(x);
}

/// The natural logarithm of x, within 1 ulp, for x from the smallest normal double (2.3e-308) to the largest.
/// Meaningless for zero, subnormal or negative x, infinity and not a number: that is for the caller to
/// exclude.
constexpr double log(double x) {
  using namespace math_detail;
  constexpr std::uint64_t one = bits_of(1.0);
  constexpr std::uint64_t root_half = bits_of(0x1.6a09e667f3bcdp-1);
  constexpr std::uint64_t fraction = (std::uint64_t{1} << 52) - 1;
  // x = 2^n m with m from the root of 1/2 to the root of 2.
  const std::uint64_t shifted = bits_of(x) + (one - root_half);
  const double n = double_of((shifted >> 52) | bits_of(0x1p52)) - (0x1p52 + 1023);
  const double m = double_of((shifted & fraction) + root_half);
  // ln m = 2 atanh(s); 2s = f - s f keeps the exact f as its leading term.
  const double f = m - 1.0;
  const double s = f / (2.0 + f);
  return n * ln2_upper + (f - (s * (f - log_tail(s * s)) - n * ln2_lower));
}

/// x to the power y for a normal x > 0, as exp(y log x): the relative error is about |y log x| ulp, at least
/// 1 ulp, so powers meant for modelling (|y log x| < 10) are good to 15 digits.
constexpr double pow(double x, double y) {
  return exp(y * log(x));
}

}  // namespace repwright::base
