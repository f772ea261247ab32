#pragma once

#include <vector>

#include "advice/edits.hpp"
#include "advice/troubles.hpp"

namespace repwright::advice {

/// The edits of one piece that is too much or too little for these people in its time: fewer or more rounds,
/// shorter runs, less of every line, longer intervals and fewer of them, a later cap. Where the class runs
/// over, less helps also if the piece itself is as intended.
std::vector<domain::Edit> amount_edits(const EditRequest& request, std::size_t piece,
                                       const Troubles& troubles, const domain::Block& block);

/// One run made three quarters or half as long, in steps of 50 m; none where that leaves less than 100 m.
std::vector<domain::Edit> shorter_runs(const EditRequest& request, const domain::Block& block,
                                       const domain::Item& item);

}  // namespace repwright::advice
