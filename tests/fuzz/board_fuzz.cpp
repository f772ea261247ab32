#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "board/read.hpp"
#include "board/tidy.hpp"
#include "support/shipped_catalogue.hpp"

/// Any bytes give a reading whose spans lie inside the text, and a board that can be written again.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace repwright;
  if (size > 4096) return 0;  // longer boards only slow the search down
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const domain::Catalogue& catalogue = test::shipped_catalogue();
  static const domain::House house;
  static const board::Reader reader(catalogue, house);
  const board::Reading reading = reader.read(text);
  const auto inside = [&](const domain::Span& span) { return span.begin <= span.end && span.end <= size; };
  for (const domain::Span& span : reading.steps)
    if (!inside(span)) std::abort();
  for (const domain::Span& span : reading.blocks)
    if (!inside(span)) std::abort();
  for (const domain::Diagnostic& diagnostic : reading.diagnostics)
    if (!inside(diagnostic.span)) std::abort();
  (void)board::tidy(reading.board, catalogue, house);
  return 0;
}
