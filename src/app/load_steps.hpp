#pragma once

#include <optional>
#include <vector>

#include "domain/catalogue.hpp"
#include "domain/fitted.hpp"
#include "domain/hall.hpp"

/// Which loads a hall can put into somebody's hands.
namespace repwright::app {

/// By what a load goes up and down, kg, all implements of a person together as a score has them.
struct LoadSteps {
  std::vector<double> lots{};    // every load there is, the lightest first; empty: it goes by a step
  std::optional<double> step{};  // of a bar: twice the smallest plate; nothing: not known
  bool operator==(const LoadSteps&) const = default;
};

/// Of the heaviest of these lines. Of bells, bags and balls the shelf's lots, as many together as the line
/// takes; of a bar twice its smallest plate of which there are two.
LoadSteps load_steps(const std::vector<domain::FittedItem>& lines, const domain::Catalogue& catalogue,
                     const domain::Hall& hall);

}  // namespace repwright::app
