#include "app/chalk_edit.hpp"

#include <algorithm>
#include <functional>
#include <iterator>
#include <utility>
#include <vector>

#include "app/board_numbers.hpp"
#include "app/renumber.hpp"
#include "base/clock_text.hpp"
#include "board/tidy.hpp"
#include "domain/board_search.hpp"
#include "domain/spoken.hpp"

namespace repwright::app {
namespace {

using domain::Block;
using domain::Edit;
using domain::Item;
using domain::RepairKind;

constexpr int most_tries = 24;  // of ways to write a number: each is read

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

/// Whether a text says what was meant.
using Meant = std::function<bool(const std::string& text)>;

/// The edit in the coach's own words; the first way that is meant.
class Chalking {
 public:
  Chalking(const Edit& edit, const Chalkboard& on, Meant meant)
      : edit_(edit), on_(on), meant_(std::move(meant)), lines_(lines_of(on.text)) {}

  std::optional<std::string> own_text() {
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
        return second_station();
      case RepairKind::Swap:
        return swapped();
      case RepairKind::Cap:
        if (block_of(on_.reading.board)->cap) return numbers_changed();
        return below_the_block("cap " + base::format_clock(changed().cap.value_or(base::Duration{})));
      default:
        return numbers_changed();
    }
  }

 private:
  std::optional<std::string> if_meant(std::string text) const {
    if (text.empty() || !meant_(text)) return std::nullopt;
    return text;
  }

  std::optional<std::string> below_the_block(const std::string& words) const {
    return if_meant(joined(with_line_below(lines_, last_line(*block_of(on_.reading.board)), words)));
  }

  /// On a line of its own, or behind the work where several stand on one line.
  std::optional<std::string> second_station() const {
    const domain::StepId step = edit_.steps.front();
    const domain::MovementId other =
        domain::find_item(edit_.board, step)->second_station.value_or(domain::MovementId{});
    const std::string words = "2nd station: " + spoken(other);
    if (auto below = if_meant(joined(with_line_below(lines_, span_of(step).line, words)))) return below;
    std::string text(on_.text);
    text.insert(std::min(span_of(step).end, text.size()), " (" + words + ")");
    return if_meant(std::move(text));
  }

  std::optional<std::string> swapped() const {
    const domain::Span& first = span_of(edit_.steps[0]);
    const domain::Span& second = span_of(edit_.steps[1]);
    if (first.line != second.line) return if_meant(joined(lines_swapped(first.line, second.line)));
    const auto& [front, back] = std::minmax(
        first, second, [](const domain::Span& a, const domain::Span& b) { return a.begin < b.begin; });
    if (front.end > back.begin || back.end > on_.text.size()) return std::nullopt;
    const auto words = [&](const domain::Span& span) {
      return std::string(on_.text.substr(span.begin, span.end - span.begin));
    };
    std::string text(on_.text);
    text.replace(back.begin, back.end - back.begin, words(front));
    text.replace(front.begin, front.end - front.begin, words(back));
    return if_meant(std::move(text));
  }

  Lines lines_swapped(int first, int second) const {
    Lines lines = lines_;
    const auto a = static_cast<std::size_t>(first), b = static_cast<std::size_t>(second);
    if (first < 1 || second < 1 || a > lines.size() || b > lines.size()) return {};
    std::swap(lines[a - 1], lines[b - 1]);
    if (end_of(lines[std::min(a, b) - 1])
            .empty()) {  // the text's last line had no line feed, and is not last now
      lines[std::min(a, b) - 1] += '\n';
      std::string& last = lines[std::max(a, b) - 1];
      last.resize(last.size() - end_of(last).size());
    }
    return lines;
  }

  std::optional<std::string> numbers_changed() {
    const std::vector<ChangedNumber> changes = changed_numbers(on_.reading.board, edit_.board);
    if (changes.empty()) return block_taken_away();
    tries_ = 0;
    return renumbered(std::string(on_.text), changes, changes.size());
  }

  /// The last of `left` changes in all ways, and those before it: what stands behind is done first, so that
  /// places before it stay where they are.
  std::optional<std::string> renumbered(const std::string& text, const std::vector<ChangedNumber>& changes,
                                        std::size_t left) {
    if (left == 0) return ++tries_ > most_tries ? std::nullopt : if_meant(text);
    const ChangedNumber& change = changes[left - 1];
    Renumber number =
        change.step ? range_of(change, span_of(*change.step)) : range_of(change, stretch_of(change.block));
    // Numbers of a block stand between one another in any order.
    if (!change.step && text.size() > on_.text.size()) number.end += text.size() - on_.text.size();
    for (const Rewrite& way : ways_to_renumber(text, number)) {
      std::string written = text;
      written.replace(way.at, way.length, way.words);
      if (auto done = renumbered(written, changes, left - 1)) return done;
      if (tries_ > most_tries) break;
    }
    return std::nullopt;
  }
  static Renumber range_of(const ChangedNumber& change, const domain::Span& span) {
    return {.kind = change.kind, .from = change.from, .to = change.to, .begin = span.begin, .end = span.end};
  }

