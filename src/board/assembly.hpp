#pragma once

#include "board/session.hpp"

/// From pieces as written to blocks.
namespace repwright::board {

/// Stretches of the text by the temporary numbers that items and blocks carry until all are in order.
struct Places {
  std::vector<domain::Span> items;
  std::vector<domain::Span> blocks;

  domain::StepId item(const domain::Span& span);
  domain::BlockId block(const domain::Span& span);
};

/// What a piece's entry comes to once its piece is known.
struct EntryRules {
  const domain::Block& block;
  const Draft& draft;
  bool slots = false;  // work without an amount takes the work time
  bool sets = false;
  bool one = false;      // the only work of its sets
  bool as_many = false;  // work without an amount is as much as possible
};
domain::Item finish_entry(Session&, Places&, Entry, const EntryRules&);
std::vector<domain::Item> finish_entries(Session&, Places&, const std::vector<Entry>&, const EntryRules&);

/// The blocks of one piece, in order; none for a piece that says nothing.
std::vector<domain::Block> finish_draft(Session&, Places&, const Chapter&, Draft&);

/// Sets and supersets of a draft.
std::vector<domain::Block> finish_sets(Session&, Places&, Draft&);
/// Slots of `every` and `circuit`.
domain::Block finish_every(Session&, Places&, Draft&, std::optional<base::Duration> window);
domain::Block finish_circuit(Session&, Places&, Draft&, std::optional<base::Duration> window);
/// Items, or children as soon as parts have counts of their own.
void fill_work(Session&, Places&, Draft&, domain::Block&, const EntryRules&);

/// What partners with parts of their own do: swap them, or one's guards the other's.
void settle_partners(Session&, Draft&, domain::Block&);
/// The parts that partners swap: an item each, or a child each. False if there are none.
bool fill_parts(Session&, Places&, Draft&, domain::Block&, const EntryRules&);

/// The whole board: chapters to blocks, scores to their pieces, steps and blocks numbered.
void finish_board(Session&, domain::Board&, std::vector<domain::Span>& steps,
                  std::vector<domain::Span>& blocks);

/// The length of a block on the clock (docs/guide/reading.md, section 9), if it is fixed.
std::optional<base::Duration> written_length(const domain::Block& block);

}  // namespace repwright::board
