#include <cstdlib>

#include "support/plans.hpp"

/// The class of the benchmark, 20 runs or as many as the first word says: for counting instructions.
int main(int count, char** words) {
  const int runs = count > 1 ? std::atoi(words[1]) : 20;
  const repwright::test::Stage stage = repwright::test::mixed_class({});
  const auto rehearsal = repwright::rehearsal::rehearse(stage.request(runs));
  return rehearsal && rehearsal->people.size() == 24 ? 0 : 1;
}
