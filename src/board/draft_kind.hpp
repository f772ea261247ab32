#pragma once

#include <optional>
#include <vector>

#include "board/session.hpp"

/// What kind of piece was written.
namespace repwright::board {

/// Every line of work of a draft, those of its parts before those of its slots.
std::vector<Entry> all_entries(const Draft& draft);

/// `3 rounds: 1 min row, 1 min wall shots, 1 min push-ups`: the same time at each is a circuit, unless all
/// are holds or runs for which a time is a plain amount. Returns that time.
std::optional<base::Duration> time_at_each(const Session& session, const Draft& draft,
                                           const std::vector<Entry>& entries);

/// Work that no clock runs for: minutes beside it only say how long the hour gives it.
bool at_nobodys_clock(domain::BlockKind kind);

/// The kind of block that a draft in that chapter becomes: the first rule that fits decides.
domain::BlockKind kind_of(const Chapter& chapter, const Draft& draft);

}  // namespace repwright::board
