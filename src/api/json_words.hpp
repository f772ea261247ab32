#pragma once

#include <string_view>

#include "domain/board.hpp"
#include "domain/diagnostic.hpp"

/// The names of kinds, scores and units in the reading's JSON.
namespace repwright::api {

std::string_view json_word(domain::BlockKind kind);
std::string_view json_word(domain::Score score);
std::string_view json_word(domain::Unit unit);
std::string_view json_word(domain::Share share);
std::string_view json_word(domain::PartnerMode mode);
std::string_view json_word(domain::WorkMode mode);
std::string_view json_word(domain::Severity severity);

}  // namespace repwright::api
