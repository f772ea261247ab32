#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "domain/ids.hpp"

/// How each person meets what the coach intends with a piece.
namespace repwright::domain {

/// What the intent is measured in: seconds to the end, full rounds and the share of the next, or the seconds
/// that an interval leaves.
enum class FitMeasure : std::uint8_t { Seconds, Rounds, SpareSeconds };

struct FitWindow {
  FitMeasure measure = FitMeasure::Seconds;
  double min = 0;
  std::optional<double> max;
  bool operator==(const FitWindow&) const = default;
};

/// One person's version of a piece. `does` says in a coach's words what differs from the board; empty: as
/// written. Shares are of the runs inside the window.
struct PersonFit {
  PersonId person;
  std::string name;
  std::vector<std::string> does;
  double expected = 0;
  std::string expects;  // that in words
  double inside_before = 0;
  double inside_after = 0;
  std::string easier, harder;  // the next step either way; empty: none
  std::string clash;           // why the window is out of reach; empty: it is not
  std::string question;        // what the coach should ask; empty: nothing
  bool operator==(const PersonFit&) const = default;
};

/// A piece without a window is done as plainly fitted, and nobody is inside or outside.
struct PieceFit {
  std::string piece;
  std::optional<FitWindow> window;
  std::string intent;  // that in words; empty: none
  std::vector<PersonFit> people;
  double inside_before = 0;
  double inside_after = 0;
  std::vector<std::string> short_of;  // kit, in words
  bool operator==(const PieceFit&) const = default;
};

struct FitPlan {
  std::vector<PieceFit> pieces;
  std::vector<std::string> notes;
  bool operator==(const FitPlan&) const = default;
};

}  // namespace repwright::domain
