#include <algorithm>
#include <string>
#include <vector>

#include "timetable/box_words.hpp"
#include "timetable/clocks.hpp"
#include "timetable/timetable.hpp"

namespace repwright::timetable {

namespace {

using domain::Block;
using domain::BlockKind;
using OptionalDuration = std::optional<base::Duration>;

/// Puts boxes one after the other and keeps the clock as long as everything before was planned.
class Hour {
 public:
  explicit Hour(const LayoutRules& rules) : rules_(rules) {}

  void add(Box box) {
    clock_ = clock_ && box.planned ? OptionalDuration(*clock_ + *box.planned) : std::nullopt;
    boxes_.push_back(std::move(box));
  }
  void add_block(const Block& block);
  void start_windows() { window_zero_ = clock_; }
  OptionalDuration clock() const { return clock_; }
  std::vector<Box> take_boxes() { return std::move(boxes_); }
  std::vector<Piece> take_pieces() { return std::move(pieces_); }

 private:
  void add_piece(const Block& block, OptionalDuration room);
  void add_plain(const Block& block);
  void add_window(const Block& block);
  void add_children(const std::vector<Block>& children, OptionalDuration total);

  LayoutRules rules_;
  std::vector<Box> boxes_;
  std::vector<Piece> pieces_;
  OptionalDuration clock_ = base::Duration{};
  OptionalDuration window_zero_ = base::Duration{};
};

std::string words_of(const Block& block) {
  return block.title.empty() ? block.text : block.title;
}

void Hour::add_piece(const Block& block, OptionalDuration room) {
  Piece piece = piece_of(block, rules_);
  if (piece.name.empty()) piece.name = piece_name(block);
  if (room && !piece.length && (!piece.cap || *room < *piece.cap)) piece.cap = room;
  Box box;
  box.name = piece.name;
  box.planned = room ? room : planned_length(block, rules_);
  box.piece = static_cast<int>(pieces_.size());
  box.block = block.id;
  pieces_.push_back(std::move(piece));
  add(std::move(box));
}

void Hour::add_plain(const Block& block) {
  const bool rests = block.kind == BlockKind::Rest;
  const bool warms = block.kind == BlockKind::Once || block.kind == BlockKind::Rounds;
  Box box;
  box.kind = box_kind(words_of(block), rests ? BoxKind::Rest : warms ? BoxKind::WarmUp : BoxKind::Note);
  if (box.kind == BoxKind::Note && !block.duration) return;
  box.name = words_of(block).empty() ? box_name(box.kind) : words_of(block);
  box.planned = block.duration;
  if (!box.planned && block.kind == BlockKind::Note) box.planned = base::Duration{};
  box.block = block.id;
  add(std::move(box));
}

void Hour::add_window(const Block& block) {
  const base::Duration from = block.from.value_or(base::Duration{});
  const base::Duration to = block.to.value_or(from);
  const OptionalDuration start = window_zero_ ? OptionalDuration(*window_zero_ + from) : std::nullopt;
  if (start && clock_ && *clock_ < *start)
    add({.kind = BoxKind::Change,
         .name = box_name(BoxKind::Change),
         .planned = *start - *clock_,
         .starts_at = {},
         .piece = {},
         .block = {}});
  const std::size_t first = boxes_.size();
  if (block.children.empty()) {
    const BoxKind kind = box_kind(words_of(block), BoxKind::Note);
    add({.kind = kind,
         .name = words_of(block).empty() ? box_name(kind) : words_of(block),
         .planned = to - from,
         .starts_at = {},
         .piece = {},
         .block = block.id});
  } else {
    add_children(block.children, to - from);
  }
  if (first < boxes_.size()) boxes_[first].starts_at = start;
}

void Hour::add_children(const std::vector<Block>& children, OptionalDuration total) {
  if (!total) {
    for (const Block& child : children) add_block(child);
    return;
  }
  base::Duration left = *total;
  int open = 0;
  std::size_t timed = 0;
  for (std::size_t i = 0; i < children.size(); ++i) {
    if (children[i].kind == BlockKind::Optional) continue;
    const OptionalDuration length = planned_length(children[i], rules_);
    left -= length.value_or(base::Duration{});
    if (length && has_clock(children[i])) timed = i;
    if (!length && has_clock(children[i])) ++open;
  }
  const bool spare = open == 0 && left > base::Duration{};  // the last timed child keeps what is over
  for (std::size_t i = 0; i < children.size(); ++i) {
    const Block& child = children[i];
    OptionalDuration room = planned_length(child, rules_);
    if (!room && open > 0 && left > base::Duration{}) room = left / open;
    if (spare && room && i == timed) room = *room + left;
    if (has_clock(child))
      add_piece(child, room);
    else
      add_block(child);
  }
}

void Hour::add_block(const Block& block) {
  switch (block.kind) {
    case BlockKind::Optional:
      return;
    case BlockKind::Window:
      return add_window(block);
    case BlockKind::Part:
      return add_children(block.children, block.duration);
    default:
      return has_clock(block) ? add_piece(block, std::nullopt) : add_plain(block);
  }
}

bool names(const std::vector<Box>& boxes, BoxKind kind) {
  return std::ranges::any_of(boxes, [&](const Box& box) { return box.kind == kind; });
}

Box class_box(BoxKind kind, base::Duration length) {
  Box box;
  box.kind = kind;
  box.name = box_name(kind);
  box.planned = length;
  return box;
}

/// The class's minutes for boxes that the board names without minutes.
void fill_lengths(std::vector<Box>& boxes, const domain::ClassBoxes& known) {
  for (Box& box : boxes) {
    if (box.piece || (box.planned && box.planned->si() > 0)) continue;
    if (box.kind == BoxKind::Briefing && known.briefing) box.planned = known.briefing;
    if (box.kind == BoxKind::Change && known.change) box.planned = known.change;
    if (box.kind == BoxKind::Scores && known.scores) box.planned = known.scores;
    if (box.kind == BoxKind::Clean && known.clean) box.planned = known.clean;
  }
}

/// Change-over before the last piece, scores after it, cleaning at the end, where the board is silent.
/// Nothing is put between windows: they stand at clock times.
void add_class_boxes(std::vector<Box>& boxes, const domain::ClassBoxes& known) {
  const bool by_the_clock =
      std::ranges::any_of(boxes, [](const Box& box) { return box.starts_at.has_value(); });
  const auto last_piece = [&] {
    const auto back =
        std::find_if(boxes.rbegin(), boxes.rend(), [](const Box& b) { return b.piece.has_value(); });
    return back == boxes.rend() ? boxes.end() : std::prev(back.base());
  };
  if (known.scores && !names(boxes, BoxKind::Scores)) {
    const auto at = last_piece();
    boxes.insert(at == boxes.end() || by_the_clock ? boxes.end() : std::next(at),
                 class_box(BoxKind::Scores, *known.scores));
  }
  if (known.change && !by_the_clock && !names(boxes, BoxKind::Change)) {
    const auto at = last_piece();
    if (at != boxes.begin() && at != boxes.end()) boxes.insert(at, class_box(BoxKind::Change, *known.change));
  }
  if (known.clean && !names(boxes, BoxKind::Clean)) boxes.push_back(class_box(BoxKind::Clean, *known.clean));
}

/// Pieces of the same name are told apart by a number.
void number_names(Timetable& timetable) {
  std::vector<std::string> plain;
  plain.reserve(timetable.pieces.size());
  for (const Piece& piece : timetable.pieces) plain.push_back(piece.name);
  for (std::size_t i = 0; i < plain.size(); ++i) {
    if (std::ranges::count(plain, plain[i]) < 2) continue;
    const auto before = std::count(plain.begin(), plain.begin() + static_cast<std::ptrdiff_t>(i), plain[i]);
    timetable.pieces[i].name = plain[i] + " (" + std::to_string(before + 1) + ")";
  }
  for (Box& box : timetable.boxes)
    if (box.piece) box.name = timetable.pieces[static_cast<std::size_t>(*box.piece)].name;
}

}  // namespace

Timetable lay_out(const domain::Board& board, const domain::GymClass& gym_class, const LayoutRules& rules) {
  Hour draft(rules);  // to see what the board names by itself
  for (const Block& block : board.blocks) draft.add_block(block);
  const bool briefed = names(draft.take_boxes(), BoxKind::Briefing);

  Hour hour(rules);
  if (gym_class.boxes.briefing && !briefed) hour.add(class_box(BoxKind::Briefing, *gym_class.boxes.briefing));
  bool in_windows = false;
  for (const Block& block : board.blocks) {
    const bool window = block.kind == BlockKind::Window;
    if (window && !in_windows) hour.start_windows();
    in_windows = window;
    hour.add_block(block);
  }
  Timetable timetable;
  timetable.boxes = hour.take_boxes();
  timetable.pieces = hour.take_pieces();
  timetable.class_length = gym_class.length;
  fill_lengths(timetable.boxes, gym_class.boxes);
  add_class_boxes(timetable.boxes, gym_class.boxes);
  number_names(timetable);
  return timetable;
}

}  // namespace repwright::timetable
