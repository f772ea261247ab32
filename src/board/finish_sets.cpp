#include <fmt/format.h>

#include <algorithm>

#include "board/assembly.hpp"

namespace repwright::board {
namespace {

using domain::Block;
using domain::BlockKind;

bool is_loaded(const domain::Item& item) {
  return item.loads || item.load_share || item.load_step || item.effort;
}

void score_sets(Block& block) {
  block.score = std::ranges::any_of(block.items, is_loaded) ? domain::Score::Load : domain::Score::None;
}

/// Lines under one lift that differ: one block, lists as long as the lines.
bool is_ladder_of_sets(const std::vector<Entry>& entries) {
  if (entries.size() < 2) return false;
  return std::ranges::all_of(entries, [&](const Entry& entry) {
    return entry.item.movement == entries.front().item.movement &&
           (entry.continues || &entry == &entries.front()) && entry.amount &&
           entry.amount->values.size() == 1 && (!entry.sets || *entry.sets == 1);
  });
}

Entry merged(const std::vector<Entry>& entries) {
  Entry entry = entries.front();
  Numbers list = entry.amount.value_or(Numbers{});
  list.values.clear();
  list.joined = Joined::Dashes;
  std::vector<double> percent;
  for (const Entry& one : entries) {
    if (one.amount) list.values.push_back(one.amount->values.front());
    if (one.item.load_share) percent.push_back(one.item.load_share->percent.front());
  }
  if (percent.size() == entries.size() && entry.item.load_share) entry.item.load_share->percent = percent;
  entry.amount = std::move(list);
  entry.sets = static_cast<int>(entries.size());
  entry.span.end = entries.back().span.end;
  return entry;
}

/// A percentage for each set, or one for all; `80-85%` over five sets is a range, of which the lower counts.
void fit_percentages(Session& session, const Entry& entry, domain::Item& item, int sets) {
  if (!item.load_share || item.load_share->percent.size() < 2 ||
      static_cast<int>(item.load_share->percent.size()) == sets)
    return;
  session.remarks.add(
      {"first-of-two", entry.span,
       fmt::format("`{}`: the first percentage was taken for all {} sets", session.kept(entry.span), sets),
       "write one percentage, or one for each set"});
  item.load_share->percent.resize(1);
}

Block block_of(Session& session, Places& places, const Draft& draft, const std::vector<Entry>& entries,
               BlockKind kind) {
  Block block = draft.block;
  block.kind = kind;
  block.id = places.block(entries.empty() ? draft.span : entries.front().span);
  block.rest = draft.set_rest;
  int sets = draft.block.sets.value_or(0);
  for (const Entry& entry : entries) sets = std::max(sets, entry.sets.value_or(entry.share_sets.value_or(0)));
  block.sets = std::max(sets, 1);
  if (block.sets && *block.sets > 200)
    session.remarks.add(
        {"too-many", draft.span, "no session holds more than 200 sets", "mend the count of sets"});
  block.items = finish_entries(session, places, entries,
                               {.block = block, .draft = draft, .sets = true, .one = entries.size() == 1});
  for (domain::Item& item : block.items)
    if (auto* list = std::get_if<domain::PerSet>(&item.amount);
        list != nullptr && static_cast<int>(list->amounts.size()) > *block.sets)
      block.sets = static_cast<int>(list->amounts.size());
  for (std::size_t i = 0; i < block.items.size() && i < entries.size(); ++i)
    fit_percentages(session, entries[i], block.items[i], *block.sets);
  score_sets(block);
  if (draft.said.load_scored) block.score = domain::Score::Load;
  return block;
}

}  // namespace

std::vector<Block> finish_sets(Session& session, Places& places, Draft& draft) {
  std::vector<Entry> entries;
  for (const Section& section : draft.sections)
    entries.insert(entries.end(), section.entries.begin(), section.entries.end());
  if (entries.empty()) return {};
  if (is_ladder_of_sets(entries)) entries = {merged(entries)};
  const bool superset = draft.said.superset && entries.size() > 1;
  return {block_of(session, places, draft, entries, superset ? BlockKind::Superset : BlockKind::Sets)};
}

}  // namespace repwright::board
