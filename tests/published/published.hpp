#pragma once

#include <string>
#include <vector>

#include "body/alone.hpp"
#include "body/estimate.hpp"
#include "domain/catalogue.hpp"

/// What the checks against published measurements share.
namespace repwright::published {

struct Band {
  double low = 0, high = 0;
};

/// One published observation: where a prediction should be and where it may still be.
struct Check {
  std::string name;  // as in not_yet_met.txt
  Band ideal, accept;
};

/// Prints the measured value with both bands. Fails outside `accept` unless the check is listed in
/// not_yet_met.txt, and fails inside it if it is listed there still. True if a listed check was missed.
bool expected_miss(const Check& check, double measured);

/// Several checks of one study: skips at the end if a listed one is still missed.
class Study {
 public:
  void check(const Check& check, double measured) {
    if (expected_miss(check, measured)) missed_ += (missed_.empty() ? "" : ", ") + check.name;
  }
  const std::string& missed() const { return missed_; }

 private:
  std::string missed_;
};

const std::vector<std::string>& not_yet_met();

const domain::Catalogue& catalogue();
const body::Constants& constants();

body::Effort effort(const char* movement, domain::Unit unit, double load, const body::Body& body);

/// Units of the effort alone within the window.
double alone_within(const body::Body& body, const body::Effort& effort, double seconds);

struct Spread {
  double mean = 0, sd = 0, p10 = 0, p50 = 0, p90 = 0, most = 0;
};
Spread spread_of(std::vector<double> values);

}  // namespace repwright::published
