#include "advice/amount_edits.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <optional>
#include <string>
#include <utility>

#include "advice/edit_parts.hpp"
#include "base/clock_text.hpp"
#include "domain/board_search.hpp"
#include "domain/spoken.hpp"

namespace repwright::advice {
namespace {

using domain::Block;
using domain::BlockKind;
using domain::Edit;
using domain::Item;
using domain::RepairKind;
using domain::Unit;

constexpr double shortest_run = 100;                   // metres; runs are chalked in steps of half of that
constexpr std::array<double, 2> shares = {0.75, 0.5};  // of a distance or of every line
constexpr std::array<double, 2> longer_s = {30, 60};   // by which an interval grows
constexpr int most_more_rounds = 2;

std::string rounds_words(int rounds, int instead_of) {
  return fmt::format("{} {} instead of {}", rounds, rounds == 1 ? "round" : "rounds", instead_of);
}

double in_run_steps(double metres) {
  const double step = shortest_run / 2;
  return std::round(metres / step) * step;
}

/// The lines of one piece changed all at once, or its rounds, intervals and cap.
class AmountEdits {
 public:
  AmountEdits(const EditRequest& request, const Block& block) : request_(request), block_(block) {}

  void less() {
    for (const Lines& part : lines_of(block_))
      for (const Item& item : *part.items)
        std::ranges::move(shorter_runs(request_, block_, item), std::back_inserter(edits_));
    each_with_rounds(&AmountEdits::fewer_rounds);
  }
  /// Where the piece itself is too much, and not only the hour too short.
  void less_of_itself() {
    for (const double share : shares) less_of_each(share);
    longer_intervals();
  }
  void more() { each_with_rounds(&AmountEdits::more_rounds); }
  /// The one by which most are home.
  void later_cap(const std::optional<domain::CapTarget>& target) {
    if (!target || !block_.cap || block_.every || target->seconds <= block_.cap->si()) return;
    const base::Duration cap = target->seconds * base::second;
    Edit edit =
        change(RepairKind::Cap, 1,
               fmt::format("cap {} instead of {}", base::format_clock(cap), base::format_clock(*block_.cap)));
    changed(edit).cap = cap;
    edits_.push_back(std::move(edit));
  }

  std::vector<Edit> take() { return std::move(edits_); }

 private:
  void each_with_rounds(void (AmountEdits::*edit)(const Block&)) {
    (this->*edit)(block_);
    for (const Block& child : block_.children) (this->*edit)(child);
  }

  /// One or two less, or half of them: what is far too long needs more than a trim.
  void fewer_rounds(const Block& block) {
    if (!has_like_rounds(block) || block.rounds.value_or(1) < 2) return;
    const int half = block.rounds.value_or(2) / 2;
    for (int less = 1; less <= half; ++less) {
      if (less > 2 && less < half) continue;
      rounds(block, RepairKind::FewerRounds, block.rounds.value_or(2) - less, 1 + less);
    }
  }
  void more_rounds(const Block& block) {
    if (!has_like_rounds(block)) return;
    for (int more = 1; more <= most_more_rounds; ++more)
      rounds(block, RepairKind::MoreRounds, block.rounds.value_or(1) + more, 1 + more);
  }
  void rounds(const Block& block, RepairKind kind, int number, double size) {
    Edit edit = change(kind, size, rounds_words(number, block.rounds.value_or(1)));
    domain::find_block(edit.board, block.id)->rounds = number;
    edits_.push_back(std::move(edit));
  }

  void less_of_each(double share) {
    Edit edit = change(RepairKind::LessOfEach, 2,
                       share > 0.7 ? "a quarter less of every line" : "half of every line");
    int lines = 0;
    for (const Lines& part : lines_of(block_))
      for (const Item& item : *part.items) {
        const double* amount = plain_amount(item);
        if (amount == nullptr || item.unit == Unit::Seconds) continue;
        const double less = item.unit == Unit::Metres ? std::max(in_run_steps(*amount * share), 50.0)
                                                      : std::max(std::floor(*amount * share + 0.5), 1.0);
        if (less >= *amount) continue;
        domain::find_item(edit.board, item.step)->amount = less;
        edit.steps.push_back(item.step);
        ++lines;
      }
    if (lines > 1) edits_.push_back(std::move(edit));
  }

  /// As many as fit into the time that the intervals took before.
  void longer_intervals() {
    if (block_.kind != BlockKind::Every || !block_.every || !block_.intervals) return;
    const double total = block_.every->si() * *block_.intervals;
    for (const double by : longer_s) {
      const base::Duration every = *block_.every + by * base::second;
      const int intervals = static_cast<int>(total / every.si() + 1e-9);
      if (intervals < 2) continue;
      Edit edit = change(RepairKind::LongerInterval, 2,
                         fmt::format("every {} x {} instead of every {} x {}", base::format_clock(every),
                                     intervals, base::format_clock(*block_.every), *block_.intervals));
      changed(edit).every = every;
      changed(edit).intervals = intervals;
      edits_.push_back(std::move(edit));
    }
  }

  Edit change(RepairKind kind, double size, std::string words) const {
    return edit_of(request_.board, kind, block_.id, {}, {size, std::move(words)});
  }
  Block& changed(Edit& edit) const { return *domain::find_block(edit.board, block_.id); }

  const EditRequest& request_;
  const Block& block_;
  std::vector<Edit> edits_;
};

std::optional<domain::CapTarget> cap_of(const EditRequest& request, std::size_t piece) {
  for (const domain::PieceTarget& target : request.targets)
    if (target.piece == static_cast<int>(piece)) return target.cap;
  return std::nullopt;
}

}  // namespace

std::vector<Edit> amount_edits(const EditRequest& request, std::size_t piece, const Troubles& troubles,
                               const Block& block) {
  const PieceTrouble& trouble = troubles.pieces[piece];
  const bool over = troubles.class_over;
  AmountEdits edits(request, block);
  const bool too_much = trouble.capped || trouble.too_much;
  if (too_much || over) edits.less();
  if (too_much) edits.less_of_itself();
  if (trouble.capped && !trouble.too_much && !over) edits.later_cap(cap_of(request, piece));
  if (trouble.too_little && !too_much) edits.more();
  return edits.take();
}

std::vector<Edit> shorter_runs(const EditRequest& request, const Block& block, const Item& item) {
  std::vector<Edit> edits;
  const double* amount = plain_amount(item);
  const domain::Movement* movement = movement_of(item, request.catalogue);
  if (amount == nullptr || movement == nullptr || item.unit != Unit::Metres) return edits;
  for (const double share : shares) {
    const double metres = in_run_steps(*amount * share);
    if (metres < shortest_run || metres >= *amount) continue;
    Edit edit = edit_of(request.board, RepairKind::ShorterRun, block.id, {item.step},
                        {1.5, fmt::format("{} {} m instead of {} m", domain::spoken_one(*movement),
                                          whole_number(metres), whole_number(*amount))});
    domain::find_item(edit.board, item.step)->amount = metres;
    edits.push_back(std::move(edit));
  }
  return edits;
}

}  // namespace repwright::advice