  /// With its heading above and its rules below, as many lines as it takes.
  std::optional<std::string> block_taken_away() const {
    const std::vector<Block>& blocks = on_.reading.board.blocks;
    for (std::size_t b = 0; b < blocks.size(); ++b) {
      if (domain::find_block(edit_.board, blocks[b].id) != nullptr) continue;
      const int first = b == 0 ? 1 : last_line(blocks[b - 1]) + 1;
      const int next = b + 1 < blocks.size() ? span_of(blocks[b + 1].id).line - 1 : count_lines();
      for (int from = span_of(blocks[b].id).line; from >= first; --from)
        for (int to = last_line(blocks[b]); to <= next; ++to)
          if (auto without = if_meant(without_lines(from, to))) return without;
      return std::nullopt;
    }
    return std::nullopt;
  }
  int count_lines() const { return static_cast<int>(lines_.size()); }
  /// Nor the empty lines that follow.
  std::string without_lines(int from, int to) const {
    const auto blank = [](const std::string& line) { return line.find_first_not_of(" \t\r\n") == line.npos; };
    while (to < count_lines() && blank(lines_[static_cast<std::size_t>(to)])) ++to;
    Lines left = lines_;
    if (from < 1 || to < from || to > count_lines()) return "";
    left.erase(left.begin() + from - 1, left.begin() + to);
    return joined(left);
  }

  /// From the beginning of a block's first line to that of the next part of the class.
  domain::Span stretch_of(domain::BlockId id) const {
    domain::Span stretch = span_of(id);
    stretch.begin = line_begin(stretch);
    stretch.end = on_.text.size();
    for (const Block& block : on_.reading.board.blocks) {
      const domain::Span& other = span_of(block.id);
      if (other.line > span_of(id).line) stretch.end = std::min(stretch.end, line_begin(other));
    }
    return stretch;
  }
  std::size_t line_begin(const domain::Span& span) const {
    const std::size_t feed = span.begin == 0 ? std::string_view::npos : on_.text.rfind('\n', span.begin - 1);
    return feed == std::string_view::npos ? 0 : feed + 1;
  }

  const Block* block_of(const domain::Board& board) const { return domain::find_block(board, edit_.block); }
  const Block& changed() const { return *block_of(edit_.board); }
  std::string spoken(const domain::MovementId& id) const {
    const domain::Movement* movement = on_.catalogue.find(id);
    return movement == nullptr ? id.text : domain::spoken_many(*movement);
  }
  static long long whole(double number) { return static_cast<long long>(number); }
  template <class Id>
  static const domain::Span& at(const std::vector<domain::Span>& spans, Id id) {
    static const domain::Span nowhere{.line = 0};
    const auto index = static_cast<std::size_t>(id.index);
    return id.index >= 0 && index < spans.size() ? spans[index] : nowhere;
  }
  const domain::Span& span_of(domain::StepId step) const { return at(on_.reading.steps, step); }
  const domain::Span& span_of(domain::BlockId block) const { return at(on_.reading.blocks, block); }
  int last_line(const Block& block) const {
    int last = span_of(block.id).line;
    for (const Item& item : block.items) last = std::max(last, span_of(item.step).line);
    for (const std::vector<Item>& slot : block.slots)
      for (const Item& item : slot) last = std::max(last, span_of(item.step).line);
    for (const Block& child : block.children) last = std::max(last, last_line(child));
    return last;
  }

  const Edit& edit_;
  const Chalkboard& on_;
  Meant meant_;
  Lines lines_;
  int tries_ = 0;
};

/// The lines of `after` that are others now, or new; empty where lines were only taken away.
std::vector<int> changed_lines(std::string_view before, std::string_view after) {
  const Lines old = lines_of(before), now = lines_of(after);
  const auto bare = [](std::string_view line) { return line.substr(0, line.size() - end_of(line).size()); };
  const auto same = [&](const std::string& a, const std::string& b) { return bare(a) == bare(b); };
  std::size_t front = 0, back = 0;
  const std::size_t shorter = std::min(old.size(), now.size());
  while (front < shorter && same(old[front], now[front])) ++front;
  while (back < shorter - front && same(old[old.size() - 1 - back], now[now.size() - 1 - back])) ++back;
  std::vector<int> lines;
  for (std::size_t at = front; at < now.size() - back; ++at)
    if (old.size() != now.size() || !same(old[at], now[at])) lines.push_back(static_cast<int>(at) + 1);
  return lines;
}

}  // namespace

std::optional<Chalked> chalk_edit(const Edit& edit, const Chalkboard& on) {
  // What is taken away leaves gaps in the numbers of blocks and steps; read again, there are none.
  const domain::Board wanted = edit.kind == RepairKind::CutList
                                   ? on.reader.read(board::tidy(edit.board, on.catalogue, on.house)).board
                                   : edit.board;
  const Meant meant = [&](const std::string& text) {
    const board::Reading reading = on.reader.read(text);
    return reading.board == wanted && std::ranges::none_of(reading.diagnostics, [](const auto& remark) {
             return remark.severity == domain::Severity::Error;
           });
  };
  std::optional<std::string> text = Chalking(edit, on, meant).own_text();
  const bool rewritten = !text;
  if (rewritten) text = board::tidy(edit.board, on.catalogue, on.house);
  if (rewritten && !meant(*text)) return std::nullopt;
  std::vector<int> lines = changed_lines(on.text, *text);
  return Chalked{.text = std::move(*text), .lines = std::move(lines), .rewritten = rewritten};
}

}  // namespace repwright::app
