#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "domain/board.hpp"

/// Boards from readings in JSON, so that what goes out of a board is tested without the reader.
namespace repwright::test {

/// The blocks that a list in the vocabulary of docs/guide/reading.md describes; steps and blocks numbered in
/// order. Throws on words that the vocabulary does not have.
domain::Board board_of_json(const nlohmann::json& blocks, std::string title = "");

/// One board of the test data with the reading that is expected.
struct Example {
  std::string id;
  std::string text;
  nlohmann::json expect;  // blocks, fixed_seconds
};
/// The thirty of whiteboards.json, then the eight of reading-examples.json.
const std::vector<Example>& examples();

}  // namespace repwright::test
