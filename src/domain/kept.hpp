#pragma once

#include <chrono>
#include <cstdint>
#include <map>
#include <optional>
#include <string>

#include "domain/ids.hpp"
#include "domain/score.hpp"

/// What is kept besides the gym itself: by whom and when, what was there before, what wears off.
namespace repwright::domain {

/// Names a state of something that is kept; 0: not there. Only to be compared.
using Version = std::uint64_t;

/// Who did something, and when. An empty name: the program, or nobody knows.
struct Stamp {
  std::string who;
  std::chrono::sys_seconds when{};
  bool operator==(const Stamp&) const = default;
};

/// How something lies in the store: the version that a change of it must name.
struct Saved {
  Version version = 0;
  std::optional<Stamp> by;  // nothing: the store does not know
  bool operator==(const Saved&) const = default;
};

/// A change by somebody who looked at this version.
struct Seen {
  Version version = 0;
  Stamp by;
};

/// How every part of a gym lies in the store.
struct GymVersions {
  Saved people, hall, house, movements;
  std::map<std::string, Saved> boards, classes;  // by id
  bool operator==(const GymVersions&) const = default;
};

/// The text of a board as it was saved once.
struct BoardVersion {
  Saved saved;
  std::string text;
  bool operator==(const BoardVersion&) const = default;
};

/// One line of the score sheet, or what it said before it was corrected.
struct KeptScore {
  std::int64_t number = 0;  // the same for all versions of a line
  Saved saved;
  ScoreEntry entry;
  bool operator==(const KeptScore&) const = default;
};

/// How hard the whole hour was for somebody (RPE, 0 to 10).
struct ClassEffort {
  std::string class_id;
  PersonId person;
  double effort = 0;
  std::string key{};  // made by the sender; said again with the same key, nothing changes
  bool operator==(const ClassEffort&) const = default;
};

/// A coach's note, of one person or (empty) of the gym; after its last day it is not kept.
struct Note {
  PersonId person;
  std::string text;
  std::optional<std::chrono::year_month_day> until;
  std::string key{};  // made by the sender: a note that comes twice is kept once
  bool operator==(const Note&) const = default;
};

/// A note as it is kept.
struct KeptNote {
  std::int64_t number = 0;  // never given again
  Stamp by;
  Note note;
  bool operator==(const KeptNote&) const = default;
};

/// What was taken out or made nameless when somebody was forgotten.
struct Forgotten {
  int scores = 0;
  int efforts = 0;
  int notes = 0;
  int classes = 0;
  int boards = 0;  // with the name in one of their texts
  int accounts = 0;
  bool operator==(const Forgotten&) const = default;
};

/// One line of the audit trail.
struct TrailLine {
  std::int64_t number = 0;  // grows with time
  Stamp by;
  std::string what;  // "board sat-two-clocks"; never what was in it
  bool operator==(const TrailLine&) const = default;
};

/// The newest lines of the trail, or the newest before a line of that number.
struct TrailPage {
  int most = 50;
  std::optional<std::int64_t> before = std::nullopt;
};

}  // namespace repwright::domain
