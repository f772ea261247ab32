#include "board/chalk_block.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "board/chalk_numbers.hpp"
#include "board/chalk_rules.hpp"
#include "board/phrases.hpp"

namespace repwright::board {
namespace {

using base::Duration;
using domain::Block;
using domain::BlockKind;
using domain::Item;

bool is_single(const Block& block) {
  return block.children.empty() && block.items.size() == 1;
}

bool team_for_time(const Block& block) {
  return !block.team_sizes.empty() && !block.duration && !block.work_mode && block.kind != BlockKind::Relay;
}

class Piece {
 public:
  Piece(const Block& block, const Chalk& chalk, const PiecePlace& place)
      : block_(block), chalk_(chalk), letter_(place.letter) {
    place_.team_for_time = team_for_time(block);
    place_.levels = block.levels.empty() ? place.levels : block.levels.size();
  }

  std::vector<std::string> lines() {
    write();
    for (std::string& rule : chalk_rules(block_, chalk_, place_)) lines_.push_back(std::move(rule));
    return std::move(lines_);
  }

 private:
  void write() {
    switch (block_.kind) {
      case BlockKind::Sets:
        return sets();
      case BlockKind::Superset:
        return superset();
      case BlockKind::Every:
        return every();
      case BlockKind::Circuit:
        return circuit();
      case BlockKind::Build:
        return build();
      case BlockKind::ForDistance:
        place_.amount_given = true;
        return clocked(for_clock("for distance"));
      case BlockKind::MaxEffort:
        return max_effort();
      case BlockKind::Rest:
        return header(block_.duration ? "rest " + chalk_time(*block_.duration) : "rest");
      case BlockKind::Once:
      case BlockKind::Optional:
      case BlockKind::Rounds:
      case BlockKind::Partition:
        return plain();
      default:
        return clocked(clock());
    }
  }

  void header(const std::string& text) { lines_.push_back(capital(text) + conditions(block_, chalk_)); }
  void items(const std::vector<Item>& list) {
    for (const Item& item : list) lines_.push_back(" " + chalk_.item(item, place_));
  }

  std::string for_clock(std::string_view words) const {
    return block_.duration ? fmt::format("{} {}", chalk_time(*block_.duration), words) : std::string(words);
  }
  std::string rounds(std::string_view words) const {
    const int count = block_.rounds.value_or(1);
    return fmt::format("{} {}{}", count, count == 1 ? "round" : "rounds", words);
  }

  std::string clock() const {
    switch (block_.kind) {
      case BlockKind::ForTime:
        return block_.rounds.value_or(1) > 1 ? rounds(" for time") : "for time";
      case BlockKind::Amrap:
        return block_.duration ? "AMRAP " + chalk_time(*block_.duration) : "AMRAP";
      case BlockKind::Ladder:
        return block_.duration ? fmt::format("AMRAP {} ladder", chalk_time(*block_.duration))
                               : "AMRAP ladder";
      case BlockKind::Intervals:
        return intervals();
      case BlockKind::Partner:
        return partner();
      case BlockKind::Relay:
        return relay();
      case BlockKind::Accumulate:
        return "accumulate";
      default:
        return {};
    }
  }

  /// Without a work time each round is for time.
  std::string intervals() const {
    if (!block_.work && repeats_one_distance())
      return fmt::format("{} x {}", block_.rounds.value_or(1), chalk_.item(block_.items.front(), place_));
    if (!block_.work) return rounds(", each for time");
    const bool rests_between = block_.rest_rule && block_.rest_rule->between_only;
    const bool open = std::ranges::any_of(block_.items, [&](const Item& item) {
      return item.unit != domain::Unit::Seconds && !std::holds_alternative<domain::Max>(item.amount);
    });
    const std::string work = chalk_time(*block_.work);
    const int count = block_.rounds.value_or(1);
    if (open || rests_between || !block_.children.empty()) {
      const std::string off = block_.rest ? fmt::format(" / {} off", chalk_time(*block_.rest)) : "";
      return fmt::format("{} x AMRAP {}{}", count, work, off);
    }
    return fmt::format("{} x {} on / {} off", count, work, chalk_time(block_.rest.value_or(Duration{})));
  }

  std::string teams() const {
    std::string sizes;
    for (const int size : block_.team_sizes) sizes += (sizes.empty() ? "" : "/") + fmt::format("{}", size);
    return sizes == "2" ? "pairs" : "teams of " + sizes;
  }
  std::string partner() const {
    std::string text = teams();
    if (block_.duration && !minutes_in_heading(block_)) text += ", " + chalk_time(*block_.duration);
    if (block_.rounds) text += ", " + rounds("");
    if (block_.work_mode == domain::WorkMode::AlternateByPiece) text += ", YGIG";
    if (block_.work_mode == domain::WorkMode::AlternateByRound) text += ", alternate full rounds";
    if (block_.lanes) text += fmt::format(", {} lanes", *block_.lanes);
    return text;
  }
  std::string relay() const {
    std::string text = teams() + ", relay";
    text += fmt::format(", {} turns each", block_.turns_each.value_or(1));
    if (block_.lanes) text += fmt::format(", {} lanes", *block_.lanes);
    return text;
  }

  bool repeats_one_distance() const {
    if (block_.kind != BlockKind::Intervals || block_.work || !is_single(block_)) return false;
    return chalk_.is_distance(block_.items.front());
  }

  void clocked(const std::string& clock) {
    header(clock);
    if (repeats_one_distance()) return;
    if (block_.work_mode == domain::WorkMode::SwapParts) return parts();
    items(block_.items);
    sections();
  }
  void sections() {
    for (const Block& child : block_.children) {
      lines_.push_back(section(child));
      items(child.items);
    }
  }

