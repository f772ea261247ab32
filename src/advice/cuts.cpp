#include "advice/cuts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include "advice/consequences.hpp"
#include "advice/edit_parts.hpp"
#include "base/clock_text.hpp"
#include "timetable/box_words.hpp"
#include "timetable/clocks.hpp"

namespace repwright::advice {
namespace {

using domain::Block;
using domain::BlockKind;
using domain::Board;
using timetable::BoxKind;

// Judgements of ours, docs/decisions/timetable.md.
constexpr double shortest_s = 360;         // of a clock, a warm-up or a cool-down that may still be cut
constexpr double step_s = 120;             // by which it is
constexpr double whole_s = 30;             // to which a length is rounded up
constexpr double rest_step_s = 60;         // by which a rest is
constexpr double loss_of_warm_up = 0.4;    // per minute
constexpr double loss_of_cool_down = 0.2;  // per minute
constexpr double loss_of_rest = 0.1;       // per minute
constexpr double loss_of_a_part = 1;       // that people came for
constexpr double least_gain_s = 20;

std::string name_of(const Block& block) {
  if (!block.title.empty()) return block.title;
  if (timetable::has_clock(block)) return timetable::piece_name(block);
  if (block.text.empty() && block.kind == BlockKind::Rest) return timetable::box_name(BoxKind::Rest);
  return block.text;
}

/// The last piece with a clock: what the people came for.
const Block* last_piece(const std::vector<Block>& blocks) {
  for (auto block = blocks.rbegin(); block != blocks.rend(); ++block) {
    if (timetable::has_clock(*block)) return &*block;
    if (const Block* child = last_piece(block->children)) return child;
  }
  return nullptr;
}

class Cutting {
 public:
  explicit Cutting(const Board& board) : board_(board), last_(last_piece(board.blocks)) {
    each(board_.blocks);
  }
  std::vector<Cut> take() { return std::move(cuts_); }

 private:
  using Path = std::vector<std::size_t>;

  /// `within` is the path to the list of blocks.
  void each(const std::vector<Block>& blocks) {
    for (std::size_t i = 0; i < blocks.size(); ++i) {
      path_.push_back(i);
      one(blocks[i]);
      path_.pop_back();
    }
  }

  void one(const Block& block) {
    if (block.kind == BlockKind::Optional || block.kind == BlockKind::Window) return;
    if (!timetable::has_clock(block)) {
      plain(block);
      return each(block.children);
    }
    if (block.duration)
      fewer_sets_in_less(block);
    else
      fewer(block, &Block::sets, "sets", 3);
    if (block.cap)
      fewer_rounds_in_less(block, *block.cap);
    else if (has_like_rounds(block))
      fewer(block, &Block::rounds, "rounds", 2);
    fewer(block, &Block::intervals, "intervals", 3);
    const bool runs_down = block.kind == BlockKind::Amrap || block.kind == BlockKind::ForDistance;
    if (runs_down) shorter(block, step_s, 0);
    if (&block == last_) return;
    Cut cut{.words = {.name = name_of(block), .what = {}, .then = {}, .now = {}},
            .board = board_,
            .loss = loss_of_a_part};
    remove(cut.board);
    cuts_.push_back(std::move(cut));
  }

  void plain(const Block& block) {
    const BoxKind kind =
        timetable::box_kind(name_of(block), block.kind == BlockKind::Rest ? BoxKind::Rest : BoxKind::Note);
    if (kind == BoxKind::WarmUp) shorter(block, step_s, loss_of_warm_up);
    if (kind == BoxKind::CoolDown) shorter(block, step_s, loss_of_cool_down);
    if (kind == BoxKind::Rest) shorter(block, rest_step_s, loss_of_rest);
  }

  void shorter(const Block& block, double by_s, double loss_per_minute) {
    const double least = by_s == rest_step_s ? 2 * rest_step_s : shortest_s;
    const std::optional<base::Duration> now = block.duration;
    if (!now || now->si() - by_s < least) return;
    const base::Duration length = *now - by_s * base::second;
    Cut cut{.words = {.name = name_of(block),
                      .what = "length",
                      .then = base::format_clock(length),
                      .now = base::format_clock(*now)},
            .board = board_,
            .loss = loss_per_minute * by_s / 60};
    at_path(cut.board).duration = length;
    cuts_.push_back(std::move(cut));
  }

  void earlier_cap(const Block& block) {
    if (!block.cap || block.cap->si() - step_s < shortest_s) return;
    const double tenth = std::round(block.cap->si() / 600) * 60;
    const base::Duration cap = *block.cap - std::max(step_s, tenth) * base::second;
    Cut cut{.words = {.name = name_of(block),
                      .what = "cap",
                      .then = "cap " + base::format_clock(cap),
                      .now = base::format_clock(*block.cap)},
            .board = board_,
            .loss = 0};
    at_path(cut.board).cap = cap;
    cuts_.push_back(std::move(cut));
  }

  void fewer(const Block& block, std::optional<int> Block::* count, const char* what, int least) {
    const int now = (block.*count).value_or(0);
    if (now < least || block.duration) return;
    const int left = now - 1;
    Cut cut{.words = {.name = name_of(block),
                      .what = what,
                      .then = fmt::format("{} {}", left,
                                          left == 1 ? std::string(what, std::string(what).size() - 1) : what),
                      .now = std::to_string(now)},
            .board = board_,
            .loss = 0};
    at_path(cut.board).*count = left;
    cuts_.push_back(std::move(cut));
  }

