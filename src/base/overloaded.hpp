#pragma once

namespace repwright::base {

/// One function object of several lambdas, to visit a variant with.
template <class... F>
struct Overloaded : F... {
  using F::operator()...;
};
template <class... F>
Overloaded(F...) -> Overloaded<F...>;

}  // namespace repwright::base