  void parts() {
    int number = 0;
    for (const Item& item : block_.items) lines_.push_back(fmt::format(" P{}: {}", ++number, slot({item})));
    for (const Block& child : block_.children)
      lines_.push_back(fmt::format(" P{}: {}", ++number, slot(child.items)));
    lines_.emplace_back("swap");
  }

  std::string section(const Block& child) {
    const bool first = &child == block_.children.data();
    switch (child.kind) {
      case BlockKind::Partition:
        return "any order:";
      case BlockKind::Rounds:
        if (!child.rounds) return "rounds:";
        return fmt::format("{}{} {}:", first ? "" : "then ", *child.rounds,
                           *child.rounds == 1 ? "round" : "rounds");
      default:
        return "once:";
    }
  }

  void sets() {
    const int count = block_.sets.value_or(1);
    if (is_single(block_) && !std::holds_alternative<domain::PerSet>(block_.items.front().amount)) {
      place_.sets = count;
      lines_.push_back(chalk_.item(block_.items.front(), place_) + rest() + conditions(block_, chalk_));
      return;
    }
    header(fmt::format("{} {}{}", count, count == 1 ? "set" : "sets", rest()));
    items(block_.items);
  }
  std::string rest() const { return block_.rest ? fmt::format(", rest {}", chalk_time(*block_.rest)) : ""; }

  void superset() {
    int number = 0;
    for (const Item& item : block_.items) {
      place_.sets = std::holds_alternative<domain::PerSet>(item.amount) ? std::optional<int>{} : block_.sets;
      lines_.push_back(fmt::format("{}{} {}", letter_, ++number, chalk_.item(item, place_)));
    }
    place_.sets.reset();
    const std::string behind =
        (block_.rest ? "rest " + chalk_time(*block_.rest) : "") + conditions(block_, chalk_);
    if (!behind.empty()) lines_.push_back(behind.starts_with(", ") ? behind.substr(2) : behind);
  }

  std::string slot(const std::vector<Item>& list) const {
    std::string text;
    for (const Item& item : list) text += (text.empty() ? "" : " + ") + chalk_.item(item, place_);
    return text.empty() ? "rest" : text;
  }

  void every() {
    const Duration turn = block_.every.value_or(base::minute);
    const std::string name = turn == base::minute ? "EMOM" : "every " + chalk_time(turn);
    header(fmt::format("{} x {}", name, block_.intervals.value_or(1)));
    slots();
  }
  void slots() {
    if (block_.slots.size() == 1 && block_.kind == BlockKind::Every) {
      lines_.push_back(" " + slot(block_.slots.front()));
      return;
    }
    int number = 0;
    for (const auto& list : block_.slots) lines_.push_back(fmt::format(" {}) {}", ++number, slot(list)));
  }

  void circuit() {
    const Duration work = block_.work.value_or(base::minute);
    std::string text =
        fmt::format("{} on / {} off x {} {}", chalk_time(work), chalk_time(block_.rest.value_or(Duration{})),
                    block_.slots.size(), block_.slots.size() == 1 ? "station" : "stations");
    if (const int laps = block_.laps.value_or(1); laps != 1) text += fmt::format(" x {} laps", laps);
    if (block_.lap_rest) text += fmt::format(", rest {} between laps", chalk_time(*block_.lap_rest));
    header(text);
    place_.station = work;
    slots();
  }

  void max_effort() {
    const std::string within = block_.duration ? chalk_time(*block_.duration) + " " : "";
    for (const Item& item : block_.items) {
      const bool first = &item == block_.items.data();
      const std::string line = chalk_.item(item, place_);
      lines_.push_back(first ? within + line + conditions(block_, chalk_) : " " + line);
    }
  }

  void build() {
    if (block_.items.empty()) return header("build to a heavy 1");
    const Item& first = block_.items.front();
    const auto* count = std::get_if<double>(&first.amount);
    std::string text = fmt::format("build to a heavy {}", count != nullptr ? chalk_number(*count) : "1");
    const std::string within = block_.duration ? " in " + chalk_time(*block_.duration) : "";
    place_.amount_given = true;
    if (is_single(block_)) return header(fmt::format("{} {}{}", text, chalk_.item(first, place_), within));
    header(text + within);
    for (const Item& item : block_.items) {
      place_.amount_given = item.amount == first.amount && item.unit == first.unit;
      lines_.push_back(" " + chalk_.item(item, place_));
    }
  }

  void plain() {
    if (block_.sets && !is_single(block_)) {
      header(fmt::format("{} sets", *block_.sets));
    } else if (block_.rounds) {
      header(rounds(""));
    } else if (block_.kind == BlockKind::Partition) {
      header("any order:");
    } else if (const std::string words = conditions(block_, chalk_); !words.empty()) {
      lines_.push_back(words.substr(2));
    }
    if (block_.sets && is_single(block_)) place_.sets = block_.sets;
    items(block_.items);
    sections();
  }

  const Block& block_;
  const Chalk& chalk_;
  char letter_;
  ItemPlace place_;
  std::vector<std::string> lines_;
};

}  // namespace

bool minutes_in_heading(const Block& block) {
  if (!block.duration) return false;
  switch (block.kind) {
    case BlockKind::Amrap:
    case BlockKind::Ladder:
    case BlockKind::Build:
    case BlockKind::ForDistance:
    case BlockKind::MaxEffort:
    case BlockKind::Rest:
    case BlockKind::Note:
      return false;
    case BlockKind::Partner:
      return block.score == domain::Score::Time;
    default:
      return true;
  }
}

std::vector<std::string> chalk_piece(const Block& block, const Chalk& chalk, const PiecePlace& place) {
  return Piece(block, chalk, place).lines();
}

}  // namespace repwright::board
