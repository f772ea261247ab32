#include "app/class_targets.hpp"

#include <algorithm>
#include <utility>

#include "advice/targets.hpp"
#include "app/other_board.hpp"
#include "domain/board_search.hpp"

namespace repwright::app {
namespace {

constexpr int enough_runs = 100;  // of a class of ten a thousand scores

/// The board's text with that cap on the piece; empty where it is there already or cannot be written.
std::string with_cap(const Chalkboard& on, domain::BlockId piece, base::Duration cap) {
  domain::Edit edit{.kind = domain::RepairKind::Cap,
                    .block = piece,
                    .steps = {},
                    .words = {},
                    .board = on.reading.board,
                    .text = {}};
  domain::Block* block = domain::find_block(edit.board, piece);
  if (block == nullptr || block->cap == cap) return "";
  block->cap = cap;
  const auto chalked = chalk_edit(edit, on);
  return chalked ? chalked->text : "";
}

}  // namespace

base::Result<std::vector<domain::PieceTarget>> class_targets(const ClassRequest& request,
                                                             const Gathered& gathered,
                                                             const timetable::Timetable& timetable,
                                                             const Chalkboard& on) {
  const board::Reading open = reading_of(advice::without_caps(request.reading.board, timetable));
  ClassRequest asked = with_board(request, open, request.gym, std::min(request.runs, enough_runs));
  asked.keep_draws = true;
  asked.threads = request.threads;
  const auto played = rehearse_class(asked, gathered);
  if (!played) return tl::unexpected(played.error());
  std::vector<std::optional<int>> levels;
  levels.reserve(played->fitted.people.size());
  for (const domain::FittedPerson& person : played->fitted.people) levels.push_back(person.level);
  std::vector<domain::PieceTarget> targets = advice::targets_of({.board = request.reading.board,
                                                                 .timetable = timetable,
                                                                 .uncapped = played->rehearsal,
                                                                 .levels = levels});
  for (domain::PieceTarget& target : targets)
    if (target.cap)
      target.cap->text = with_cap(on, timetable.pieces[static_cast<std::size_t>(target.piece)].block,
                                  target.cap->seconds * base::second);
  return targets;
}

}  // namespace repwright::app
