#include "peer/twin.hpp"

#include <unistd.h>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <stdexcept>

#include "rehearsal/luck.hpp"
#include "support/source_dir.hpp"

namespace repwright::test {

namespace {

using nlohmann::json;
using rehearsal::OpKind;

json effort_json(const body::Effort& effort) {
  return {{"group", body::index_of(effort.group)},
          {"theta", effort.theta},
          {"drain", effort.drain},
          {"fast_share", effort.fast_share},
          {"weight", effort.weight},
          {"brisk", effort.brisk},
          {"sustained", effort.sustained},
          {"cost", effort.cost},
          {"mode", effort.mode},
          {"best", effort.best}};
}

json constants_json(const body::Constants& c) {
  return {{"fast_time", c.fast_time},
          {"slow_time", c.slow_time},
          {"recovery_drag", c.recovery_drag},
          {"fade", c.fade},
          {"breathless", c.breathless},
          {"reserve_kept", c.reserve_kept},
          {"reserve_recovery", c.reserve_recovery},
          {"shortest_spread", c.shortest_spread},
          {"standing_rate", c.standing_rate},
          {"other_group_recovery", c.other_group_recovery},
          {"keep_share", c.keep_share},
          {"keep_min", c.keep_min},
          {"finish_reps", c.finish_reps},
          {"shortest_break", c.shortest_break},
          {"reaction", c.reaction},
          {"durability_from", c.durability_from},
          {"durability", c.durability}};
}

json person_json(const Stage& stage, std::size_t person) {
  const body::Body& body = stage.cast.median[person];
  const body::State state = body::fresh(body, 1, stage.constants);
  const rehearsal::Script& script = stage.plan.pieces[0].scripts[person];
  json lines = json::array();
  for (std::size_t line = 0; line < script.tasks.size(); ++line) {
    const rehearsal::Task& task = script.tasks[line];
    lines.push_back({{"amount", script.ops[line].amount},
                     {"place", task.place},
                     {"effort", effort_json(body::effort_of(task.effort, body, stage.constants))}});
  }
  return {{"recovery", body.recovery},
          {"style_share", body.style_share},
          {"critical_rate", state.critical_rate},
          {"reserve_full", state.reserve_full},
          {"target_s", twin_target_s},
          {"late_s", stage.plan.late[person]},
          {"transition_s", body.transition},
          {"rounds", twin_rounds},
          {"lines", lines}};
}

}  // namespace

Stage twin_stage() {
  Stage stage = mixed_class({});
  stage.constants.breathless = .5;
  stage.timetable.pieces[0] = {};
  stage.timetable.boxes[0].planned.reset();
  stage.plan.late[4] = 33;
  for (rehearsal::Script& script : stage.plan.pieces[0].scripts) {
    // The lines of one round, without the loop and its bell.
    std::vector<rehearsal::Op> round;
    for (const rehearsal::Op& op : script.ops)
      if (op.kind == OpKind::Work) round.push_back(op);
    script.ops.clear();
    for (int r = 0; r < twin_rounds; ++r) {
      for (rehearsal::Op op : round) {
        // The push-ups and pull-ups of a long round: everybody breaks them.
        if (op.task < 2) op.amount *= 2;
        script.ops.push_back(op);
      }
    }
    for (rehearsal::Task& task : script.tasks) task.effort.weight[body::index_of(body::Group::Core)] = 0.3;
  }
  return stage;
}

rehearsal::RunSetting twin_setting(const Stage& stage, std::optional<std::uint64_t> run) {
  rehearsal::RunSetting setting = rehearsal::even_day(stage.cast, stage.timetable);
  setting.targets.assign(1, std::vector<double>(stage.cast.ids.size(), twin_target_s));
  if (!run) return setting;
  for (std::size_t p = 0; p < stage.cast.ids.size(); ++p)
    setting.luck[p].emplace(base::Seed{9}, *run, p, base::Purpose::Step);
  return setting;
}

json twin_question(const Stage& stage, double spread, int runs) {
  json people = json::array();
  for (std::size_t p = 0; p < stage.cast.ids.size(); ++p) people.push_back(person_json(stage, p));
  json places = json::array();
  for (const rehearsal::FloorPlace& place : stage.plan.places) places.push_back(place.count);
  return {{"constants", constants_json(stage.constants)},
          {"places", places},
          {"people", people},
          {"spread", spread},
          {"reaction", spread > 0 ? rehearsal::latest_reaction : 0.0},
          {"runs", runs}};
}

bool has_simpy() {
  return std::system("/usr/bin/python3 -c 'import simpy' 2>/dev/null") == 0;
}

json ask_twin(const json& question) {
  const auto name = "class_twin_" + std::to_string(::getpid());
  const auto in = std::filesystem::temp_directory_path() / (name + "_in.json");
  const auto out = std::filesystem::temp_directory_path() / (name + "_out.json");
  std::ofstream(in) << question;
  const std::string command = "/usr/bin/python3 -B " +
                              (test::source_dir() / "tests/peer/class_twin.py <").string() + in.string() +
                              " >" + out.string();
  const int status = std::system(command.c_str());
  std::ifstream stream(out);
  json answer = status == 0 ? json::parse(stream) : json();
  std::filesystem::remove(in);
  std::filesystem::remove(out);
  if (status != 0) throw std::runtime_error("the twin failed");
  return answer;
}

}  // namespace repwright::test
