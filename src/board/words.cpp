#include "board/words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "board/item_words.hpp"
#include "board/phrases.hpp"
#include "board/rule_words.hpp"

namespace repwright::board {
namespace {

using base::Duration;
using domain::Block;
using domain::BlockKind;
using domain::Item;

std::string block_words(const Block& block, const Telling& telling);

std::string in_time(const std::optional<Duration>& time, std::string_view before) {
  return time ? fmt::format("{} {}", before, time_words(*time)) : "";
}

std::string rounds_of(const Block& block, const std::string& work) {
  if (!block.rounds) return "rounds of " + work;
  if (*block.rounds == 1) return work;
  return fmt::format("{} rounds of {}", count_word(*block.rounds), work);
}

/// A part of a clock: what is done once, in rounds or in any order.
std::string section_words(const Block& block, const Telling& telling) {
  const std::string work = listed(items_words(block.items, telling));
  switch (block.kind) {
    case BlockKind::Rounds:
      return rounds_of(block, work) + condition_words(block) + rule_words(block, telling);
    case BlockKind::Partition:
      return work + " in any order" + rule_words(block, telling);
    case BlockKind::Once:
      return work + rule_words(block, telling);
    default:
      return block_words(block, telling);
  }
}

/// What each partner does, in the order of their labels.
std::string parts_words(const Block& block, const Telling& telling) {
  std::vector<std::string> parts;
  parts.reserve(block.items.size() + block.children.size());
  for (const Item& item : block.items) parts.push_back(item_words(item, telling));
  for (const Block& child : block.children) parts.push_back(listed(items_words(child.items, telling)));
  return fmt::format("{}", fmt::join(parts, " beside "));
}

std::string work_words(const Block& block, const Telling& telling) {
  if (block.work_mode == domain::WorkMode::SwapParts) return parts_words(block, telling);
  if (block.children.empty()) return in_order(items_words(block.items, telling));
  const auto sections =
      texts_of(block.children, [&](const Block& child) { return section_words(child, telling); });
  return fmt::format("{}", fmt::join(sections, ", then "));
}

/// Opening, work and rules of a piece whose work follows a colon.
std::string piece(const Block& block, const Telling& telling, const std::string& opening) {
  const std::string work = work_words(block, telling);
  const std::string colon = work.empty() ? "" : ": ";
  return opening + condition_words(block) + colon + work + rule_words(block, telling);
}

std::string for_time(const Block& block) {
  const int rounds = block.rounds.value_or(1);
  return rounds == 1 ? "for time" : fmt::format("{} rounds for time", count_word(rounds));
}

std::string slot_words(const std::vector<Item>& slot, const Telling& telling) {
  return slot.empty() ? "rest" : listed(items_words(slot, telling));
}

std::string every_words(const Block& block, const Telling& telling) {
  std::string opening = "every " + (block.every ? period_words(*block.every) : std::string("interval"));
  if (block.every && block.intervals)
    opening += block.every == base::minute ? " for " + time_words(*block.every * *block.intervals)
                                           : fmt::format(", {}", times_word(*block.intervals));
  opening += condition_words(block);
  auto slots = texts_of(block.slots, [&](const auto& slot) { return slot_words(slot, telling); });
  const std::string rules = rule_words(block, telling);
  if (slots.empty()) return opening + rules;
  if (slots.size() == 1) return fmt::format("{}: {}{}", opening, slots.front(), rules);
  const bool minutes = block.every == base::minute && slots.size() == 2;
  if (minutes) {
    slots[0] += " in odd minutes";
    slots[1] += " in even ones";
    return fmt::format("{}: {}{}", opening, in_order(slots), rules);
  }
  return fmt::format("{}, in turn: {}{}", opening, fmt::join(slots, "; "), rules);
}

bool single_max(const Block& block) {
  return block.items.size() == 1 && std::holds_alternative<domain::Max>(block.items.front().amount);
}

bool holds_only(const std::vector<Item>& items, const std::optional<Duration>& work) {
  return work && !items.empty() && std::ranges::all_of(items, [&](const Item& item) {
           const auto* time = std::get_if<double>(&item.amount);
           return item.unit == domain::Unit::Seconds && time != nullptr && *time == work->si();
         });
}

std::vector<std::string> bare_names(const std::vector<Item>& items, const Telling& telling) {
  return texts_of(items, [&](const Item& item) { return bare_words(item, telling); });
}

std::string intervals_words(const Block& block, const Telling& telling) {
  const int rounds = block.rounds.value_or(1);
  const std::string rest = rest_words(block);
  const std::string behind = rest.empty() ? "" : ", " + rest;
  const std::string alternate = rest.empty() ? "" : " and " + rest;
  if (!block.work) {
    if (block.children.empty() && block.items.size() == 1)
      return fmt::format("{} {}{}{}{}", times_word(rounds), work_words(block, telling), behind,
                         condition_words(block), rule_words(block, telling));
    return piece(
        block, telling,
        fmt::format("{} {}, each for time{}", count_word(rounds), rounds == 1 ? "round" : "rounds", behind));
  }
  std::string opening =
      fmt::format("{} {} of {}{}", count_word(rounds), rounds == 1 ? "interval" : "intervals",
                  time_words(*block.work), alternate);
  if (holds_only(block.items, block.work)) {
    return opening + condition_words(block) + ": " + listed(bare_names(block.items, telling)) +
           rule_words(block, telling);
  }
  if (!single_max(block)) opening += ", as many rounds as possible";
  return piece(block, telling, opening);
}

std::string sets_count(const Block& block) {
  const int sets = block.sets.value_or(1);
  return fmt::format("{} {}", count_word(sets), sets == 1 ? "set" : "sets");
}

std::string sets_words(const Block& block, const Telling& telling) {
  const std::string count = sets_count(block);
  const std::string rest = rest_words(block);
  const std::string tail =
      (rest.empty() ? "" : ", " + rest) + condition_words(block) + rule_words(block, telling);
  const std::string work = work_words(block, telling);
  if (block.kind == BlockKind::Superset) return fmt::format("superset, {}: {}{}", count, work, tail);
  if (block.items.size() == 1) return fmt::format("{} of {}{}", count, work, tail);
  return fmt::format("{}: {}{}", count, work, tail);
}

std::string circuit_words(const Block& block, const Telling& telling) {
  const auto stations = texts_of(block.slots, [&](const std::vector<Item>& station) -> std::string {
    if (station.empty()) return "rest";
    return listed(holds_only(station, block.work) ? bare_names(station, telling)
                                                  : items_words(station, telling));
  });
  const int laps = block.laps.value_or(1);
  std::string opening =
      fmt::format("circuit of {} stations, {} {}, {} of work", count_word(static_cast<int>(stations.size())),
                  count_word(laps), laps == 1 ? "lap" : "laps", time_words(block.work.value_or(Duration{})));
  const std::string rest = rest_words(block);
  if (!rest.empty()) opening += " and " + rest;
  opening += " at each";
  if (block.lap_rest) opening += fmt::format(", {} between laps", time_words(*block.lap_rest));
  return fmt::format("{}{}: {}{}", opening, condition_words(block), in_order(stations),
                     rule_words(block, telling));
}

std::string teams(const Block& block) {
  if (block.team_sizes.size() == 1 && block.team_sizes.front() == 2) return "in pairs";
  const auto sizes = texts_of(block.team_sizes, count_word);
  return sizes.empty() ? "in teams" : "in teams of " + listed(sizes, "or");
}

std::string partner_words(const Block& block, const Telling& telling) {
  std::string opening = teams(block);
  if (block.rounds && *block.rounds > 1) opening += fmt::format(", {} rounds", count_word(*block.rounds));
  if (block.duration) {
    opening += in_time(block.duration, " for");
  } else if (block.score.value_or(domain::Score::Time) == domain::Score::Time) {
    opening += " for time";
  }
  if (block.work_mode == domain::WorkMode::AlternateByPiece) opening += ", you go, I go after each piece";
  if (block.work_mode == domain::WorkMode::AlternateByRound) opening += ", you go, I go after each round";
  if (block.work_mode == domain::WorkMode::SwapParts)
    opening += ", each at a part of their own, swapping when all are done";
  return piece(block, telling, opening);
}

std::string relay_words(const Block& block, const Telling& telling) {
  std::string opening = "relay " + teams(block);
  if (block.lanes)
    opening += fmt::format(" on {} {}", count_word(*block.lanes), *block.lanes == 1 ? "lane" : "lanes");
  const int turns = block.turns_each.value_or(1);
  opening += fmt::format(", {} {} each", count_word(turns), turns == 1 ? "turn" : "turns");
  return piece(block, telling, opening);
}

std::string build_words(const Block& block, const Telling& telling) {
  return "build to a heavy set of " + work_words(block, telling) + in_time(block.duration, " in") +
         condition_words(block) + rule_words(block, telling);
}

/// `0 to 10`, or with seconds `0:00 to 7:30`.
std::string clock_words(Duration from, Duration to) {
  const auto whole = [](Duration time) {
    return number_text(time / base::minute).find('.') == std::string::npos;
  };
  if (whole(from) && whole(to))
    return fmt::format("minutes {} to {}", number_text(from / base::minute), number_text(to / base::minute));
  return fmt::format("{} to {}", time_words(from), time_words(to));
}

std::string heading(const std::string& name, const Block& block, const Telling& telling) {
  std::vector<std::string> parts;
  if (!block.text.empty()) parts.push_back(block.text);
  for (const Block& child : block.children) parts.push_back(section_words(child, telling));
  if (parts.empty()) return name;
  return fmt::format("{}: {}", name, fmt::join(parts, ", then "));
}

std::string distance_words(const Block& block, const Telling& telling) {
  return "as far as possible" + in_time(block.duration, " in") + condition_words(block) + ": " +
         listed(bare_names(block.items, telling)) + rule_words(block, telling);
}

std::string optional_words(const Block& block, const Telling& telling) {
  std::string opening = "extra, if time allows";
  const std::string work = work_words(block, telling);
  if (block.sets)
    return fmt::format("{}: {} sets of {}", opening, count_word(*block.sets), work) +
           rule_words(block, telling);
  if (block.rounds)
    return fmt::format("{}: {}", opening, rounds_of(block, work)) + rule_words(block, telling);
  return piece(block, telling, opening);
}

std::string plain_words(const Block& block, const Telling& telling) {
  const std::string time = block.duration ? ", " + time_words(*block.duration) : "";
  switch (block.kind) {
    case BlockKind::Rest:
      return "rest" + in_time(block.duration, "") +
             (block.text.empty() ? "" : fmt::format(" ({})", block.text));
    case BlockKind::Note:
      return block.text + time;
    case BlockKind::Once:
    case BlockKind::Rounds:
    case BlockKind::Partition:
      return section_words(block, telling) + (block.kind == BlockKind::Rounds ? "" : time);
    default:
      return heading(block.title + time, block, telling);
  }
}

std::string block_words(const Block& block, const Telling& outer) {
  const Telling own{outer.catalogue, outer.house, block.levels.empty() ? outer.levels : block.levels};
  const std::string long_for = block.duration ? time_words(*block.duration) : "the time given";
  switch (block.kind) {
    case BlockKind::ForTime:
      return piece(block, own, for_time(block));
    case BlockKind::Amrap:
      return piece(block, own, "as many rounds as possible in " + long_for);
    case BlockKind::Every:
      return every_words(block, own);
    case BlockKind::Intervals:
      return intervals_words(block, own);
    case BlockKind::Sets:
    case BlockKind::Superset:
      return sets_words(block, own);
    case BlockKind::Circuit:
      return circuit_words(block, own);
    case BlockKind::Ladder:
      return piece(block, own, "ladder for " + long_for);
    case BlockKind::Partner:
      return partner_words(block, own);
    case BlockKind::Relay:
      return relay_words(block, own);
    case BlockKind::Build:
      return build_words(block, own);
    case BlockKind::Accumulate:
      return "accumulate " + work_words(block, own) + condition_words(block) + rule_words(block, own);
    case BlockKind::ForDistance:
      return distance_words(block, own);
    case BlockKind::MaxEffort:
      return piece(block, own, "all out for " + long_for);
    case BlockKind::Window:
      return heading(clock_words(block.from.value_or(Duration{}), block.to.value_or(Duration{})), block, own);
    case BlockKind::Optional:
      return optional_words(block, own);
    default:
      return plain_words(block, own);
  }
}

/// The words of a block up to its work.
std::string scheme_words(const Block& block, const Telling& telling) {
  switch (block.kind) {
    case BlockKind::Sets:
    case BlockKind::Superset: {
      const std::string rest = rest_words(block);
      return sets_count(block) + (rest.empty() ? "" : ", " + rest) + condition_words(block);
    }
    case BlockKind::Window: {
      const auto parts =
          texts_of(block.children, [&](const Block& child) { return scheme_words(child, telling); });
      return fmt::format("{}", fmt::join(parts, ", then "));
    }
    default: {
      const std::string words = block_words(block, telling);
      return words.substr(0, words.find(": "));
    }
  }
}

}  // namespace

std::string scheme_in_words(const Block& block, const domain::Catalogue& catalogue,
                            const domain::House& house) {
  return capital(scheme_words(block, {catalogue, house}));
}

std::vector<std::string> in_words(const domain::Board& board, const domain::Catalogue& catalogue,
                                  const domain::House& house) {
  std::vector<std::string> sentences;
  for (const Block& block : board.blocks) {
    const bool headed =
        !block.title.empty() && block.kind != BlockKind::Part && block.kind != BlockKind::Note;
    const std::string heading = headed ? block.title + ": " : "";
    sentences.push_back(capital(heading + block_words(block, {catalogue, house})) + ".");
  }
  return sentences;
}

}  // namespace repwright::board
