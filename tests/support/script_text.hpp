#pragma once

#include <string>

#include <fmt/format.h>

#include "rehearsal/script.hpp"

/// Scripts as text, one op per line, for tests that compare whole scripts.
namespace repwright::test {

inline std::string op_text(const rehearsal::Script& script, const rehearsal::Op& op) {
  using rehearsal::OpKind;
  const auto what = [&] {
    return op.task < 0 ? std::string() : " " + script.tasks[static_cast<std::size_t>(op.task)].movement.text;
  };
  switch (op.kind) {
    case OpKind::Work:
      return fmt::format("work{} {:g}", what(), op.amount);
    case OpKind::MaxSet:
      return fmt::format("max set{} less {:g}", what(), op.amount);
    case OpKind::Pool:
      return fmt::format("pool {}{}", op.pool, what());
    case OpKind::Rest:
      return fmt::format("rest {:g}", op.amount);
    case OpKind::RestRatio:
      return fmt::format("rest x{:g}", op.amount);
    case OpKind::RestReady:
      return "rest until ready";
    case OpKind::WaitUntil:
      return fmt::format("wait {:g}", op.amount);
    case OpKind::Deadline:
      return fmt::format("until {:g} then {}", op.amount, op.target);
    case OpKind::NoDeadline:
      return "no deadline";
    case OpKind::Resume:
      return "resume";
    case OpKind::Mark:
      return "mark";
    case OpKind::Lap:
      return "lap";
    case OpKind::RoundDone:
      return "round";
    case OpKind::Jump:
      return fmt::format("jump {}", op.target);
    case OpKind::TakeBaton:
      return "take" + what();
    case OpKind::PassBaton:
      return "pass";
    case OpKind::Meet:
      return op.pool == -1 ? "meet" : "meet all";
    case OpKind::End:
      return "end";
  }
  return {};
}

/// "0 until 660 then 4; 1 work run 200; ..."
inline std::string script_text(const rehearsal::Script& script) {
  std::string text;
  for (std::size_t i = 0; i < script.ops.size(); ++i)
    text += fmt::format("{}{} {}", i == 0 ? "" : "; ", i, op_text(script, script.ops[i]));
  return text;
}

}  // namespace repwright::test
