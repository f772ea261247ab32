#include "board/session.hpp"

#include <fmt/format.h>

namespace repwright::board {

Chapter& Session::chapter() {
  if (chapters.empty()) chapters.emplace_back();
  return chapters.back();
}

Draft& Session::draft() {
  Chapter& here = chapter();
  if (here.drafts.empty()) {
    Draft& made = here.drafts.emplace_back();
    made.first_line = line_index;
    made.span.line = 0;
    if (here.part == Part::Extra) made.said.optional = true;
    if (here.part == Part::Finisher) made.said.max_effort = true;
  }
  Draft& last = here.drafts.back();
  if (!levels.empty() && last.block.levels.empty() && !last.has_work()) last.block.levels = std::move(levels);
  levels.clear();
  return last;
}

Draft& Session::fresh(const domain::Span& span) {
  Draft& now = draft();
  if (now.untouched()) {
    if (now.span.line == 0) now.span = span;
    return now;
  }
  Draft next;
  next.first_line = line_index;
  next.span = span;
  if (chapter().part == Part::Extra) next.said.optional = true;
  chapter().drafts.push_back(std::move(next));
  return chapter().drafts.back();
}

Draft& Session::clocked(const domain::Span& span) {
  Draft& now = draft();
  if (now.has_work() || now.has_clock()) return fresh(span);
  if (now.span.line == 0) now.span = span;
  return now;
}

Chapter& Session::open_chapter(Part part, std::string heading, const domain::Span& span) {
  Chapter next;
  next.part = part;
  next.title = std::move(heading);
  next.span = span;
  chapters.push_back(std::move(next));
  return chapters.back();
}

void keep_words(Session& session, const domain::Span& span) {
  const std::string words = session.kept(span);
  if (words.empty()) return;
  Chapter& chapter = session.chapter();
  const bool heading_only = chapter.drafts.empty() || chapter.drafts.back().untouched();
  if (heading_only && (chapter.part != Part::None || chapter.from)) {
    chapter.words.push_back(words);
  } else {
    session.draft().texts.push_back(words);
  }
  session.remarks.add({"kept-as-words", span,
                       fmt::format("`{}` is neither work nor rule and is kept for people", words),
                       "put an amount before work that should count"});
}

}  // namespace repwright::board
