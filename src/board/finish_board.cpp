#include <algorithm>
#include <cmath>

#include "board/assembly.hpp"
#include "board/clocks_in_row.hpp"

namespace repwright::board {
namespace {

using base::Duration;
using domain::Block;
using domain::BlockKind;
using domain::Item;
using domain::Score;
using domain::Unit;

/// One chapter's blocks with the piece that each came from, for the scores.
struct Finished {
  std::vector<Block> blocks;
  std::vector<std::size_t> draft;
};

std::optional<Duration> sum_of(const std::vector<Block>& blocks) {
  Duration total;
  for (const Block& block : blocks) {
    const auto length = written_length(block);
    if (!length) return std::nullopt;
    total += *length;
  }
  return total;
}

bool measures(const Block& block, Score score) {
  const auto has = [&](auto check) {
    const auto any = [&](const std::vector<Item>& items) { return std::ranges::any_of(items, check); };
    return any(block.items) || std::ranges::any_of(block.slots, any) ||
           std::ranges::any_of(block.children, [&](const Block& child) { return any(child.items); });
  };
  const auto unit_is = [](Unit unit) { return [unit](const Item& item) { return item.unit == unit; }; };
  switch (score) {
    case Score::KcalSum:
    case Score::Kcal:
      return has(unit_is(Unit::Kilocalories));
    case Score::DistanceSum:
    case Score::Distance:
      return has(unit_is(Unit::Metres));
    case Score::RepsSum:
    case Score::Reps:
      return has(unit_is(Unit::Reps));
    case Score::MinInterval:
    case Score::MaxInterval:
      return (block.kind == BlockKind::Intervals || block.kind == BlockKind::Every) &&
             (has(unit_is(Unit::Reps)) || has(unit_is(Unit::Kilocalories)) || has(unit_is(Unit::Metres)));
    case Score::MaxTime:
    case Score::MinTime:
    case Score::Times:
      return block.kind == BlockKind::Intervals && !block.work;
    case Score::Time:
      return block.kind == BlockKind::ForTime || block.kind == BlockKind::Accumulate ||
             (block.kind == BlockKind::Partner && !block.duration);
    case Score::RoundsReps:
      return block.kind == BlockKind::Amrap || (block.kind == BlockKind::Intervals && block.work) ||
             (block.kind == BlockKind::Partner && block.duration);
    case Score::LastFullMinute:
      return block.kind == BlockKind::Every;
    case Score::RungReps:
      return block.kind == BlockKind::Ladder;
    case Score::Load:
      return block.kind == BlockKind::Sets || block.kind == BlockKind::Superset ||
             block.kind == BlockKind::Build || block.kind == BlockKind::Every;
    default:
      return block.score.has_value();
  }
}

void set_scores(const Session& session, std::vector<Finished>& chapters) {
  for (const ScoreLine& line : session.scores) {
    std::vector<Block*> reach;
    for (std::size_t c = line.chapter; c <= line.last_chapter && c < chapters.size(); ++c)
      for (std::size_t b = 0; b < chapters[c].blocks.size(); ++b)
        if (c < line.last_chapter || chapters[c].draft[b] < line.last_draft)
          reach.push_back(&chapters[c].blocks[b]);
    std::erase_if(reach, [](const Block* block) { return !block->score; });
    bool found = false;
    for (Block* block : reach)
      if (measures(*block, line.score)) {
        block->score = line.score;
        found = true;
      }
    if (!found && !reach.empty()) reach.back()->score = line.score;
  }
}

bool same_length(const Block& block, Duration minutes) {
  const auto length = written_length(block);
  return length && std::abs((*length - minutes).si()) < 0.5;
}

/// A clock of its own within longer minutes of its heading.
bool shorter_than_heading(const Block& block, Duration minutes) {
  const bool own_clock = block.kind == BlockKind::Amrap || block.kind == BlockKind::Build ||
                         block.kind == BlockKind::ForDistance || block.kind == BlockKind::MaxEffort ||
                         block.kind == BlockKind::Ladder;
  const auto length = written_length(block);
  return own_clock && length && *length < minutes && !same_length(block, minutes);
}

/// What the minutes of a heading do to the one block below it.
void give_minutes(Block& block, Duration minutes) {
  if (same_length(block, minutes) || block.kind == BlockKind::Optional || block.kind == BlockKind::Amrap)
    return;
  const bool own = block.kind == BlockKind::Build || block.kind == BlockKind::ForDistance ||
                   block.kind == BlockKind::MaxEffort || block.kind == BlockKind::Ladder;
  if (own && block.duration) return;
  block.duration = minutes;
}

std::string words_of(const Chapter& chapter) {
  std::string text = chapter.from ? std::string() : chapter.title;
  for (const std::string& words : chapter.words) {
    if (!text.empty()) text += words.starts_with("(") || words.starts_with(":") ? "" : " ";
    if (words.starts_with("(") && !text.empty()) text += ' ';
    text += words;
  }
  return text;
}

Block word_block(Places& places, const Chapter& chapter) {
  Block block;
  block.id = places.block(chapter.span);
  block.kind = chapter.part == Part::Rest ? BlockKind::Rest : BlockKind::Note;
  block.duration = chapter.minutes;
  block.text = words_of(chapter);
  return block;
}

/// Rests at the end of a headed part stand outside it.
std::vector<Block> take_trailing_rests(std::vector<Block>& blocks) {
  std::vector<Block> rests;
  while (blocks.size() > 1 && blocks.back().kind == BlockKind::Rest) {
    rests.insert(rests.begin(), std::move(blocks.back()));
    blocks.pop_back();
  }
  return rests;
}

void close_window(Places& places, const Chapter& chapter, std::vector<Block> blocks, domain::Board& board) {
  Block window;
  window.kind = BlockKind::Window;
  window.id = places.block(chapter.span);
  window.from = chapter.from;
  window.to = chapter.to;
  window.text = words_of(chapter);
  for (Block& block : blocks) {
    const bool rest = block.kind == BlockKind::Rest && !block.duration;
    if (block.kind == BlockKind::Note) {
      if (!window.text.empty()) window.text += "; ";
      window.text += block.text;
    } else if (!rest) {
      window.children.push_back(std::move(block));
    }
  }
  board.blocks.push_back(std::move(window));
}

void close_chapter(Places& places, const Chapter& chapter, std::vector<Block> blocks, domain::Board& board) {
  if (chapter.from) return close_window(places, chapter, std::move(blocks), board);
  const auto is_word = [](const Block& block) { return block.kind == BlockKind::Note && !block.duration; };
  const bool headed = chapter.part != Part::None;
  if (headed && std::ranges::all_of(blocks, is_word)) {
    Block words = word_block(places, chapter);
    for (const Block& block : blocks) words.text += (words.text.empty() ? "" : "; ") + block.text;
    if (chapter.part == Part::Extra || chapter.part == Part::Finisher) words.kind = BlockKind::Note;
    board.blocks.push_back(std::move(words));
    return;
  }
  std::vector<Block> rests = headed ? take_trailing_rests(blocks) : std::vector<Block>{};
  if (!chapter.words.empty() && !blocks.empty()) {
    std::string words;
    for (const std::string& one : chapter.words) words += (words.empty() ? "" : "; ") + one;
    blocks.front().text = blocks.front().text.empty() ? words : words + "; " + blocks.front().text;
  }
  const bool holds_parts = blocks.size() > 1 || (blocks.size() == 1 && chapter.minutes &&
                                                 shorter_than_heading(blocks.front(), *chapter.minutes));
  if (headed && chapter.minutes && holds_parts) {
    Block part;
    part.kind = BlockKind::Part;
    part.id = places.block(chapter.span);
    part.title = chapter.title;
    part.duration = chapter.minutes;
    part.children = std::move(blocks);
    board.blocks.push_back(std::move(part));
  } else {
    if (headed && chapter.minutes && !blocks.empty()) give_minutes(blocks.front(), *chapter.minutes);
    if (headed && !blocks.empty() && chapter.part != Part::Extra) blocks.front().title = chapter.title;
    std::ranges::move(blocks, std::back_inserter(board.blocks));
  }
  std::ranges::move(rests, std::back_inserter(board.blocks));
}

class Numbering {
 public:
  Numbering(const Places& places, std::vector<domain::Span>& steps, std::vector<domain::Span>& blocks)
      : places_(places), steps_(steps), blocks_(blocks) {}

