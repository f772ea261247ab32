#pragma once

#include <nlohmann/json.hpp>
#include <optional>

#include "rehearsal/floor.hpp"
#include "support/plans.hpp"

/// One class for two programs: the floor, and tests/peer/class_twin.py for SimPy 3 (Debian: python3-simpy3).
namespace repwright::test {

inline constexpr int twin_rounds = 8;
inline constexpr double twin_target_s = 900;

/// 24 people, 8 bars, eight rounds for time of pull-ups, push-ups, squats and sit-ups; one comes late.
Stage twin_stage();
/// The run of middle bodies; with luck of single lines and reactions if `run` is given.
rehearsal::RunSetting twin_setting(const Stage& stage, std::optional<std::uint64_t> run);
/// The same class as a question to the twin.
nlohmann::json twin_question(const Stage& stage, double spread, int runs);
/// Whether the twin can be asked at all.
bool has_simpy();
/// What the twin answers; throws if it fails.
nlohmann::json ask_twin(const nlohmann::json& question);

}  // namespace repwright::test
