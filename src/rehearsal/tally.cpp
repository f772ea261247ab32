#include "rehearsal/tally.hpp"

#include <algorithm>
#include <cmath>

namespace repwright::rehearsal {

namespace {

/// Adds `more` to `sums`, place by place, growing as needed.
void add_each(std::vector<std::int64_t>& sums, const std::vector<std::int64_t>& more) {
  if (sums.size() < more.size()) sums.resize(more.size(), 0);
  for (std::size_t i = 0; i < more.size(); ++i) sums[i] += more[i];
}

void add_line(LineSum& sum, const LineSum& more) {
  sum.runs += more.runs;
  sum.start += more.start;
  sum.end += more.end;
  sum.work += more.work;
  sum.rest += more.rest;
  sum.wait += more.wait;
  sum.sets += more.sets;
  sum.milliunits += more.milliunits;
  sum.backs.insert(sum.backs.end(), more.backs.begin(), more.backs.end());
}

}  // namespace

Tally::Tally(const FloorPlan& plan, Keep keep)
    : parts_(plan.pieces.size(), std::vector<PartSum>(plan.late.size())),
      queues_(plan.places.size()),
      waited_(plan.places.size(), std::vector<std::int64_t>(plan.late.size(), 0)),
      keep_(keep) {}

void Tally::begin(int run) {
  run_ = run;
  for (auto& place : waited_) std::ranges::fill(place, 0);
  for (QueueSum& queue : queues_) queue.longest_now = 0;
  for (auto& piece : parts_) {
    for (PartSum& part : piece) {
      part.next_line = 0;
      if (keep_ == Keep::Draws) part.ends.emplace_back();
    }
  }
}

std::int64_t Tally::waited(int place, int person) const {
  return waited_[static_cast<std::size_t>(place)][static_cast<std::size_t>(person)];
}

/// The sum of that line. Runs mostly take the same way, so the line after the last one is tried first.
LineSum& Tally::line(PartSum& sum, const Stint& stint) {
  const auto same = [&](const LineSum& line) {
    return line.op == stint.op && line.round == stint.round && line.task == stint.task;
  };
  if (sum.next_line < sum.lines.size() && same(sum.lines[sum.next_line])) return sum.lines[sum.next_line++];
  const auto known = std::ranges::find_if(sum.lines, same);
  sum.next_line = static_cast<std::size_t>(known - sum.lines.begin()) + 1;
  if (known != sum.lines.end()) return *known;
  return sum.lines.emplace_back(LineSum{.op = stint.op, .round = stint.round, .task = stint.task});
}

void Tally::worked(Part part, const Stint& stint, const Player& player) {
  PartSum& sum = parts_[static_cast<std::size_t>(part.piece)][static_cast<std::size_t>(part.person)];
  LineSum& line = this->line(sum, stint);
  const std::int64_t end = stint.end - player.zero;
  if (line.last_run == run_) {
    line.end += end - line.last_end;  // carried over: the same line, gone on with
  } else {
    ++line.runs;
    line.start += stint.start - player.zero;
    line.end += end;
  }
  line.last_run = run_;
  line.last_end = end;
  line.work += stint.work;
  line.rest += stint.rest;
  line.wait += stint.wait;
  line.sets += stint.sets;
  line.milliunits += std::llround(stint.units * 1000);
  if (player.script->tasks[static_cast<std::size_t>(stint.task)].outdoors)
    line.backs.push_back(static_cast<std::int32_t>(end));
  if (keep_ == Keep::Draws) sum.ends.back().push_back(static_cast<float>(seconds_of(end)));
}

void Tally::queued(int place, int person, std::int64_t from, std::int64_t to) {
  waited_[static_cast<std::size_t>(place)][static_cast<std::size_t>(person)] += to - from;
  std::vector<std::int64_t>& bins = queues_[static_cast<std::size_t>(place)].waited;
  const auto last = static_cast<std::size_t>(to / queue_bin);
  if (bins.size() <= last) bins.resize(last + 1, 0);
  for (std::int64_t at = from; at < to;) {
    const std::int64_t bin = at / queue_bin;
    const std::int64_t until = std::min(to, (bin + 1) * queue_bin);
    bins[static_cast<std::size_t>(bin)] += until - at;
    at = until;
  }
}

void Tally::queue_length(int place, int waiting) {
  QueueSum& queue = queues_[static_cast<std::size_t>(place)];
  queue.longest_now = std::max(queue.longest_now, waiting);
}

void Tally::lap(Part part, int lap, std::int64_t ms) {
  PartSum& sum = parts_[static_cast<std::size_t>(part.piece)][static_cast<std::size_t>(part.person)];
  const auto at = static_cast<std::size_t>(lap);
  if (sum.lap_ms.size() <= at) {
    sum.lap_ms.resize(at + 1, 0);
    sum.lap_runs.resize(at + 1, 0);
  }
  sum.lap_ms[at] += ms;
  ++sum.lap_runs[at];
}

void Tally::finish(const Floor& floor, const RunSetting& setting) {
  for (std::size_t piece = 0; piece < parts_.size(); ++piece) {
    for (std::size_t p = 0; p < parts_[piece].size(); ++p) {
      const PieceResult& result = floor.results()[piece][p];
      if (!result.took_part) continue;
      PartSum& sum = parts_[piece][p];
      ++sum.runs;
      sum.queued += result.queued;
      for (std::size_t i = 0; i < limiter_count; ++i) sum.losses[i] += result.losses[i];
      const double minutes = seconds_of(std::max(std::int64_t{1}, result.home - result.zero)) / 60;
      sum.demand += std::llround(1e6 * result.oxygen / minutes / setting.bodies[p].vo2max);
    }
  }
  for (QueueSum& queue : queues_) queue.longest += queue.longest_now;
}

void Tally::add(const Tally& later) {
  for (std::size_t piece = 0; piece < parts_.size(); ++piece) {
    for (std::size_t p = 0; p < parts_[piece].size(); ++p) {
      PartSum& sum = parts_[piece][p];
      const PartSum& more = later.parts_[piece][p];
      for (const LineSum& line : more.lines) {
        const Stint key{.op = line.op, .round = line.round, .task = line.task};
        add_line(this->line(sum, key), line);
      }
      add_each(sum.lap_ms, more.lap_ms);
      add_each(sum.lap_runs, more.lap_runs);
      for (std::size_t i = 0; i < limiter_count; ++i) sum.losses[i] += more.losses[i];
      sum.runs += more.runs;
      sum.queued += more.queued;
      sum.demand += more.demand;
      sum.ends.insert(sum.ends.end(), more.ends.begin(), more.ends.end());
    }
  }
  for (std::size_t place = 0; place < queues_.size(); ++place) {
    add_each(queues_[place].waited, later.queues_[place].waited);
    queues_[place].longest += later.queues_[place].longest;
  }
}

}  // namespace repwright::rehearsal
