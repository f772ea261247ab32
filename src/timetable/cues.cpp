#include "timetable/cues.hpp"

#include <algorithm>
#include <utility>

namespace repwright::timetable {

namespace {

using base::Duration;

/// Puts the cues of one class end to end.
class CueLine {
 public:
  CueLine(const Timetable& timetable, int people) : timetable_(timetable), people_(people) {}

  std::vector<Cue> take() {
    for (std::size_t box = 0; box < timetable_.boxes.size(); ++box) add_box(box);
    return std::move(cues_);
  }

 private:
  void add_box(std::size_t box);
  void add_part(const Box& box, bool before_a_clock_time);
  void add_heat(const Piece& piece, int heat);
  void add_phases(const Piece& piece, const Cue& like);
  void add_whole(const Piece& piece, const Cue& like);
  void add_tail(const Piece& piece, const Cue& like);
  void add_count_in(const Cue& like);
  void add(Cue cue);

  const Timetable& timetable_;
  int people_;
  std::size_t box_ = 0;
  int in_heat_ = 0;  // cues of this box and heat so far
  std::vector<Cue> cues_;
};

void CueLine::add(Cue cue) {
  cue.id = std::to_string(box_) + "." + std::to_string(cue.heat) + "." + std::to_string(in_heat_++);
  cues_.push_back(std::move(cue));
}

void CueLine::add_box(std::size_t index) {
  const Box& box = timetable_.boxes[index];
  box_ = index;
  in_heat_ = 0;
  if (!box.piece) {
    const bool last = index + 1 == timetable_.boxes.size();
    return add_part(box, !last && timetable_.boxes[index + 1].starts_at.has_value());
  }
  const Piece& piece = timetable_.pieces[static_cast<std::size_t>(*box.piece)];
  for (int heat = 0; heat < piece.heats; ++heat) {
    in_heat_ = 0;
    add_heat(piece, heat);
  }
}

void CueLine::add_part(const Box& box, bool before_a_clock_time) {
  if (box.planned && box.planned->si() <= 0) return;
  const bool rest = box.kind == BoxKind::Rest;
  Cue cue;
  cue.kind = rest ? CueKind::Rest : CueKind::Part;
  cue.name = box.name;
  cue.block = box.block;
  cue.length = box.planned;
  const bool by_itself = box.planned && (rest || before_a_clock_time);
  cue.end = by_itself ? CueEnd::ByItself : CueEnd::OnWord;
  cue.counting = box.planned ? Counting::Down : Counting::Up;
  cue.called = by_itself;
  add(std::move(cue));
}

/// When each group of a staggered start begins, from the heat's signal.
std::vector<Duration> groups_of(const Piece& piece, int people) {
  std::vector<Duration> starts;
  if (!piece.stagger) return starts;
  const int of_heat = (people + piece.heats - 1) / piece.heats;
  const int of_group = std::max(1, piece.stagger->people);
  for (int group = 0; group * of_group < of_heat; ++group) starts.push_back(piece.stagger->every * group);
  return starts.size() > 1 ? starts : std::vector<Duration>{};
}

void CueLine::add_heat(const Piece& piece, int heat) {
  Cue like;
  like.name = piece.name;
  like.piece = static_cast<int>(&piece - timetable_.pieces.data());
  like.block = piece.block;
  like.heat = heat;
  like.heats = piece.heats;
  if (heat > 0) {
    Cue change = like;
    change.kind = CueKind::Change;
    change.length = heat_change;
    change.called = true;
    add(std::move(change));
  }
  if (piece.clock != ClockKind::Own) add_count_in(like);
  like.group_starts = groups_of(piece, people_);
  if (piece.phases.empty())
    add_whole(piece, like);
  else
    add_phases(piece, like);
  add_tail(piece, like);
}

void CueLine::add_count_in(const Cue& like) {
  Cue cue = like;
  cue.kind = CueKind::CountIn;
  cue.length = count_in;
  cue.called = true;
  if (!cues_.empty()) {
    Cue& before = cues_.back();
    const bool gives = before.kind == CueKind::Rest || before.kind == CueKind::Change;
    if (gives && before.end == CueEnd::ByItself && before.length && *before.length >= count_in * 2) {
      *before.length -= count_in;
      before.called = false;  // the count-in calls
    }
  }
  add(std::move(cue));
}

void CueLine::add_phases(const Piece& piece, const Cue& like) {
  int rounds = 1;
  int slots = 1;
  for (const Phase& phase : piece.phases) {
    rounds = std::max(rounds, phase.round + 1);
    if (phase.kind == PhaseKind::Work) slots = std::max(slots, phase.slot + 1);
  }
  for (const Phase& phase : piece.phases) {
    Cue cue = like;
    cue.kind = phase.kind == PhaseKind::Work ? CueKind::Work : CueKind::Rest;
    cue.round = phase.round;
    cue.rounds = rounds;
    cue.slot = std::min(phase.slot, slots - 1);
    cue.slots = slots;
    cue.into = phase.start.duration();
    cue.length = (phase.end - phase.start).duration();
    cue.called = true;
    add(std::move(cue));
  }
}

/// A piece that is one stretch: until its cap, for its length, or as long as the people need.
void CueLine::add_whole(const Piece& piece, const Cue& like) {
  Cue cue = like;
  cue.kind = CueKind::Work;
  cue.length = piece.length ? piece.length : piece.cap;
  const bool open = !cue.length || piece.clock == ClockKind::Own;
  cue.end = open ? CueEnd::OnWord : CueEnd::ByItself;
  const bool down = cue.length && piece.clock != ClockKind::Up;
  cue.counting = down && cue.group_starts.empty() ? Counting::Down : Counting::Up;
  cue.called = !open;
  add(std::move(cue));
}

void CueLine::add_tail(const Piece& piece, const Cue& like) {
  const Cue& last = cues_.back();
  if (like.group_starts.empty() || last.end == CueEnd::OnWord) return;
  Cue cue = like;
  cue.kind = CueKind::Tail;
  cue.into = last.into + last.length.value_or(Duration{});
  cue.length = like.group_starts.back();
  cue.counting = piece.phases.empty() ? Counting::Up : Counting::Down;
  cue.called = true;
  add(std::move(cue));
}

}  // namespace

std::vector<Cue> cues_of(const Timetable& timetable, int people) {
  return CueLine(timetable, people).take();
}

}  // namespace repwright::timetable
