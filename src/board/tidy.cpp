#include "board/tidy.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "board/chalk_block.hpp"
#include "board/chalk_numbers.hpp"
#include "board/draft_kind.hpp"
#include "board/headings.hpp"

namespace repwright::board {
namespace {

using domain::Block;
using domain::BlockKind;

/// How many bytes of the words name a part of the class, as a heading does.
std::size_t part_words_in(const std::string& words) {
  const Lexed lexed = lex(words);
  const std::size_t marks = part_reach(Cursor(lexed, 0, lexed.tokens.size()));
  return marks == 0 ? 0 : lexed.tokens[marks - 1].span.end;
}

Part part_of(const std::string& words) {
  const Lexed lexed = lex(words);
  return part_at(Cursor(lexed, 0, lexed.tokens.size()));
}

/// Whether words would be taken for work.
bool holds_counts(const std::string& words) {
  const Lexed lexed = lex(words);
  return std::ranges::any_of(lexed.tokens, [](const Token& token) {
    return token.kind == TokenKind::Number || token.text == "max" || token.text == "amrap" ||
           token.text == "emom";
  });
}

class Writer {
 public:
  Writer(const domain::Catalogue& catalogue, const domain::House& house) : chalk_(catalogue, house) {}

  std::string board(const domain::Board& board) {
    if (!board.title.empty()) line("title: " + board.title);
    for (const Block& block : board.blocks) top(block);
    return std::move(text_);
  }

 private:
  void line(const std::string& text) { text_ += text + "\n"; }
  void gap() {
    if (!text_.empty()) text_ += "\n";
  }

  /// `Str 12 min`, `Part 2 - 12 min`.
  static std::string heading(const std::string& title, const std::optional<base::Duration>& minutes) {
    const bool numbered = !title.empty() && title.back() >= '0' && title.back() <= '9';
    if (!minutes) return title + (numbered ? ":" : "");
    return fmt::format("{}{} {}", title, numbered ? " -" : "", chalk_time(*minutes));
  }

  static bool is_quiet(Part part) {
    return part == Part::WarmUp || part == Part::CoolDown || part == Part::Skill;
  }

  void top(const Block& block) {
    gap();
    quiet_part_ = is_quiet(part_of(block.kind == BlockKind::Window ? block.text : block.title));
    switch (block.kind) {
      case BlockKind::Window:
        return window(block);
      case BlockKind::Part:
        line(heading(block.title, block.duration));
        for (const Block& child : block.children) {
          if (&child != block.children.data()) gap();
          piece(child);
        }
        return;
      case BlockKind::Note:
        return words(block);
      case BlockKind::Rest:
        if (!block.text.empty()) return words(block);
        break;
      case BlockKind::Optional:
        line(heading("Extra", block.duration));
        break;
      default:
        if (!block.title.empty() || (minutes_in_heading(block) && !at_nobodys_clock(block.kind)))
          return headed(block);
    }
    piece(block);
  }

  /// Words for people stand beside a heading that takes nothing else.
  void headed(Block block) {
    std::string text = heading(block.title.empty() ? "Piece" : block.title,
                               minutes_in_heading(block) ? block.duration : std::nullopt);
    const Part part = part_of(block.title);
    const bool takes_words = part == Part::WarmUp || part == Part::CoolDown || part == Part::Talk;
    if (takes_words && !block.text.empty() && !holds_counts(block.text)) {
      text += (block.text.starts_with(":") ? "" : " ") + block.text;
      block.text.clear();
    }
    line(text);
    piece(block);
  }

  void piece(const Block& block) {
    if (block.kind == BlockKind::Note) return note(block);
    const bool unclocked = block.kind == BlockKind::Rounds || block.kind == BlockKind::Once;
    if (unclocked && !quiet_part_) line("not for time");
    for (const std::string& each : chalk_piece(block, chalk_, {.letter = letter_})) line(each);
    if (block.title.empty() && block.duration && at_nobodys_clock(block.kind))
      line(chalk_time(*block.duration));
    if (block.kind == BlockKind::Superset) letter_ = letter_ == 'H' ? 'A' : static_cast<char>(letter_ + 1);
  }

  void note(const Block& block) {
    const std::string minutes = block.duration ? " " + chalk_time(*block.duration) : "";
    line(fmt::format("note{}: {}", minutes, block.text));
  }

  /// A part of the class without work to read: its heading with the words behind it.
  void words(const Block& block) {
    const std::size_t named = part_words_in(block.text);
    const bool rests = part_of(block.text) == Part::Rest;
    if (named == 0 || rests != (block.kind == BlockKind::Rest)) return note(block);
    line(heading(block.text.substr(0, named), block.duration) + block.text.substr(named));
  }

  /// The part of the class behind the times, the pieces below, then what else is said.
  void window(const Block& block) {
    const std::string times = fmt::format("{}-{}", clock(block.from.value_or(base::Duration{})),
                                          clock(block.to.value_or(base::Duration{})));
    std::string rest = block.text;
    const std::size_t named = words_of_window(block);
    line(named == 0 ? times : fmt::format("{} {}", times, rest.substr(0, named)));
    rest.erase(0, named);
    if (rest.starts_with("; ")) rest.erase(0, 2);
    for (const Block& child : block.children) {
      if (&child != block.children.data()) gap();
      piece(child);
    }
    if (rest.empty()) return;
    if (!block.children.empty()) gap();
    line("note: " + rest);
  }

  /// How many bytes of a window's words may stand on its line.
  static std::size_t words_of_window(const Block& block) {
    const std::size_t named = part_words_in(block.text);
    if (named == 0) return 0;
    const bool alone = block.text.size() == named || block.text.compare(named, 2, "; ") == 0;
    const Part part = part_of(block.text);
    const bool work = part == Part::Skill || part == Part::Strength || part == Part::Piece ||
                      part == Part::Finisher || part == Part::Extra;
    if (work) return alone ? named : 0;
    return block.children.empty() && !holds_counts(block.text) && block.text.find("; ") == std::string::npos
               ? block.text.size()
               : 0;
  }
  static std::string clock(base::Duration time) {
    const double minutes = time / base::minute;
    if (minutes == static_cast<int>(minutes)) return fmt::format("{}", static_cast<int>(minutes));
    const int seconds = static_cast<int>(time / base::second);
    return fmt::format("{}:{:02}", seconds / 60, seconds % 60);
  }

  Chalk chalk_;
  std::string text_;
  char letter_ = 'A';
  bool quiet_part_ = false;  // a part of the class that has no clock unless one is said
};

}  // namespace

std::string tidy(const domain::Board& board, const domain::Catalogue& catalogue, const domain::House& house) {
  return Writer(catalogue, house).board(board);
}

}  // namespace repwright::board
