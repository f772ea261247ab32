#pragma once

#include <fmt/format.h>

#include <cstdio>
#include <string_view>

#include "base/result.hpp"

/// What a command says, and on which of its outputs.
namespace repwright::cli {

/// What was asked for.
inline void say(std::string_view text) {
  std::fwrite(text.data(), 1, text.size(), stdout);
}

/// What is said about it.
inline void remark(std::string_view text) {
  std::fwrite(text.data(), 1, text.size(), stderr);
}

/// Says why nothing came of it; returns the exit code of an input at fault.
inline int refuse(const base::Error& error) {
  remark(fmt::format("repwright: {}\n", error.message));
  return 1;
}

}  // namespace repwright::cli
