#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "rehearsal/place_table.hpp"
#include "rehearsal/routes.hpp"
#include "rehearsal/script.hpp"
#include "rehearsal/write_script.hpp"

/// One person's script while it is being written.
namespace repwright::rehearsal {

/// What all scripts of one piece share.
struct PieceContext {
  const WriteRequest& request;
  const domain::Block& block;  // the whole piece
  const timetable::Piece& piece;
  PlaceTable& places;
  const std::vector<RouteChoice>& routes;  // by step
  std::optional<domain::MovementId> odd_start;
};

/// Which share of the fitted line is meant, and how.
struct WorkStyle {
  int round = 0;              // picks from lists and climbing amounts
  bool by_the_clock = false;  // work until the deadline, whatever the amount
  double load_share = 1;      // of the fitted load
};

class ScriptDraft {
 public:
  ScriptDraft(const PieceContext& context, int person);

  const PieceContext& context() const { return context_; }
  int person() const { return person_; }
  Script& script() { return script_; }
  const std::vector<Op>& ops() const { return script_.ops; }
  const domain::FittedItem& fitted(const domain::Item& item) const;
  std::optional<int> level() const;
  /// How often this person goes through the piece, if not as written.
  std::optional<int> own_rounds() const;

  /// Where the next op will stand.
  int here() const { return static_cast<int>(script_.ops.size()); }
  int add(Op op);
  /// The op's target is the next op to come.
  void land(int op) { script_.ops[static_cast<std::size_t>(op)].target = here(); }

  void work(const domain::Item& item, const WorkStyle& style = {});
  /// The ops of `work`, apart from the script: for duties and penalties.
  std::vector<Op> side_work(const std::vector<domain::Item>& items);
  void rest(double seconds);
  /// Until then work ends there; `land` the answer. No deadline (-1) where the time is not limited.
  int deadline(std::optional<double> seconds);
  void wait_until(double seconds) { add({.kind = OpKind::WaitUntil, .amount = seconds}); }
  void mark(OpKind kind) { add({.kind = kind}); }

  /// The task of a line; made once per line and load.
  int task(const domain::Item& item, double load_share = 1, int set = 0);
  /// Units of one turn of the line as the task counts them; infinite for an open one.
  double units(const domain::Item& item, const WorkStyle& style) const;
  /// Largest unbroken set of the person's middle body on that task.
  double best_on(int task) const;
  bool endless(const domain::Item& item) const;

 private:
  Task make_task(const domain::Item& item, double load) const;
  void go_outside(Task& task, const domain::Item& item, const domain::Movement& movement) const;
  const domain::Movement& movement_of(const domain::FittedItem& fitted) const;
  std::vector<Op> ops_of(const domain::Item& item, const WorkStyle& style);
  double load_of(const domain::FittedItem& fitted, int set) const;

  const PieceContext& context_;
  int person_;
  Script script_;
  std::map<std::pair<int, long>, int> tasks_;  // by step and grams
};

/// The movement that stands for words the catalogue does not know: prior seconds for every unit.
const domain::Movement& unknown_movement();

}  // namespace repwright::rehearsal
