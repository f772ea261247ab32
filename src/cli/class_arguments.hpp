#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <string>
#include <vector>

#include "cli/options.hpp"

/// The arguments that commands about a board and a class have in common.
namespace repwright::cli {

/// What is to be done once the line is understood.
using Chosen = std::function<int()>;

/// The counts of `PLACE=N` texts. Throws CLI::ValidationError on another form.
std::vector<PlaceOut> places_out(const std::vector<std::string>& texts);

void add_board(CLI::App& command, std::string& board);
/// Who comes, where and when.
void add_who_and_where(CLI::App& command, ClassOptions& options, std::vector<std::string>& out);
void add_seed(CLI::App& command, std::uint64_t& seed);
void add_threads(CLI::App& command, int& threads);

/// A command about a board and a class, played.
struct PlayedCommand {
  const char* name;
  const char* what;
  int (*run)(const ClassOptions&);
};
struct PlayedOptions {
  ClassOptions of_class;
  std::vector<std::string> out;
};
/// The options must outlive the parsing and `chosen`.
CLI::App* add_played(CLI::App& app, PlayedCommand played, PlayedOptions& options, Chosen& chosen);

}  // namespace repwright::cli