  void number(std::vector<Block>& blocks) {
    for (Block& block : blocks) {
      blocks_.push_back(places_.blocks[static_cast<std::size_t>(block.id.index)]);
      block.id.index = static_cast<int>(blocks_.size()) - 1;
      items(block.items);
      for (auto& slot : block.slots) items(slot);
      if (block.interrupt) items(block.interrupt->items);
      items(block.penalty);
      items(block.after_fail);
      number(block.children);
    }
  }

 private:
  void items(std::vector<Item>& list) {
    for (Item& item : list) {
      steps_.push_back(places_.items[static_cast<std::size_t>(item.step.index)]);
      item.step.index = static_cast<int>(steps_.size()) - 1;
    }
  }
  const Places& places_;
  std::vector<domain::Span>& steps_;
  std::vector<domain::Span>& blocks_;
};

}  // namespace

std::optional<Duration> written_length(const Block& block) {
  if (block.kind == BlockKind::Window && block.from && block.to) return *block.to - *block.from;
  if (block.kind == BlockKind::Optional) return Duration{};
  const double heats = block.heats.value_or(1);
  if (block.duration) return heats * *block.duration;
  if (block.kind == BlockKind::Every && block.every && block.intervals)
    return heats * *block.every * *block.intervals;
  if (block.kind == BlockKind::Intervals && block.work) {
    const double rounds = block.rounds.value_or(1);
    if (block.rest) return heats * rounds * (*block.work + *block.rest);
    if (block.rest_rule) return heats * (rounds * *block.work + (rounds - 1) * block.rest_rule->length);
    return heats * rounds * *block.work;
  }
  if (block.kind == BlockKind::Circuit && block.work) {
    const double laps = block.laps.value_or(1);
    const double stations = static_cast<double>(block.slots.size());
    const Duration between = block.lap_rest ? (laps - 1) * *block.lap_rest : Duration{};
    return heats * (laps * stations * (*block.work + block.rest.value_or(Duration{})) + between);
  }
  if (block.kind == BlockKind::Note) return Duration{};
  if (block.kind == BlockKind::Part) return sum_of(block.children);
  return std::nullopt;
}

void finish_board(Session& session, domain::Board& board, std::vector<domain::Span>& steps,
                  std::vector<domain::Span>& blocks) {
  Places places;
  std::vector<Finished> chapters;
  for (Chapter& chapter : session.chapters) {
    Finished finished;
    share_work_of_clocks(session, chapter.drafts);
    for (std::size_t i = 0; i < chapter.drafts.size(); ++i)
      for (Block& block : finish_draft(session, places, chapter, chapter.drafts[i])) {
        finished.blocks.push_back(std::move(block));
        finished.draft.push_back(i);
      }
    chapters.push_back(std::move(finished));
  }
  set_scores(session, chapters);
  board.title = session.title;
  for (std::size_t i = 0; i < chapters.size(); ++i)
    close_chapter(places, session.chapters[i], std::move(chapters[i].blocks), board);
  Numbering(places, steps, blocks).number(board.blocks);
}

}  // namespace repwright::board
