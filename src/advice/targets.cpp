#include "advice/targets.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <string_view>
#include <utility>

#include "advice/consequences.hpp"
#include "base/statistics.hpp"
#include "domain/board_search.hpp"
#include "rehearsal/floor.hpp"

namespace repwright::advice {
namespace {

using domain::Block;
using domain::Measure;

constexpr double minute_s = 60;
constexpr double longest_cap_s = 3600;  // beyond it no cap is worth writing
constexpr std::array<std::string_view, 3> thirds = {"quickest third", "middle third", "last third"};

/// Nothing else ends it: no clock that runs down, no window of the hour.
bool ends_with_its_people(const timetable::Timetable& timetable, int piece) {
  const bool in_a_window = std::ranges::any_of(timetable.boxes, [&](const timetable::Box& box) {
    return box.piece == piece && box.starts_at.has_value();
  });
  return timetable.pieces[static_cast<std::size_t>(piece)].clock == timetable::ClockKind::Up && !in_a_window;
}

/// The scores of everybody in one piece; who is never home has none.
struct Scores {
  std::vector<std::vector<double>> of;  // by person
  std::size_t played = 0;
  std::size_t never_home = 0;
};

class Piece {
 public:
  Piece(const TargetRequest& request, int piece, const Block& block)
      : request_(request), piece_(piece), block_(block) {
    scores_.of.resize(request.uncapped.people.size());
    const double per_round_of_all = least_per_round();
    target_.piece = piece;
    target_.name = request.uncapped.piece_names[static_cast<std::size_t>(piece)];
    target_.measure = outcome(0).measure;
    target_.in_rounds = target_.measure == Measure::Reps && per_round_of_all > 0;
    for (const domain::Draw& draw : request.uncapped.draws) {
      if (draw.piece != piece) continue;
      ++scores_.played;
      const auto person = static_cast<std::size_t>(draw.person);
      if (timed() && draw.score >= rehearsal::longest_piece)
        ++scores_.never_home;
      else
        scores_.of[person].push_back(target_.in_rounds ? draw.score / outcome(person).reps_per_round
                                                       : draw.score);
    }
  }

  domain::PieceTarget target() {
    if (timed() && ends_with_its_people(request_.timetable, piece_)) target_.cap = cap();
    block_.levels.empty() ? by_thirds() : by_levels();
    return std::move(target_);
  }

 private:
  bool timed() const { return target_.measure == Measure::Seconds; }
  const domain::PieceOutcome& outcome(std::size_t person) const {
    return request_.uncapped.people[person].pieces[static_cast<std::size_t>(piece_)];
  }
  double least_per_round() const {
    double least = outcome(0).reps_per_round;
    for (std::size_t p = 1; p < scores_.of.size(); ++p) least = std::min(least, outcome(p).reps_per_round);
    return least;
  }

  double home_by(double seconds) const {
    std::ptrdiff_t home = 0;
    for (const std::vector<double>& scores : scores_.of)
      home += std::ranges::count_if(scores, [&](double score) { return score <= seconds; });
    return static_cast<double>(home) / static_cast<double>(std::max<std::size_t>(1, scores_.played));
  }

  std::optional<domain::CapTarget> cap() const {
    double seconds = minute_s;
    while (seconds <= longest_cap_s && home_by(seconds) < enough_home) seconds += minute_s;
    if (seconds > longest_cap_s) return std::nullopt;
    domain::CapTarget cap{.seconds = seconds, .home = home_by(seconds)};
    if (!block_.cap) return cap;
    cap.now_s = block_.cap->si();
    cap.home_now = home_by(*cap.now_s);
    const bool stays = cap.home_now >= enough_home && cap.home_now <= nearly_all_home;
    if (stays) {
      cap.seconds = *cap.now_s;
      cap.home = cap.home_now;
    }
    return cap;
  }

