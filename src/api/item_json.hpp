#pragma once

#include <nlohmann/json_fwd.hpp>
#include <span>
#include <string>
#include <vector>

#include "domain/board.hpp"

namespace repwright::api {

/// The names of the levels in force, in the order of the board.
using LevelNames = std::span<const std::string>;

/// A number of the reading: without a point if it is whole.
nlohmann::ordered_json number_json(double value);
/// Seconds, as `number_json`.
nlohmann::ordered_json seconds_json(base::Duration time);
/// One number, or `min` and `max` if they differ.
nlohmann::ordered_json range_json(const domain::Range& range);
nlohmann::ordered_json item_json(const domain::Item& item, LevelNames levels);
nlohmann::ordered_json items_json(const std::vector<domain::Item>& items, LevelNames levels);

}  // namespace repwright::api
