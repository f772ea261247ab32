#include "board/read.hpp"

#include <utility>

#include "board/assembly.hpp"
#include "board/spelling.hpp"

namespace repwright::board {

Reader::Reader(const domain::Catalogue& catalogue, domain::House house)
    : house_(std::move(house)), names_(std::make_unique<const Names>(catalogue, house_)) {}

Reader::~Reader() = default;

Reading Reader::read(std::string_view text) const {
  Lexed source = lex(text);
  Session session{.source = source, .house = house_, .names = *names_};
  mend_trade_words(source, *names_, session.remarks);
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

Reading read(std::string_view text, const domain::Catalogue& catalogue, const domain::House& house) {
  return Reader(catalogue, house).read(text);
}

}  // namespace repwright::board
