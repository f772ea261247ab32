#pragma once

#include <string>

#include "domain/reasons.hpp"

namespace repwright::sheets {

/// Why a person is forecast what they are, in plain sentences: what is known of them, each piece as somebody
/// like them, by marks and with scores, what holds them on each line, the scores that counted most. UTF-8,
/// lines of at most 80 columns, ends with a line feed.
std::string why_text(const domain::Why& why);

/// Which test would tell most of a person, with the minutes each costs. The same form.
std::string tests_text(const domain::TestOffers& offers);

}  // namespace repwright::sheets
