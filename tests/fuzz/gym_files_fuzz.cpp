#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "store/class_json.hpp"
#include "store/hall_json.hpp"
#include "store/house_json.hpp"
#include "store/people_csv.hpp"
#include "store/scores_csv.hpp"
#include "support/shipped_catalogue.hpp"

namespace {

using namespace repwright;

/// A few of the shipped movements, one for each kind of mark: names are looked up anew for each file.
const domain::Catalogue& few_movements() {
  static const domain::Catalogue catalogue = [] {
    constexpr std::array<std::string_view, 8> kept{"push-up", "knee-push-up", "pull-up", "ring-row",
                                                   "sit-up",  "plank",        "run",     "bb-deadlift"};
    domain::Catalogue few = test::shipped_catalogue();
    std::erase_if(few.movements, [&](const domain::Movement& movement) {
      return std::ranges::find(kept, movement.id.text) == kept.end();
    });
    return few;
  }();
  return catalogue;
}

/// What was read from any bytes is read again, the same, from what is written.
void expect_again(bool same) {
  if (!same) std::abort();
}

void people(std::string_view text, const domain::Catalogue& catalogue) {
  const auto first = store::read_people(text, "people.csv", catalogue);
  if (!first) return;
  const auto again = store::read_people(store::write_people(first->people), "people.csv", catalogue);
  expect_again(again && again->people == first->people);
}

void hall(std::string_view text, const domain::Catalogue& catalogue) {
  const auto first = store::read_hall(text, "hall.json", catalogue);
  if (!first) return;
  const auto again = store::read_hall(store::write_hall(first->hall), "hall.json", catalogue);
  expect_again(again && again->hall == first->hall);
}

void house(std::string_view text, const domain::Catalogue& catalogue) {
  const auto first = store::read_house(text, "house.json", catalogue);
  if (!first) return;
  const auto again = store::read_house(store::write_house(first->house), "house.json", catalogue);
  expect_again(again && again->house == first->house);
}

void gym_class(std::string_view text, const domain::Catalogue& catalogue) {
  const auto first = store::read_class(text, "class.json", "class", catalogue);
  if (!first) return;
  const auto again =
      store::read_class(store::write_class(first->gym_class), "class.json", "class", catalogue);
  expect_again(again && again->gym_class == first->gym_class);
}

void scores(std::string_view text, const domain::Catalogue&) {
  const auto first = store::read_scores(text, "scores.csv");
  if (!first) return;
  const auto again = store::read_scores(store::write_scores(first->entries), "scores.csv");
  expect_again(again && again->entries == first->entries);
}

}  // namespace

/// Any bytes give a value or errors. The first byte chooses the kind of file.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 1 || size > 8192) return 0;
  constexpr std::array kinds{people, hall, house, gym_class, scores};
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  kinds[data[0] % kinds.size()](text, few_movements());
  return 0;
}