  /// Of one group the middle half; nothing of who never came home.
  void add(std::string name, const std::vector<std::size_t>& people) {
    std::vector<double> scores, first;
    for (const std::size_t person : people) {
      scores.insert(scores.end(), scores_.of[person].begin(), scores_.of[person].end());
      if (const auto seconds = first_round(person)) first.push_back(*seconds);
    }
    if (scores.empty()) return;
    domain::LevelTarget level{.name = std::move(name),
                              .people = static_cast<int>(people.size()),
                              .from = base::quantile(scores, 0.25),
                              .to = base::quantile(scores, 0.75)};
    if (!first.empty()) level.first_round_s = base::quantile(first, 0.5);
    target_.levels.push_back(std::move(level));
  }

  bool on_one_clock() const {
    const timetable::ClockKind clock = request_.timetable.pieces[static_cast<std::size_t>(piece_)].clock;
    return clock == timetable::ClockKind::Up || clock == timetable::ClockKind::Down;
  }

  /// When the first of several rounds is done, in the mean.
  std::optional<double> first_round(std::size_t person) const {
    if (!on_one_clock()) return std::nullopt;
    std::optional<double> end;
    bool more = false;
    for (const domain::StepTrace& step : outcome(person).steps) {
      if (step.round == 0) end = std::max(end.value_or(0), step.end_s);
      more = more || step.round > 0;
    }
    return more ? end : std::nullopt;
  }

  void by_levels() {
    for (std::size_t level = 0; level < block_.levels.size(); ++level) {
      std::vector<std::size_t> people;
      for (std::size_t p = 0; p < scores_.of.size(); ++p)
        if (request_.levels[p] == static_cast<int>(level)) people.push_back(p);
      add(block_.levels[level], people);
    }
  }

  void by_thirds() {
    std::vector<std::size_t> order(scores_.of.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto likely = [&](std::size_t person) {
      const std::vector<double>& scores = scores_.of[person];
      if (scores.empty()) return timed() ? rehearsal::longest_piece : 0.0;
      return base::quantile(scores, 0.5) * (timed() ? 1 : -1);
    };
    std::ranges::stable_sort(order, {}, likely);
    if (order.size() < thirds.size()) return add("everybody", order);
    std::size_t begin = 0;
    for (std::size_t third = 0; third < thirds.size(); ++third) {
      const std::size_t end = (third + 1) * order.size() / thirds.size();
      add(std::string(thirds[third]), {order.begin() + static_cast<std::ptrdiff_t>(begin),
                                       order.begin() + static_cast<std::ptrdiff_t>(end)});
      begin = end;
    }
  }

  const TargetRequest& request_;
  int piece_;
  const Block& block_;
  Scores scores_;
  domain::PieceTarget target_;
};

/// Not of loads, where feel decides, nor of what is done in each one's own time or the same in each interval.
bool has_targets(const TargetRequest& request, std::size_t piece, const Block& block) {
  const Measure measure = request.uncapped.people.front().pieces.at(piece).measure;
  const timetable::ClockKind clock = request.timetable.pieces[piece].clock;
  return measure != Measure::Kilograms && clock != timetable::ClockKind::Own &&
         block.kind != domain::BlockKind::Every;
}

}  // namespace

domain::Board without_caps(const domain::Board& board, const timetable::Timetable& timetable) {
  domain::Board open = board;
  for (std::size_t at = 0; at < timetable.pieces.size(); ++at) {
    Block* block = domain::find_block(open, timetable.pieces[at].block);
    if (block != nullptr && ends_with_its_people(timetable, static_cast<int>(at))) block->cap.reset();
  }
  return open;
}

std::vector<domain::PieceTarget> targets_of(const TargetRequest& request) {
  std::vector<domain::PieceTarget> targets;
  if (request.uncapped.people.empty()) return targets;
  const std::vector<const Block*> blocks = piece_blocks(request.board, request.timetable);
  for (std::size_t at = 0; at < blocks.size(); ++at) {
    if (blocks[at] == nullptr || !has_targets(request, at, *blocks[at])) continue;
    domain::PieceTarget target = Piece(request, static_cast<int>(at), *blocks[at]).target();
    const bool nothing = std::ranges::all_of(target.levels, [](const auto& level) { return level.to <= 0; });
    if (target.cap || !nothing) targets.push_back(std::move(target));
  }
  return targets;
}

}  // namespace repwright::advice
