#include "board/read.hpp"

#include "board/assembly.hpp"
#include "board/spelling.hpp"

namespace repwright::board {

Reading read(std::string_view text, const domain::Catalogue& catalogue, const domain::House& house) {
  Lexed source = lex(text);
  const Names names(catalogue, house);
  Session session{.source = source, .house = house, .names = names};
  mend_trade_words(source, names, session.remarks);
  for (const Line& line : source.lines) {
    read_line(session, line);
    ++session.line_index;
  }
  Reading reading;
  finish_board(session, reading.board, reading.steps, reading.blocks);
  reading.rules = std::move(session.rules);
  reading.diagnostics = session.remarks.take();
  return reading;
}

}  // namespace repwright::board
