#pragma once

#include "cli/options.hpp"

/// One function per command of the program. Each returns the exit code: 0 fine, 1 the input is at fault.
/// JSON and texts that were asked for go to the standard output, everything said about them to the standard
/// error.
namespace repwright::cli {

int run_read(const ReadOptions& options);
int run_tidy(const ReadOptions& options);
int run_timetable(const ClassOptions& options);
int run_rehearse(const ClassOptions& options);
int run_repairs(const ClassOptions& options);
int run_away(const AwayOptions& options);
int run_fit(const ClassOptions& options);
int run_warm_up(const WarmUpOptions& options);
int run_pairs(const PairsOptions& options);
int run_learn(const LearnOptions& options);
int run_hindsight(const LearnOptions& options);
int run_demo(const DemoOptions& options);
int run_import(const MoveOptions& options);
int run_export(const MoveOptions& options);
int run_export_person(const PersonOptions& options);
int run_forget(const PersonOptions& options);
int run_backup(const MoveOptions& options);
int run_restore(const MoveOptions& options);
/// Returns when it is told to stop.
int run_serve(const ServeOptions& options);

}  // namespace repwright::cli
