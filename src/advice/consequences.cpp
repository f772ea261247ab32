#include "advice/consequences.hpp"

#include <algorithm>
#include <optional>
#include <vector>

#include "domain/board_search.hpp"
#include "rehearsal/intent_window.hpp"

namespace repwright::advice {
namespace {

// As those of the header.
constexpr double minutes_off_intent = 2;  // one person outside what a piece intends
constexpr double minutes_of_over = 5;     // a class that surely runs over

double middle(std::vector<double> values) {
  if (values.empty()) return 0;
  const auto half = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::ranges::nth_element(values, half);
  return *half;
}

/// Of people and pieces that intend something, and of their work what the intent leaves room for.
class AgainstIntents {
 public:
  explicit AgainstIntents(const std::vector<const domain::Block*>& pieces) : pieces_(pieces) {}

  /// Returns the work of that piece that is wanted.
  double add(std::size_t piece, const domain::PieceOutcome& outcome, double worked_s) {
    const domain::Block* block = piece < pieces_.size() ? pieces_[piece] : nullptr;
    const auto window = block != nullptr ? rehearsal::intended(*block) : std::nullopt;
    if (!window || !rehearsal::measures(*window, outcome)) return worked_s;
    const double middle = rehearsal::middle_of(outcome, *window, *block);
    ++intended_;
    if (rehearsal::miss(*window, middle) > rehearsal::clearly_off) ++off_;
    return worked_s * wanted_share(*window, middle, *block);
  }
  std::optional<double> off_share() const {
    if (intended_ == 0) return std::nullopt;
    return static_cast<double>(off_) / intended_;
  }

 private:
  /// Of the work, what ends inside the intended time, or leaves the intended seconds of each interval.
  static double wanted_share(const domain::FitWindow& window, double middle, const domain::Block& piece) {
    if (window.measure == domain::FitMeasure::Seconds)
      return window.max && middle > *window.max ? *window.max / middle : 1;
    if (window.measure != domain::FitMeasure::SpareSeconds || !piece.every || middle >= window.min) return 1;
    const double interval = piece.every->si();
    return std::clamp((interval - window.min) / (interval - middle), 0.0, 1.0);
  }

  const std::vector<const domain::Block*>& pieces_;
  int intended_ = 0;
  int off_ = 0;
};

}  // namespace

std::vector<const domain::Block*> piece_blocks(const domain::Board& board,
                                               const timetable::Timetable& timetable) {
  std::vector<const domain::Block*> blocks;
  blocks.reserve(timetable.pieces.size());
  for (const timetable::Piece& piece : timetable.pieces)
    blocks.push_back(domain::find_block(board, piece.block));
  return blocks;
}

domain::Consequences consequences_of(const domain::Rehearsal& rehearsal,
                                     const std::vector<const domain::Block*>& blocks) {
  domain::Consequences out;
  double waited = 0, worked = 0, wanted = 0, stopped = 0;
  int pieces = 0;
  AgainstIntents intents(blocks);
  std::vector<double> finishes;
  for (const domain::PersonOutcome& person : rehearsal.people) {
    double finish = 0;
    for (std::size_t at = 0; at < person.pieces.size(); ++at) {
      const domain::PieceOutcome& piece = person.pieces[at];
      double worked_here = 0;
      ++pieces;
      waited += piece.wait_s;
      stopped += piece.capped;
      for (const domain::StepTrace& step : piece.steps) worked_here += step.work_s * step.share_of_runs;
      worked += worked_here;
      wanted += intents.add(at, piece, worked_here);
      if (piece.measure == domain::Measure::Seconds) finish += piece.score.p50;
    }
    if (finish > 0) finishes.push_back(finish);
  }
  const double people = std::max<double>(1, static_cast<double>(rehearsal.people.size()));
  out.wait_s = waited / people;
  out.work_s = worked / people;
  out.wanted_s = wanted / people;
  out.off_intent = intents.off_share();
  out.finished = pieces > 0 ? 1 - stopped / pieces : 1;
  out.median_finish_s = middle(std::move(finishes));
  const domain::ClassOutcome& hour = rehearsal.timetable;
  out.over_share = hour.over_share;
  out.end_p50_s = hour.p50_s;
  out.end_p90_s = hour.p90_s;
  if (hour.planned_s) out.over_s = std::max(0.0, hour.p90_s - *hour.planned_s);
  return out;
}

double burden(const domain::Consequences& consequences, double asked_work_s) {
  const double lost = asked_work_s > 0 ? std::max(0.0, 1 - consequences.work_s / asked_work_s) : 0;
  return consequences.wait_s / 60 + minutes_of_unfinished * (1 - consequences.finished) +
         minutes_off_intent * consequences.off_intent.value_or(0) +
         minutes_of_over * consequences.over_share + consequences.over_s / 60 + minutes_of_lost_work * lost;
}

}  // namespace repwright::advice
