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

/// Any bytes give a value or errors. The first byte chooses the kind of file.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace repwright;
  if (size < 1 || size > 8192) return 0;
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  const domain::Catalogue& catalogue = test::shipped_catalogue();
  switch (data[0] % 5) {
    case 0:
      (void)store::read_people(text, "people.csv", catalogue);
      break;
    case 1:
      (void)store::read_hall(text, "hall.json", catalogue);
      break;
    case 2:
      (void)store::read_house(text, "house.json", catalogue);
      break;
    case 3:
      (void)store::read_class(text, "class.json", "class", catalogue);
      break;
    default:
      (void)store::read_scores(text, "scores.csv");
      break;
  }
  return 0;
}
