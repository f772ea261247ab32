#include "sheets/reasons_text.hpp"

#include <fmt/format.h>

#include <cmath>

#include "base/civil_date.hpp"
#include "sheets/clock.hpp"
#include "sheets/page.hpp"
#include "sheets/scores_text.hpp"

namespace repwright::sheets {
namespace {

using domain::Limiter;
using domain::PieceOutcome;
using domain::Spread;

std::string counted(std::size_t count, const char* one) {
  return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s");
}

std::string range_text(const PieceOutcome& piece, const Spread& score) {
  return fmt::format("{}, eight times in ten {} to {}", score_text(piece, score.p50),
                     score_text(piece, score.p10), score_text(piece, score.p90));
}

std::string known_text(const domain::Why& why) {
  if (why.marks.empty() && why.scores == 0)
    return "No mark and no score is known: sex, age and training years say it all.";
  const std::string marks =
      why.marks.empty()
          ? "No mark is known"
          : fmt::format("Known by {}: {}", counted(why.marks.size(), "mark"), fmt::join(why.marks, ", "));
  return marks + (why.scores == 0
                      ? "; no score has taught anything yet."
                      : fmt::format("; {} taught.", counted(static_cast<std::size_t>(why.scores), "score")));
}

/// What holds the person on the line, as an action of the body.
std::string limiter_words(const domain::WhyStep& step) {
  const std::string rests = fmt::format("; rests {} in all", clock_text(step.rest_s));
  switch (step.limiter) {
    case Limiter::Push:
      return "the pushing muscles tire" + rests;
    case Limiter::Pull:
      return "the pulling muscles tire" + rests;
    case Limiter::Legs:
      return "the legs tire" + rests;
    case Limiter::Core:
      return "the trunk tires" + rests;
    case Limiter::Grip:
      return "the grip tires" + rests;
    case Limiter::Engine:
      return "heart and lungs set the speed";
    case Limiter::Queue:
      return fmt::format("waits for a place, {} in all", clock_text(step.wait_s));
    case Limiter::Clock:
      return "the clock sets the pace";
    case Limiter::Pace:
      return "goes at an even pace";
  }
  return {};
}

std::string moved_text(const domain::WhyPiece& piece, double share) {
  const double percent = std::round(100 * std::abs(share));
  if (percent < 1) return "hardly at all";
  const bool more = share > 0;
  const char* way =
      piece.now.measure == domain::Measure::Seconds ? (more ? "slower" : "faster") : (more ? "more" : "less");
  return fmt::format("{:.0f} % {}", percent, way);
}

std::string piece_text(const domain::WhyPiece& piece) {
  std::string text = heading(piece.name, range_text(piece.now, piece.now.score));
  text += paragraph(
      "  ", fmt::format("Somebody like them: {}. By marks alone: {}.", range_text(piece.now, piece.like_them),
                        range_text(piece.now, piece.by_marks)));
  text += paragraph(
      "  ", fmt::format("Of the doubt about somebody like them {:.0f} % is left.", 100 * piece.prior_weight));
  for (const domain::WhyStep& step : piece.steps)
    text += paragraph(fmt::format("  line {:<3} ", step.line),
                      fmt::format("{}: {}.", step.version, limiter_words(step)));
  return text;
}

}  // namespace

std::string why_text(const domain::Why& why) {
  std::string text = heading(fmt::format("WHY {}", why.name), "");
  text += paragraph("  ", known_text(why));
  for (const domain::WhyPiece& piece : why.pieces) text += piece_text(piece);
  if (why.moved_most.empty() || why.pieces.empty()) return text;
  text += heading("Scores that moved it most", why.pieces.front().name);
  for (const domain::MovingScore& score : why.moved_most)
    text += paragraph(
        "  ", fmt::format("{} on {}, {}: {}.", fmt::join(score.scores, ", "), score.board,
                          base::format_date(score.date), moved_text(why.pieces.front(), score.moved)));
  return text;
}

std::string tests_text(const domain::TestOffers& offers) {
  std::string text = heading(offers.name, offers.piece_name);
  text += paragraph("  ", fmt::format("Forecast now: {}.", range_text(offers.piece, offers.piece.score)));
  if (offers.tests.empty())
    return text + paragraph("  ", "No usual test would narrow it by a fiftieth: most of it is the day.");
  for (const domain::TestOffer& test : offers.tests)
    text += paragraph("  ", fmt::format("{} ({:.0f} min): {} to {}, {:.0f} % narrower.", test.test,
                                        test.minutes, score_text(offers.piece, test.p10),
                                        score_text(offers.piece, test.p90), 100 * test.narrower));
  return text + paragraph("  ", fmt::format("Days differ: {:.0f} % of the doubt stays whatever is tested.",
                                            100 * offers.day_share));
}

}  // namespace repwright::sheets
