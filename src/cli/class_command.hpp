#pragma once

#include <functional>
#include <string>

#include "app/rehearse_class.hpp"
#include "board/read.hpp"
#include "cli/inputs.hpp"
#include "cli/options.hpp"
#include "cli/stop_key.hpp"
#include "cli/taught.hpp"

/// What the commands about a board and a class have in common.
namespace repwright::cli {

inline constexpr int fine = 0;
inline constexpr int input_at_fault = 1;

bool has_errors(const board::Reading& reading);

/// What reading the board found, as text with carets.
std::string remarks_of(const BoardText& board, const board::Reading& reading);

/// What a class command works on: all that was loaded, the board as it was read, what scores taught.
struct ClassAsked {
  const ClassOptions& options;
  const ClassInputs& inputs;
  const board::Reading& reading;
  const Taught& taught;
  const StopKey& stop_key;

  app::ClassRequest request() const;
};

/// Loads, reads, remarks, and lets `command` do the rest unless the files or the board are at fault. Returns
/// the exit code.
int with_class(const ClassOptions& options, const std::function<int(const ClassAsked&)>& command);

}  // namespace repwright::cli
