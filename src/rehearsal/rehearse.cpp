#include "rehearsal/rehearse.hpp"

#include <algorithm>
#include <memory>

#include "rehearsal/luck.hpp"
#include "rehearsal/pacing.hpp"
#include "rehearsal/summary.hpp"

namespace repwright::rehearsal {

namespace {

constexpr int most_chunks = 16;
constexpr int people_per_chunk = 4000;  // chunks x people: each chunk has sums of its own
constexpr int day_runs = 64;            // of the middle body on other days
constexpr int day_chunks = 2;
constexpr std::uint64_t day_offset = std::uint64_t{1} << 32U;  // other days have draws of their own

struct Chunk {
  int first = 0, last = 0;
  Bodies bodies = Bodies::Drawn;
  std::unique_ptr<Tally> tally = nullptr;
};

/// How the runs are split: by the size of the class alone, never by threads.
std::vector<Chunk> split(int runs, std::size_t people) {
  std::vector<Chunk> chunks;
  const int room = people_per_chunk / std::max(1, static_cast<int>(people));
  const int count = std::clamp(room, 2, most_chunks);
  for (int i = 0; i < count; ++i) {
    const int first = static_cast<int>(std::int64_t{runs} * i / count);
    const int last = static_cast<int>(std::int64_t{runs} * (i + 1) / count);
    if (first < last) chunks.push_back({.first = first, .last = last});
  }
  const int days = std::min(day_runs, runs);
  for (int i = 0; i < day_chunks; ++i)
    chunks.push_back(
        {.first = days * i / day_chunks, .last = days * (i + 1) / day_chunks, .bodies = Bodies::Median});
  return chunks;
}

/// Plays some runs in order and writes their rows.
class ChunkPlayer {
 public:
  ChunkPlayer(const RehearsalRequest& request, const Expectations& expectations,
              const std::vector<std::vector<domain::Measure>>& measures)
      : request_(request), expectations_(expectations), measures_(measures) {}

  void play(Chunk& chunk, RunTable& table) const {
    Floor floor(request_.plan, request_.timetable, request_.constants, Crowd::Shared);
    RunSetting setting = even_day(request_.cast, request_.timetable);
    const bool drawn = chunk.bodies == Bodies::Drawn;
    if (drawn) chunk.tally = std::make_unique<Tally>(request_.plan, request_.keep);
    for (int run = chunk.first; run < chunk.last; ++run) {
      if (request_.stop.stop_requested()) return;
      const auto number = static_cast<std::uint64_t>(run) + (drawn ? 0 : day_offset);
      draw_run(setting, request_.cast, request_.timetable, {request_.seed, number}, chunk.bodies);
      set_targets(setting, expectations_, request_.cast);
      if (drawn) chunk.tally->begin(run);
      floor.play(setting, chunk.tally.get());
      if (drawn) chunk.tally->finish(floor, setting);
      write_row(floor, setting, chunk.tally.get(), table, static_cast<std::size_t>(run));
    }
  }

 private:
  void write_row(const Floor& floor, const RunSetting& setting, const Tally* tally, RunTable& table,
                 std::size_t run) const {
    for (std::size_t piece = 0; piece < table.pieces; ++piece)
      for (std::size_t p = 0; p < table.people; ++p)
        table.score(piece, p, run) =
            score_of(request_.plan.pieces[piece].scripts[p], floor.results()[piece][p], measures_[piece][p]);
    for (std::size_t b = 0; b < table.boxes; ++b) table.box_ends[b * table.runs + run] = floor.boxes()[b].end;
    for (std::size_t p = 0; p < table.people; ++p)
      table.vo2max[p * table.runs + run] = static_cast<float>(setting.bodies[p].vo2max);
    if (!tally) return;
    for (std::size_t place = 0; place < table.places; ++place)
      for (std::size_t p = 0; p < table.people; ++p)
        table.wait(place, p, run) =
            static_cast<std::int32_t>(tally->waited(static_cast<int>(place), static_cast<int>(p)));
  }

  const RehearsalRequest& request_;
  const Expectations& expectations_;
  const std::vector<std::vector<domain::Measure>>& measures_;
};

std::vector<std::vector<domain::Measure>> measures_of(const RehearsalRequest& request) {
  std::vector<std::vector<domain::Measure>> measures;
  for (const ScriptedPiece& piece : request.plan.pieces) {
    const timetable::Piece& when = request.timetable.pieces[static_cast<std::size_t>(piece.piece)];
    auto& row = measures.emplace_back();
    for (const Script& script : piece.scripts) row.push_back(measure_of(script, !when.length.has_value()));
  }
  return measures;
}

}  // namespace

void one_after_another(int count, const std::function<void(int)>& one) {
  for (int i = 0; i < count; ++i) one(i);
}

base::Result<domain::Rehearsal> rehearse(const RehearsalRequest& request, const ForEach& for_each) {
  if (request.cast.median.empty()) return base::failure(base::ErrorCode::Invalid, "nobody is in the class");
  if (request.runs < 1) return base::failure(base::ErrorCode::Invalid, "a rehearsal takes one run or more");
  const Expectations expectations = expect(request.plan, request.timetable, request.constants, request.cast);
  const auto measures = measures_of(request);
  const ChunkPlayer player(request, expectations, measures);
  std::vector<Chunk> chunks = split(request.runs, request.cast.median.size());
  RunTable table(request.plan, request.timetable, request.runs);
  RunTable days(request.plan, request.timetable, std::min(day_runs, request.runs));
  for_each(static_cast<int>(chunks.size()), [&](int i) {
    Chunk& chunk = chunks[static_cast<std::size_t>(i)];
    player.play(chunk, chunk.bodies == Bodies::Drawn ? table : days);
  });
  if (request.stop.stop_requested())
    return base::failure(base::ErrorCode::Stopped, "the rehearsal was stopped");
  Tally& sums = *chunks.front().tally;
  for (std::size_t i = 1; i < chunks.size(); ++i)
    if (chunks[i].tally) sums.add(*chunks[i].tally);
  return summarise({.request = request, .table = table, .days = days, .sums = sums, .measures = measures});
}

}  // namespace repwright::rehearsal
