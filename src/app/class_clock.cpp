#include "app/class_clock.hpp"

#include <algorithm>

#include "app/gym_lookup.hpp"
#include "app/who_comes.hpp"
#include "base/text.hpp"
#include "domain/board_search.hpp"
#include "domain/spoken.hpp"
#include "timetable/timetable.hpp"

namespace repwright::app {
namespace {

using domain::Block;
using timetable::Cue;
using timetable::CueKind;

void add_steps(const std::vector<domain::Item>& items, std::vector<domain::StepId>& steps) {
  for (const domain::Item& item : items) steps.push_back(item.step);
}

/// All that is done in a block.
void add_steps(const Block& block, std::vector<domain::StepId>& steps) {
  add_steps(block.items, steps);
  for (const auto& slot : block.slots) add_steps(slot, steps);
  for (const Block& child : block.children) add_steps(child, steps);
}

/// The block that is worked on in a cue; null where nothing is.
const Block* work_of(const Cue& cue, const domain::Board& board) {
  const bool works = cue.kind == CueKind::Part || cue.kind == CueKind::Work || cue.kind == CueKind::Tail;
  return works ? domain::find_block(board, cue.block) : nullptr;
}

/// What is done in a cue.
std::vector<domain::StepId> steps_of(const Cue& cue, const domain::Board& board) {
  std::vector<domain::StepId> steps;
  const Block* block = work_of(cue, board);
  if (block == nullptr) return steps;
  const auto slot = static_cast<std::size_t>(cue.slot);
  if (block->kind == domain::BlockKind::Every && slot < block->slots.size())
    add_steps(block->slots[slot], steps);
  else
    add_steps(*block, steps);
  return steps;
}

/// Where every second person begins, for the wall; empty: where all do.
std::string odd_start_words(const Cue& cue, const domain::Board& board, const domain::Catalogue& catalogue) {
  const Block* block = work_of(cue, board);
  if (block == nullptr || !block->odd_start) return {};
  const domain::Movement* movement = catalogue.find(*block->odd_start);
  return movement == nullptr ? "" : "every second one starts with " + domain::spoken_many(*movement);
}

std::vector<std::string> lines_of_text(const std::string& text) {
  std::vector<std::string> lines(1);
  for (const char c : text)
    if (c == '\n')
      lines.emplace_back();
    else
      lines.back() += c;
  return lines;
}

}  // namespace

base::Result<ClassClock> class_clock(const GymAtHand& at_hand, const std::string& class_id) {
  const OpenGym& gym = at_hand.gym();
  const auto known = class_called(gym, class_id);
  if (!known) return tl::unexpected(known.error());
  const domain::GymClass& gym_class = **known;
  if (gym_class.board_id.empty()) return ClassClock{};
  const auto chalk = chalk_of(gym, gym_class);
  if (!chalk) return tl::unexpected(chalk.error());
  const auto coming = who_comes(gym.people, gym_class, std::nullopt);
  if (!coming) return tl::unexpected(coming.error());

  const board::Reading reading = at_hand.read(**chalk);
  ClassClock clock;
  clock.cues =
      timetable::cues_of(timetable::lay_out(reading.board, gym_class,
                                            {.last_rest_counts = gym.knowledge.house.last_rest_counts}),
                         static_cast<int>(coming->people.size()));
  const std::vector<std::string> text = lines_of_text(**chalk);
  for (const Cue& cue : clock.cues) {
    std::vector<std::string>& lines = clock.lines.emplace_back();
    int last = 0;
    for (const domain::StepId step : steps_of(cue, reading.board)) {
      const auto index = static_cast<std::size_t>(step.index);
      const int line = step.index >= 0 && index < reading.steps.size() ? reading.steps[index].line : 0;
      if (line <= last || static_cast<std::size_t>(line) > text.size()) continue;
      last = line;
      lines.emplace_back(base::trim(text[static_cast<std::size_t>(line) - 1]));
    }
    std::string odd_start = odd_start_words(cue, reading.board, gym.knowledge.catalogue);
    if (!odd_start.empty()) lines.push_back(std::move(odd_start));
  }
  return clock;
}

}  // namespace repwright::app
