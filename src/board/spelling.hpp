#pragma once

#include "board/names.hpp"
#include "board/remarks.hpp"
#include "board/token.hpp"

namespace repwright::board {

/// Trade words of five letters and more with one slip of the pen are read as meant, each with a remark.
void mend_trade_words(Lexed& source, const Names& names, Remarks& remarks);

}  // namespace repwright::board
