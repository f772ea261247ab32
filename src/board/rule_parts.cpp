#include "board/rule_parts.hpp"

#include <fmt/format.h>

namespace repwright::board {

bool take_rounds_word(Cursor& cursor) {
  return cursor.take_any({"rounds", "round", "rds", "rd", "rnds", "rnd"});
}

bool for_distance_follows(Cursor cursor) {
  for (int near = 0; near < 60 && !cursor.done(); ++near, cursor.next())
    if (cursor.at("for distance")) return true;
  return false;
}

void check_rounds(Session& session, double count, const domain::Span& span) {
  if (count <= 0)
    session.remarks.add({"no-amount", span, fmt::format("`{}`: rounds begin at 1", session.kept(span)),
                         "write how many rounds"});
  if (count > 200)
    session.remarks.add({"too-many", span,
                         fmt::format("`{}`: no session holds more than 200 rounds", session.kept(span)),
                         "write 1 to 200 rounds"});
}

bool nothing_below(const Session& session) {
  const auto next = static_cast<std::size_t>(session.line_index) + 1;
  return next >= session.source.lines.size() || session.source.lines[next].after_blank;
}

Section& open_section(Session& session, Draft& draft, Role role, std::optional<int> rounds) {
  const bool reuse = !draft.sections.empty() && draft.sections.back().entries.empty();
  if (!reuse) draft.sections.emplace_back();
  Section& section = draft.sections.back();
  section.role = role;
  section.rounds = rounds;
  section.line = session.line_index;
  return section;
}

}  // namespace repwright::board
