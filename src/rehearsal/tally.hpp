#pragma once

#include <cstdint>
#include <vector>

#include "rehearsal/floor.hpp"

namespace repwright::rehearsal {

/// One line of work in one round, summed over runs. Whole numbers, so that no order of adding changes a bit.
struct LineSum {
  int op = 0, round = 0, task = -1;
  std::int64_t runs = 0;
  std::int64_t start = 0, end = 0, work = 0, rest = 0, wait = 0;  // ms from the start signal
  std::int64_t sets = 0, milliunits = 0;
  std::vector<std::int32_t> backs = {};  // ms from the start signal, of runs outdoors
  int last_run = -1;
  std::int64_t last_end = 0;
};

/// One person's piece, summed over runs.
struct PartSum {
  std::vector<LineSum> lines;
  std::vector<std::int64_t> lap_ms, lap_runs;
  Losses losses{};
  std::int64_t runs = 0, queued = 0;
  std::int64_t demand = 0;               // millionths of VO2max
  std::vector<std::vector<float>> ends;  // on demand: of each run, s
  std::size_t next_line = 0;
};

/// The queue of one place, summed over runs.
struct QueueSum {
  std::vector<std::int64_t> waited;  // ms x people, per bin of the class
  std::int64_t longest = 0;          // sum over runs of the longest queue
  int longest_now = 0;
};

inline constexpr std::int64_t queue_bin = 10'000;  // ms

enum class Keep : std::uint8_t { Sums, Draws };

/// Adds up what happens in some of the runs.
class Tally final : public Recorder {
 public:
  Tally(const FloorPlan& plan, Keep keep);

  /// From now on it is run `run`.
  void begin(int run);
  /// The run is over; the floor's results are added.
  void finish(const Floor& floor, const RunSetting& setting);
  /// Adds the sums of later runs.
  void add(const Tally& later);

  const PartSum& part(int piece, int person) const {
    return parts_[static_cast<std::size_t>(piece)][static_cast<std::size_t>(person)];
  }
  const QueueSum& queue(int place) const { return queues_[static_cast<std::size_t>(place)]; }
  /// Milliseconds that the person stood in the queue of that place in the present run.
  std::int64_t waited(int place, int person) const;

  void worked(Part part, const Stint& stint, const Player& player) override;
  void queued(int place, int person, std::int64_t from, std::int64_t to) override;
  void queue_length(int place, int waiting) override;
  void lap(Part part, int lap, std::int64_t ms) override;

 private:
  static LineSum& line(PartSum& sum, const Stint& stint);

  std::vector<std::vector<PartSum>> parts_;  // [piece][person]
  std::vector<QueueSum> queues_;
  std::vector<std::vector<std::int64_t>> waited_;  // [place][person], of the present run
  int run_ = 0;
  Keep keep_ = Keep::Sums;
};

}  // namespace repwright::rehearsal
