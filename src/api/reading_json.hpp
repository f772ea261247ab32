#pragma once

#include <nlohmann/json_fwd.hpp>
#include <span>
#include <string>
#include <string_view>

#include "board/read.hpp"
#include "domain/board.hpp"

/// A board's reading as JSON: docs/reading.schema.json, in the vocabulary of docs/guide/reading.md.
namespace repwright::api {

/// The blocks in the order of doing, each field only if it says something. Seconds, metres, kilograms;
/// whole numbers without a point.
nlohmann::ordered_json blocks_json(const domain::Board& board);

/// What `read --json` prints: title, blocks, fixed seconds, the reading in sentences, what of the text was
/// understood, diagnostics. `text` is what was read; `sentences`: one for each top block. Ends with a line
/// end.
std::string reading_json(const board::Reading& reading, std::string_view text,
                         std::span<const std::string> sentences);

}  // namespace repwright::api
