#pragma once

#include "cli/class_arguments.hpp"

/// The arguments of the commands that propose something.
namespace repwright::cli {

/// What these commands are told.
struct AdviceOptions {
  PlayedOptions repairs, fit, timetable;
  WarmUpOptions warm_up;
  PairsOptions pairs;
  AwayOptions away;
  std::vector<std::string> warm_up_out, pairs_out, pairs_apart;
};

/// The options must outlive the parsing and `chosen`.
void add_advice(CLI::App& app, AdviceOptions& options, Chosen& chosen);

}  // namespace repwright::cli
