#include "app/chalk_edit.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "board/tidy.hpp"
#include "domain/board_search.hpp"
#include "domain/spoken.hpp"

namespace repwright::app {
namespace {

using domain::Block;
using domain::Edit;
using domain::Item;
using domain::RepairKind;

using Lines = std::vector<std::string>;  // each with its line feed, but perhaps the last

Lines lines_of(std::string_view text) {
  Lines lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size() - 1);
    lines.emplace_back(text.substr(0, end + 1));
    text.remove_prefix(end + 1);
  }
  return lines;
}

std::string joined(const Lines& lines) {
  std::string text;
  for (const std::string& line : lines) text += line;
  return text;
}

std::string_view end_of(std::string_view line) {
  if (line.ends_with("\r\n")) return "\r\n";
  return line.ends_with('\n') ? "\n" : "";
}

/// A line of its own below line `above`, indented like it.
Lines with_line_below(Lines lines, int above, std::string_view words) {
  const auto at = static_cast<std::size_t>(above);
  if (above < 1 || at > lines.size()) return {};
  std::string& upper = lines[at - 1];
  const std::string indent = upper.substr(0, upper.find_first_not_of(" \t"));
  const std::string end(end_of(upper));
  if (end.empty()) upper += '\n';
  lines.insert(lines.begin() + above, indent + std::string(words) + end);
  return lines;
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// Line `number` with the whole number `old` in it, where it stands first, made `fresh`; empty without one.
Lines with_number(Lines lines, int number, long long old, long long fresh) {
  if (number < 1 || static_cast<std::size_t>(number) > lines.size()) return {};
  std::string& line = lines[static_cast<std::size_t>(number) - 1];
  const std::string digits = std::to_string(old);
  for (std::size_t at = line.find(digits); at != std::string::npos; at = line.find(digits, at + 1)) {
    const std::size_t end = at + digits.size();
    if ((at > 0 && is_digit(line[at - 1])) || (end < line.size() && is_digit(line[end]))) continue;
    line.replace(at, digits.size(), std::to_string(fresh));
    return lines;
  }
  return {};
}

class Chalking {
 public:
  Chalking(const Edit& edit, const Chalkboard& on) : edit_(edit), on_(on), lines_(lines_of(on.text)) {}

  /// The coach's lines with the edit in them; empty where no way is known.
  Lines own_lines() const {
    switch (edit_.kind) {
      case RepairKind::OddStart:
        return below_the_block("odd start with " +
                               spoken(changed().odd_start.value_or(domain::MovementId{})));
      case RepairKind::Stagger:
        return below_the_block("start every " +
                               std::to_string(whole(changed().start.value_or(domain::Stagger{}).every.si())) +
                               " s");
      case RepairKind::Heats:
        return below_the_block("heats " + std::to_string(changed().heats.value_or(1)));
      case RepairKind::SecondStation:
        return with_line_below(
            lines_, line_of(edit_.steps.front()),
            "2nd station: " +
                spoken(after(edit_.steps.front()).second_station.value_or(domain::MovementId{})));
      case RepairKind::Swap:
        return swapped(line_of(edit_.steps[0]), line_of(edit_.steps[1]));
      case RepairKind::FewerReps:
      case RepairKind::ShorterRun:
        return with_number(lines_, line_of(edit_.steps.front()),
                           amount_of(*domain::find_item(on_.reading.board, edit_.steps.front())),
                           amount_of(after(edit_.steps.front())));
      case RepairKind::FewerRounds:
        return fewer_rounds(on_.reading.board.blocks, edit_.board.blocks);
    }
    return {};
  }

 private:
  Lines below_the_block(const std::string& words) const {
    return with_line_below(lines_, last_line(*block_of(on_.reading.board)), words);
  }

  Lines swapped(int first, int second) const {
    Lines lines = lines_;
    const auto a = static_cast<std::size_t>(first), b = static_cast<std::size_t>(second);
    if (first < 1 || second < 1 || first == second || a > lines.size() || b > lines.size()) return {};
    std::swap(lines[a - 1], lines[b - 1]);
    if (end_of(lines[std::min(a, b) - 1])
            .empty()) {  // the text's last line had no line feed, and is not last now
      lines[std::min(a, b) - 1] += '\n';
      std::string& last = lines[std::max(a, b) - 1];
      last.resize(last.size() - end_of(last).size());
    }
    return lines;
  }

  /// The one block of the two trees whose rounds differ, chalked where it begins.
  Lines fewer_rounds(const std::vector<Block>& before, const std::vector<Block>& now) const {
    for (std::size_t b = 0; b < before.size() && b < now.size(); ++b) {
      if (before[b].rounds != now[b].rounds)
        return with_number(lines_, start_of(before[b].id), before[b].rounds.value_or(1),
                           now[b].rounds.value_or(1));
      if (Lines lines = fewer_rounds(before[b].children, now[b].children); !lines.empty()) return lines;
    }
    return {};
  }

  const Block* block_of(const domain::Board& board) const { return domain::find_block(board, edit_.block); }
  const Block& changed() const { return *block_of(edit_.board); }
  const Item& after(domain::StepId step) const { return *domain::find_item(edit_.board, step); }
  std::string spoken(const domain::MovementId& id) const {
    const domain::Movement* movement = on_.catalogue.find(id);
    return movement == nullptr ? id.text : domain::spoken_many(*movement);
  }
  static long long whole(double number) { return static_cast<long long>(number); }
  static long long amount_of(const Item& item) {
    const auto* amount = std::get_if<double>(&item.amount);
    return amount == nullptr ? -1 : whole(*amount);
  }
  int line_of(domain::StepId step) const {
    const auto index = static_cast<std::size_t>(step.index);
    return step.index >= 0 && index < on_.reading.steps.size() ? on_.reading.steps[index].line : 0;
  }
  int start_of(domain::BlockId block) const {
    const auto index = static_cast<std::size_t>(block.index);
    return block.index >= 0 && index < on_.reading.blocks.size() ? on_.reading.blocks[index].line : 0;
  }
  int last_line(const Block& block) const {
    int last = start_of(block.id);
    for (const Item& item : block.items) last = std::max(last, line_of(item.step));
    for (const Block& child : block.children) last = std::max(last, last_line(child));
    return last;
  }

  const Edit& edit_;
  const Chalkboard& on_;
  Lines lines_;
};

bool reads_as(const domain::Board& wanted, std::string_view text, const board::Reader& reader) {
  const board::Reading reading = reader.read(text);
  return reading.board == wanted && std::ranges::none_of(reading.diagnostics, [](const auto& remark) {
           return remark.severity == domain::Severity::Error;
         });
}

int first_difference(std::string_view before, std::string_view after) {
  const auto [a, b] = std::ranges::mismatch(before, after);
  const bool ended_here = a == before.end() && b != after.end() && *b == '\n';  // the last line got its end
  return 1 + static_cast<int>(std::ranges::count(after.begin(), b, '\n')) + (ended_here ? 1 : 0);
}

}  // namespace

std::optional<Chalked> chalk_edit(const Edit& edit, const Chalkboard& on) {
  std::string text = joined(Chalking(edit, on).own_lines());
  if (text.empty() || !reads_as(edit.board, text, on.reader)) {
    text = board::tidy(edit.board, on.catalogue, on.house);
    if (!reads_as(edit.board, text, on.reader)) return std::nullopt;
  }
  const int line = first_difference(on.text, text);
  return Chalked{std::move(text), line};
}

}  // namespace repwright::app
