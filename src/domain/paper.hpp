#pragma once

#include <cstdint>
#include <string>

#include "domain/kept.hpp"

/// Texts of a gym that stand for themselves.
namespace repwright::domain {

enum class Paper : std::uint8_t {
  EmergencyCard,  // what to do and whom to call, in the owner's words
  Rankings        // ids, one a line, of the people who want to be in lists by score
};

/// A paper as it lies in the store; empty and of version 0 if it was never written.
struct KeptPaper {
  Saved saved;
  std::string text;
  bool operator==(const KeptPaper&) const = default;
};

}  // namespace repwright::domain
