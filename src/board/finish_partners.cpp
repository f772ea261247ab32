#include <algorithm>

#include "board/assembly.hpp"

/// Partners with parts of their own: they swap them, or one works for as long as the other one's part takes.
namespace repwright::board {
namespace {

using domain::Block;
using domain::BlockKind;

/// The work of each partner, in the order of their labels; nothing if not all of it is somebody's part.
std::vector<std::vector<Entry>> parts_of(const Draft& draft) {
  std::vector<std::vector<Entry>> parts;
  for (const Section& section : draft.sections)
    for (const Entry& entry : section.entries) {
      if (entry.part <= 0) return {};
      if (parts.size() < static_cast<std::size_t>(entry.part))
        parts.resize(static_cast<std::size_t>(entry.part));
      parts[static_cast<std::size_t>(entry.part) - 1].push_back(entry);
    }
  if (std::ranges::any_of(parts, [](const auto& part) { return part.empty(); })) return {};
  return parts;
}

bool as_many_as_possible(const std::vector<Entry>& part) {
  if (part.size() != 1) return false;
  const auto& amount = part.front().amount;
  return amount && std::holds_alternative<domain::Max>(amount->values.front());
}

/// The part without an end of its own, if there is one.
std::optional<std::size_t> open_part(const Draft& draft, const std::vector<std::vector<Entry>>& parts) {
  if (parts.size() != 2) return std::nullopt;
  if (draft.open_part > 0) return static_cast<std::size_t>(draft.open_part - 1);
  for (const std::size_t i : {0UL, 1UL})
    if (as_many_as_possible(parts[i]) && !as_many_as_possible(parts[1 - i])) return i;
  return std::nullopt;
}

domain::Gate gate_of(const Session& session, const Entry& entry) {
  domain::Gate gate;
  gate.movement = entry.item.movement;
  gate.free_text = entry.item.movement ? std::string() : entry.item.free_text;
  const domain::Movement* held = gate.movement ? session.names.movement(*gate.movement) : nullptr;
  gate.unit = held != nullptr && !held->pace.contains(domain::Unit::Seconds) ? held->default_unit
                                                                             : domain::Unit::Seconds;
  return gate;
}

/// One works; the other does the open part meanwhile.
void fill_guarded(Session& session, Draft& draft, Block& block, const std::vector<Entry>& open) {
  std::erase_if(draft.sections, [](const Section& section) { return section.entries.empty(); });
  const int part = open.front().part;
  std::size_t work = 0;
  for (Section& section : draft.sections) {
    std::erase_if(section.entries, [&](const Entry& entry) { return entry.part == part; });
    for (Entry& entry : section.entries) {
      entry.item.gate = gate_of(session, open.front());
      entry.item.mode = domain::PartnerMode::OneWorks;
    }
    work += section.entries.size();
  }
  block.work_mode = work > 1 ? domain::WorkMode::AlternateByRound : domain::WorkMode::AlternateByPiece;
  if (open.size() < 2) return;
  domain::Span said = open.front().span;
  said.end = open.back().span.end;
  draft.texts.push_back("the other: " + session.kept(said));
}

}  // namespace

void settle_partners(Session& session, Draft& draft, Block& block) {
  const std::vector<std::vector<Entry>> parts = parts_of(draft);
  if (parts.size() < 2) return;
  if (const auto open = open_part(draft, parts)) return fill_guarded(session, draft, block, parts[*open]);
  block.work_mode = domain::WorkMode::SwapParts;
}

bool fill_parts(Session& session, Places& places, Draft& draft, Block& block, const EntryRules& rules) {
  if (block.work_mode != domain::WorkMode::SwapParts) return false;
  const std::vector<std::vector<Entry>> parts = parts_of(draft);
  const bool single = std::ranges::all_of(parts, [](const auto& part) { return part.size() == 1; });
  for (const std::vector<Entry>& part : parts) {
    std::vector<domain::Item> items = finish_entries(session, places, part, rules);
    if (single) {
      std::ranges::move(items, std::back_inserter(block.items));
      continue;
    }
    Block child;
    child.kind = BlockKind::Once;
    child.id = places.block(part.front().span);
    child.items = std::move(items);
    block.children.push_back(std::move(child));
  }
  return true;
}

}  // namespace repwright::board
