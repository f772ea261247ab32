#include "api/json_words.hpp"

namespace repwright::api {

using domain::BlockKind;
using domain::Score;

std::string_view json_word(BlockKind kind) {
  switch (kind) {
    case BlockKind::ForTime:
      return "for_time";
    case BlockKind::Amrap:
      return "amrap";
    case BlockKind::Every:
      return "every";
    case BlockKind::Intervals:
      return "intervals";
    case BlockKind::Sets:
      return "sets";
    case BlockKind::Superset:
      return "superset";
    case BlockKind::Circuit:
      return "circuit";
    case BlockKind::Ladder:
      return "ladder";
    case BlockKind::Partner:
      return "partner";
    case BlockKind::Relay:
      return "relay";
    case BlockKind::Build:
      return "build";
    case BlockKind::Accumulate:
      return "accumulate";
    case BlockKind::ForDistance:
      return "for_distance";
    case BlockKind::MaxEffort:
      return "max_effort";
    case BlockKind::Window:
      return "window";
    case BlockKind::Rest:
      return "rest";
    case BlockKind::Note:
      return "note";
    case BlockKind::Optional:
      return "optional";
    case BlockKind::Once:
      return "once";
    case BlockKind::Rounds:
      return "rounds";
    case BlockKind::Partition:
      return "partition";
    case BlockKind::Part:
      return "part";
  }
  return {};
}

std::string_view json_word(Score score) {
  switch (score) {
    case Score::None:
      return "none";
    case Score::Time:
      return "time";
    case Score::Times:
      return "times";
    case Score::RoundsReps:
      return "rounds+reps";
    case Score::RungReps:
      return "rung+reps";
    case Score::Reps:
      return "reps";
    case Score::RepsSum:
      return "reps-sum";
    case Score::Kcal:
      return "kcal";
    case Score::KcalSum:
      return "kcal-sum";
    case Score::Distance:
      return "distance";
    case Score::DistanceSum:
      return "distance-sum";
    case Score::MaxTime:
      return "max-time";
    case Score::MinTime:
      return "min-time";
    case Score::MinInterval:
      return "min-interval";
    case Score::MaxInterval:
      return "max-interval";
    case Score::Load:
      return "load";
    case Score::Place:
      return "place";
    case Score::Points:
      return "points";
    case Score::LastFullMinute:
      return "last-full-minute";
  }
  return {};
}

std::string_view json_word(domain::Unit unit) {
  switch (unit) {
    case domain::Unit::Reps:
      return "reps";
    case domain::Unit::Metres:
      return "m";
    case domain::Unit::Kilocalories:
      return "kcal";
    case domain::Unit::Seconds:
      return "s";
  }
  return {};
}

std::string_view json_word(domain::Share share) {
  switch (share) {
    case domain::Share::Total:
      return "total";
    case domain::Share::Sync:
      return "sync";
    case domain::Share::Each:
      return "each";
  }
  return {};
}

std::string_view json_word(domain::PartnerMode mode) {
  return mode == domain::PartnerMode::OneWorks ? "one-works" : "free";
}

std::string_view json_word(domain::WorkMode mode) {
  switch (mode) {
    case domain::WorkMode::AlternateByPiece:
      return "alternate-by-piece";
    case domain::WorkMode::AlternateByRound:
      return "alternate-by-round";
    case domain::WorkMode::SwapParts:
      return "swap-parts";
  }
  return {};
}

std::string_view json_word(domain::Severity severity) {
  switch (severity) {
    case domain::Severity::Note:
      return "note";
    case domain::Severity::Warning:
      return "warning";
    case domain::Severity::Error:
      return "error";
  }
  return {};
}

}  // namespace repwright::api