  /// A set less where the board gives all sets so many minutes: those go down by the same share.
  void fewer_sets_in_less(const Block& block) {
    const int sets = block.sets.value_or(0);
    const base::Duration given = block.duration.value_or(base::Duration{});
    if (sets < 3) return;
    const int left = sets - 1;
    const double share = static_cast<double>(left) / sets;
    const base::Duration length = std::ceil(share * given.si() / whole_s) * whole_s * base::second;
    Cut cut{.words = {.name = name_of(block),
                      .what = "sets",
                      .then = fmt::format("{} sets in {}", left, base::format_clock(length)),
                      .now = fmt::format("{} in {}", sets, base::format_clock(given))},
            .board = board_,
            .loss = 0};
    at_path(cut.board).sets = left;
    at_path(cut.board).duration = length;
    cuts_.push_back(std::move(cut));
  }

  /// A round less of the piece or of its first part with rounds, and the cap earlier by the same share of it;
  /// without rounds only the cap.
  void fewer_rounds_in_less(const Block& block, base::Duration now) {
    const auto has_rounds = [](const Block& one) {
      return one.rounds.value_or(0) >= 2 && has_like_rounds(one);
    };
    const auto part = std::ranges::find_if(block.children, has_rounds);
    const bool in_a_part = !has_rounds(block) && part != block.children.end();
    if (!has_rounds(block) && !in_a_part) return earlier_cap(block);
    const int rounds = (in_a_part ? *part : block).rounds.value_or(2);
    const double share = 1 - 1.0 / rounds;
    const base::Duration cap = std::ceil(share * now.si() / 60) * base::minute;
    if (cap.si() < shortest_s || cap >= now) return;
    Cut cut{.words = {.name = name_of(block),
                      .what = "rounds and cap",
                      .then = fmt::format("{} {}, cap {}", rounds - 1, rounds == 2 ? "round" : "rounds",
                                          base::format_clock(cap)),
                      .now = fmt::format("{}, cap {}", rounds, base::format_clock(now))},
            .board = board_,
            .loss = 0};
    Block& changed = at_path(cut.board);
    changed.cap = cap;
    (in_a_part ? changed.children[static_cast<std::size_t>(part - block.children.begin())] : changed).rounds =
        rounds - 1;
    cuts_.push_back(std::move(cut));
  }

  std::vector<Block>& list_at_path(Board& board) const {
    std::vector<Block>* list = &board.blocks;
    for (std::size_t depth = 0; depth + 1 < path_.size(); ++depth) list = &(*list)[path_[depth]].children;
    return *list;
  }
  Block& at_path(Board& board) const { return list_at_path(board)[path_.back()]; }
  void remove(Board& board) const {
    std::vector<Block>& list = list_at_path(board);
    list.erase(list.begin() + static_cast<std::ptrdiff_t>(path_.back()));
  }

  const Board& board_;
  const Block* last_;
  Path path_;
  std::vector<Cut> cuts_;
};

double lost(const Cut& cut, const domain::Consequences& before, const domain::Consequences& after) {
  const double work = before.work_s > 0 ? std::max(0.0, 1 - after.work_s / before.work_s) : 0;
  const double stopped = std::max(0.0, before.finished - after.finished);
  return cut.loss + minutes_of_lost_work * work + minutes_of_unfinished * stopped;
}

/// The place of the cut that loses least for what it gives, beyond what is `needed` nothing; nothing where
/// none gives anything.
std::optional<std::size_t> best_of(const std::vector<Cut>& cuts,
                                   const std::vector<std::optional<domain::Consequences>>& after,
                                   const domain::Consequences& before, double needed_s) {
  std::optional<std::size_t> best;
  double least = 0;
  for (std::size_t c = 0; c < cuts.size(); ++c) {
    const auto& then = after[c];
    if (!then) continue;
    const double gives = before.end_p50_s - then->end_p50_s;
    if (gives < least_gain_s) continue;
    const double price = lost(cuts[c], before, *then) / std::min(gives, needed_s);
    if (best && price >= least) continue;
    best = c;
    least = price;
  }
  return best;
}

}  // namespace

std::string CutWords::said() const {
  if (then.empty()) return "leave out " + name;
  return fmt::format("{}: {} instead of {}", name, then, now);
}

std::vector<Cut> cuts_of(const Board& board) {
  return Cutting(board).take();
}

base::Result<std::vector<OrderedCut>> cuts_in_order(const Board& board, const Trial& trial,
                                                    const CutSearch& search,
                                                    const rehearsal::ForEach& for_each) {
  const auto whole = trial(board, search.runs);
  if (!whole) return tl::unexpected(whole.error());
  std::vector<OrderedCut> order;
  Board now = board;
  domain::Consequences before = *whole;
  while (static_cast<int>(order.size()) < search.most) {
    const double needed_s =
        search.until_s ? before.end_p90_s - *search.until_s : std::numeric_limits<double>::infinity();
    if (needed_s <= 0) break;
    std::vector<Cut> cuts = cuts_of(now);
    std::vector<std::optional<domain::Consequences>> after(cuts.size());
    for_each(static_cast<int>(cuts.size()), [&](int c) {
      const auto at = static_cast<std::size_t>(c);
      if (auto told = trial(cuts[at].board, search.runs)) after[at] = *told;
    });
    const auto best = best_of(cuts, after, before, needed_s);
    if (!best) break;
    const domain::Consequences then = after[*best].value_or(before);
    now = std::move(cuts[*best].board);
    order.push_back({.words = cuts[*best].words,
                     .told = {.words = cuts[*best].words.said(),
                              .gives_s = before.end_p50_s - then.end_p50_s,
                              .end_p90_s = then.end_p90_s,
                              .work_left = whole->work_s > 0 ? then.work_s / whole->work_s : 1},
                     .board = now});
    before = then;
  }
  return order;
}

}  // namespace repwright::advice
