#include "support/plans.hpp"

/// One run of the class of the benchmark, for counting instructions.
int main() {
  const repwright::test::Stage stage = repwright::test::mixed_class({});
  const auto rehearsal = repwright::rehearsal::rehearse(stage.request(1));
  return rehearsal && rehearsal->people.size() == 24 ? 0 : 1;
}
