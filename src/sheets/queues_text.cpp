#include "sheets/queues_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <vector>

#include "sheets/clock.hpp"
#include "sheets/page.hpp"

namespace repwright::sheets {
namespace {

/// Shorter mean queues than this are nobody waiting.
constexpr double nobody = 0.05;
/// Nor is a wait that nine of ten people do not notice.
constexpr double shortest_s = 1;

/// The queue over the class, a character for each step of time; the highest bar is the longest queue.
std::string queue_strip(const domain::PlaceUse& place, double until) {
  static constexpr std::array<std::string_view, 9> bars{" ", "▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"};
  constexpr std::size_t cells = 60;
  std::array<double, cells> highest{};
  for (std::size_t i = 0; i < place.queue.size(); ++i) {
    const double begin = place.queue[i].first;
    const double end = i + 1 < place.queue.size() ? place.queue[i + 1].first : until;
    const auto cell = [&](double t) {
      return std::min(cells - 1, static_cast<std::size_t>(std::max(0.0, t / until * cells)));
    };
    for (std::size_t c = cell(begin); c <= cell(std::max(begin, end - 1e-9)); ++c)
      highest[c] = std::max(highest[c], place.queue[i].second);
  }
  const double top = std::max(1.0, *std::ranges::max_element(highest));
  std::string strip;
  for (const double queue : highest)
    strip += bars[queue < nobody
                      ? 0
                      : std::clamp<std::size_t>(static_cast<std::size_t>(std::ceil(queue / top * 8)), 1, 8)];
  return strip;
}

std::string name_of(const domain::PlaceUse& place) {
  return place.name.empty() ? place.place.text : place.name;
}

std::string waited_for(const domain::PlaceUse& place, double until) {
  const auto peak = std::ranges::max_element(place.queue, {}, [](const auto& at) { return at.second; });
  return paragraph(fmt::format("  {} × {}: ", name_of(place), place.count),
                   fmt::format("a person waits {} in all, one in ten {} or more; longest queue {:.1f}, "
                               "at {}",
                               clock_text(place.wait_mean_s), clock_text(place.wait_p90_s),
                               place.queue_max_mean, clock_text(peak->first)),
                   4) +
         fmt::format("    0:00 |{}| {}\n", queue_strip(place, until), clock_text(until));
}

}  // namespace

std::string queues_text(const domain::Rehearsal& rehearsal) {
  if (rehearsal.places.empty()) return "";
  const double until = std::max(60.0, rehearsal.timetable.p90_s);
  std::string text = heading("WHERE THEY QUEUE", "");
  std::vector<std::string> free;
  for (const domain::PlaceUse& place : rehearsal.places) {
    if (place.queue_max_mean < nobody || place.wait_p90_s < shortest_s)
      free.push_back(fmt::format("{} × {}", name_of(place), place.count));
    else
      text += waited_for(place, until);
  }
  if (!free.empty()) text += paragraph("  ", fmt::format("nobody waits: {}", fmt::join(free, ", ")), 4);
  return text;
}

}  // namespace repwright::sheets
