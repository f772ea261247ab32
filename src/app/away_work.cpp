#include "app/away_work.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "advice/away.hpp"
#include "app/other_board.hpp"

namespace repwright::app {
namespace {

using domain::Block;
using domain::BlockKind;

constexpr int runs = 24;
constexpr double clock_step_s = 30;

std::optional<base::Duration> shorter(const std::optional<base::Duration>& clock, double share) {
  if (!clock || clock->si() <= clock_step_s) return clock;
  return std::max(clock_step_s, std::floor(clock->si() * share / clock_step_s) * clock_step_s) * base::second;
}

void shrink(std::optional<domain::Intent::Window>& window, double share, double step) {
  if (!window) return;
  window->min = std::floor(window->min * share / step) * step;
  if (window->max) window->max = std::max(window->min, std::ceil(*window->max * share / step) * step);
}

/// Fewer rounds; returns what share is left for the counts.
double fewer(std::optional<int>& count, double share) {
  if (!count) return share;
  const int whole = std::max(1, static_cast<int>(std::lround(*count * share)));
  const double left = *count * share / whole;
  count = whole;
  return left;
}

/// Whether the work itself, not a clock, says how long it takes.
bool by_the_work(const Block& block) {
  const bool listed = block.kind == BlockKind::ForTime || block.kind == BlockKind::Rounds ||
                      block.kind == BlockKind::Once || block.kind == BlockKind::ForDistance ||
                      block.kind == BlockKind::Accumulate;
  return listed && !block.duration && !block.every && !block.work;
}

/// Under a clock the rounds stay as they are, and only what comes once gets shorter.
double share_of_child(const Block& parent, const Block& child, double left) {
  return !parent.duration || child.kind == BlockKind::Once ? left : 1;
}

void cut(Block& block, double share) {
  double left = share;
  for (std::optional<int>* count : {&block.rounds, &block.sets, &block.laps, &block.intervals})
    if (*count) left = fewer(*count, share);
  if (by_the_work(block))
    for (domain::Item& item : block.items) item.amount = advice::scaled(item, left);
  if (block.intent) {
    shrink(block.intent->time, share, clock_step_s);
    shrink(block.intent->rounds, share, 1);
  }
  for (Block& child : block.children) cut(child, share_of_child(block, child, left));
  block.duration = shorter(block.duration, share);
  block.cap = shorter(block.cap, share);
}

void drop_cap(Block& block) {
  block.cap.reset();
  std::ranges::for_each(block.children, drop_cap);
}

}  // namespace

base::Result<LoneWork> lone_work(const ClassRequest& request, const domain::Person& person,
                                 const domain::Board& board) {
  const board::Reading reading = reading_of(board);
  const std::vector<domain::Person> people{person};
  const domain::GymClass gym_class;
  const auto rehearsed = rehearse_class({.reading = reading,
                                         .gym = request.gym,
                                         .people = people,
                                         .gym_class = gym_class,
                                         .heads = {},
                                         .rule = request.rule,
                                         .seed = request.seed,
                                         .runs = runs,
                                         .threads = 1,
                                         .stop = request.stop,
                                         .known = request.known});
  if (!rehearsed) return tl::unexpected(rehearsed.error());
  LoneWork work;
  work.class_s = rehearsed->rehearsal.timetable.p50_s;
  for (const domain::PieceOutcome& piece : rehearsed->rehearsal.people.at(0).pieces)
    for (const domain::StepTrace& step : piece.steps) {
      LineWork& line = work.lines[step.step];
      line.seconds += step.work_s * step.share_of_runs;
      line.passes += step.share_of_runs;
      line.done = step.version;
    }
  return work;
}

domain::Board without_caps(domain::Board board) {
  std::ranges::for_each(board.blocks, drop_cap);
  return board;
}

domain::Board cut_to(domain::Board board, double share) {
  for (Block& block : board.blocks) cut(block, share);
  return board;
}

}  // namespace repwright::app
