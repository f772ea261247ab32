#pragma once

#include <cstddef>
#include <string>

#include "api/request_body.hpp"
#include "api/route_table.hpp"

/// What the routes that rehearse a board under a 'what if' are asked with.
namespace repwright::api {

constexpr std::size_t longest_board = 20'000;  // bytes; a long one has 2,000

struct WhatIfQuestion {
  std::string text;        // of the board
  board::Reading reading;  // of that text, without errors
  app::WhatIf what;
};

/// The board that was sent, else the one that was named, else that of the class, and what is other than
/// booked. A fault says what cannot be read, where the board has its first error, or that a relief coach
/// asked for another class than theirs.
tl::expected<WhatIfQuestion, Fault> what_if_question(const Call& call);
/// The same from a body of whose fields the others are read already; their faults are said here too.
tl::expected<WhatIfQuestion, Fault> what_if_question(const Call& call, RequestBody& body);

}  // namespace repwright::api
