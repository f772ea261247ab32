#pragma once

#include <array>
#include <cmath>

#include "base/math.hpp"

namespace repwright::base {

namespace normal_detail {

/// c[0] + c[1] x + ... + c[7] x^7, in pairs so that the processor can work on several at once.
template <class Number>
constexpr Number polynomial(const std::array<double, 8>& c, Number x) {
  const Number x2 = x * x;
  const Number low = (c[0] + c[1] * x) + x2 * (c[2] + c[3] * x);
  const Number high = (c[4] + c[5] * x) + x2 * (c[6] + c[7] * x);
  return low + x2 * x2 * high;
}

/// A quotient of two polynomials of degree 7.
struct Rational {
  std::array<double, 8> above;
  std::array<double, 8> below;
  template <class Number>
  constexpr Number operator()(Number x) const {
    return polynomial(above, x) / polynomial(below, x);
  }
};

inline constexpr Rational centre{
    {3.3871328727963666080e0, 1.3314166789178437745e+2, 1.9715909503065514427e+3, 1.3731693765509461125e+4,
     4.5921953931549871457e+4, 6.7265770927008700853e+4, 3.3430575583588128105e+4, 2.5090809287301226727e+3},
    {1.0, 4.2313330701600911252e+1, 6.8718700749205790830e+2, 5.3941960214247511077e+3,
     2.1213794301586595867e+4, 3.9307895800092710610e+4, 2.8729085735721942674e+4, 5.2264952788528545610e+3}};
inline constexpr Rational flank{
    {1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0, 3.64784832476320460504e0,
     1.27045825245236838258e0, 2.41780725177450611770e-1, 2.27238449892691845833e-2,
     7.74545014278341407640e-4},
    {1.0, 2.05319162663775882187e0, 1.67638483018380384940e0, 6.89767334985100004550e-1,
     1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4,
     1.05075007164441684324e-9}};
inline constexpr Rational tail{
    {6.65790464350110377720e0, 5.46378491116411436990e0, 1.78482653991729133580e0, 2.96560571828504891230e-1,
     2.65321895265761230930e-2, 1.24266094738807843860e-3, 2.71155556874348757815e-5,
     2.01033439929228813265e-7},
    {1.0, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
     7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7,
     2.04426310338993978564e-15}};

}  // namespace normal_detail

/// The value below which a standard normal variable stays with probability p, for 0 < p < 1, to about 1e-15
/// of itself; the same bits on every machine. Algorithm AS 241 (PPND16): M. J. Wichura, Applied Statistics
/// 37 (1988) 477-484, doi 10.2307/2347330.
inline double normal_quantile(double p) {
  const double off_centre = p - 0.5;
  if (std::abs(off_centre) <= 0.425) {
    return off_centre * normal_detail::centre(0.180625 - off_centre * off_centre);
  }
  const double outside = off_centre < 0 ? p : 1.0 - p;
  const double r = std::sqrt(-base::log(outside));
  const double size = r <= 5.0 ? normal_detail::flank(r - 1.6) : normal_detail::tail(r - 5.0);
  return off_centre < 0 ? -size : size;
}

/// Of each of the two.
inline Pair normal_quantile(Pair p) {
  const Pair off_centre = p - 0.5;
  Pair size = off_centre * normal_detail::centre(0.180625 - off_centre * off_centre);
  for (int i = 0; i < 2; ++i)
    if (std::abs(off_centre[i]) > 0.425) size[i] = normal_quantile(p[i]);
  return size;
}

/// The probability that a standard normal variable stays below x. Leans on the C library's erfc, whose last
/// bits differ between machines: for reports, never for a draw or a rehearsed time.
inline double normal_cdf(double x) {
  return 0.5 * std::erfc(-x / std::sqrt(2.0));
}

}  // namespace repwright::base
