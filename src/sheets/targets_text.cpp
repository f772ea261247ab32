#include "sheets/targets_text.hpp"

#include <fmt/format.h>

#include <cmath>

#include "base/clock_text.hpp"
#include "domain/rehearsal_names.hpp"
#include "sheets/page.hpp"

namespace repwright::sheets {
namespace {

using domain::Measure;

std::string clock(double seconds) {
  return base::format_clock(base::Duration::from_si(std::round(seconds)));
}

/// `16:20 to 19:40`, `4.8 to 6.2 rounds`.
std::string range(const domain::PieceTarget& target, const domain::LevelTarget& level) {
  if (target.measure == Measure::Seconds) return clock(level.from) + " to " + clock(level.to);
  if (target.in_rounds) return fmt::format("{:.1f} to {:.1f} rounds", level.from, level.to);
  return fmt::format("{:.0f} to {:.0f} {}", level.from, level.to, domain::name_of(target.measure));
}

std::string cap_words(const domain::CapTarget& cap) {
  std::string words = fmt::format("cap {}: {:.0f} % are home by then", clock(cap.seconds), 100 * cap.home);
  if (cap.now_s && *cap.now_s != cap.seconds)
    words += fmt::format(", {:.0f} % by {}", 100 * cap.home_now, clock(*cap.now_s));
  return words;
}

}  // namespace

std::string targets_text(const std::vector<domain::PieceTarget>& targets) {
  if (targets.empty()) return "";
  std::string text = heading("WHAT TO WRITE", "the middle half of each, without a cap");
  for (const domain::PieceTarget& target : targets) {
    text += paragraph("  ", target.name + (target.cap ? ": " + cap_words(*target.cap) : ""), 4);
    for (const domain::LevelTarget& level : target.levels) {
      std::string line = range(target, level);
      if (level.first_round_s) line += ", first round by " + clock(*level.first_round_s);
      text += paragraph(fmt::format("    {:<15} ", level.name), line);
    }
  }
  return text;
}

}  // namespace repwright::sheets
