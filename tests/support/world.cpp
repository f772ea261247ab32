#include "support/world.hpp"

#include <fmt/format.h>
#include <cmath>
#include <limits>
#include <map>
#include <sstream>
#include <stdexcept>

#include "rehearsal/floor.hpp"
#include "rehearsal/luck.hpp"
#include "support/plans.hpp"

namespace repwright::test {

namespace {

using rehearsal::Op;
using rehearsal::OpKind;
using Words = std::vector<std::string>;

[[noreturn]] void wrong(const std::string& what) {
  throw std::invalid_argument("the world says `" + what + "`");
}

Words words_of(const std::string& text) {
  std::istringstream in(text);
  Words words;
  for (std::string word; in >> word;) words.push_back(word);
  return words;
}

double clock_of(const std::string& text) {
  const auto colon = text.find(':');
  if (colon == std::string::npos) return std::stod(text);
  return 60 * std::stod(text.substr(0, colon)) + std::stod(text.substr(colon + 1));
}

struct Expectation {
  Words words;
  std::string text;
};

struct World {
  rehearsal::FloorPlan plan;
  timetable::Timetable timetable;
  std::map<std::string, int> people, places;
  std::vector<std::string> names;
  rehearsal::ScriptedPiece piece;
  rehearsal::Script script;
  std::map<std::string, int> labels;
  std::vector<std::pair<std::size_t, std::string>> jumps;  // op, label
  double stagger = 0;
  double door = 0;
  std::vector<Expectation> expectations;
  std::string plan_text;
};

int person_of(const World& world, const std::string& name) {
  const auto at = world.people.find(name);
  if (at == world.people.end()) wrong(name);
  return at->second;
}

int place_of(const World& world, const std::string& name) {
  if (name.empty() || name == "spot") return -1;
  const auto place = world.places.find(name);
  if (place == world.places.end()) wrong(name);
  return place->second;
}

/// How a line of work is done: `reps bars sets 5 else rings`.
struct Manner {
  std::string way, place, instead;
  int sets = 0;
};

Manner manner_of(const Words& words, std::size_t at) {
  Manner manner{.way = words.at(at++), .place = {}, .instead = {}};
  while (at < words.size()) {
    if (words[at] == "sets")
      manner.sets = std::stoi(words.at(++at));
    else if (words[at] == "else")
      manner.instead = words.at(++at);
    else
      manner.place = words[at];
    ++at;
  }
  return manner;
}

rehearsal::Task plain_task(const std::string& way) {
  rehearsal::Task task;
  task.movement = {way};
  if (way == "s") {
    task.effort = hold_spec();
    task.unit = domain::Unit::Seconds;
  } else if (way == "reps") {
    task.effort = reps_spec(body::Group::Push, 2, 0.001, 1e6);
    task.effort.sustained = 2;
  } else if (way == "pulls") {
    task.effort = reps_spec(body::Group::Pull, 2, 0.001, 10.0 / 7);
    task.effort.sustained = 2;
  } else if (way == "never") {
    task.effort = reps_spec(body::Group::Pull, 2, 0.001, 0.05);
  } else if (way == "m" || way == "shuttle") {
    task.effort = run_spec();
    task.effort.mode = 1;
    task.unit = domain::Unit::Metres;
    task.outdoors = way == "m";
    task.turn_cost = task.outdoors ? 0 : 0.1;
  } else {
    wrong(way);
  }
  return task;
}

/// The task of a manner of working; each is kept once.
int task_of(World& world, const Manner& manner) {
  rehearsal::Task task = plain_task(manner.way);
  task.place = place_of(world, manner.place);
  task.planned_set = manner.sets;
  task.door = task.outdoors ? world.door : 0;
  if (!manner.instead.empty())
    task.alternative = task_of(world, {.way = manner.way, .place = manner.instead, .instead = {}});
  auto& tasks = world.script.tasks;
  for (std::size_t t = 0; t < tasks.size(); ++t)
    if (tasks[t].movement == task.movement && tasks[t].place == task.place &&
        tasks[t].planned_set == task.planned_set && tasks[t].alternative == task.alternative)
      return static_cast<int>(t);
  task.step = {static_cast<int>(tasks.size())};
  tasks.push_back(task);
  return static_cast<int>(tasks.size()) - 1;
}

Op rest_op(const Words& words) {
  if (words.at(1) == "ready") return {.kind = OpKind::RestReady};
  if (words.at(1) == "x") return {.kind = OpKind::RestRatio, .amount = std::stod(words.at(2))};
  return {.kind = OpKind::Rest, .amount = clock_of(words.at(1))};
}

/// One step of a plan.
void add_step(World& world, const std::string& text) {
  const Words words = words_of(text);
  if (words.empty()) return;
  const std::string& first = words[0];
  auto& ops = world.script.ops;
  static const std::map<std::string, OpKind> plain{{"resume", OpKind::Resume},  {"mark", OpKind::Mark},
                                                   {"lap", OpKind::Lap},        {"round", OpKind::RoundDone},
                                                   {"take", OpKind::TakeBaton}, {"pass", OpKind::PassBaton},
                                                   {"home", OpKind::End},       {"no", OpKind::NoDeadline}};
  if (first.back() == ':') {
    world.labels[first.substr(0, first.size() - 1)] = static_cast<int>(ops.size());
  } else if (plain.contains(first)) {
    ops.push_back({.kind = plain.at(first)});
  } else if (first == "rest") {
    ops.push_back(rest_op(words));
  } else if (first == "until") {
    ops.push_back({.kind = OpKind::WaitUntil, .amount = clock_of(words.at(1))});
  } else if (first == "by") {
    world.jumps.emplace_back(ops.size(), words.at(2));
    ops.push_back({.kind = OpKind::Deadline, .amount = clock_of(words.at(1))});
  } else if (first == "goto") {
    world.jumps.emplace_back(ops.size(), words.at(1));
    ops.push_back({.kind = OpKind::Jump});
  } else if (first == "meet") {
    ops.push_back({.kind = OpKind::Meet, .pool = words.size() > 1 ? -2 : -1});
  } else if (first == "pool") {
    const int task = task_of(world, manner_of(words, 2));
    ops.push_back({.kind = OpKind::Pool, .task = task, .pool = std::stoi(words.at(1)) - 1});
  } else if (first.starts_with("best")) {
    const double short_of = first.size() > 5 ? std::stod(first.substr(5)) : 0;
    ops.push_back({.kind = OpKind::MaxSet, .amount = short_of, .task = task_of(world, manner_of(words, 1))});
  } else {
    const int task = task_of(world, manner_of(words, 1));
    const double amount = first == "max" ? std::numeric_limits<double>::infinity() : std::stod(first);
    ops.push_back({.kind = OpKind::Work, .amount = amount, .task = task});
  }
}

void add_steps(World& world, const std::string& text) {
  std::string step;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '(') {
      int depth = 0;
      std::size_t end = i;
      do {
        depth += text[end] == '(' ? 1 : text[end] == ')' ? -1 : 0;
      } while (depth > 0 && ++end < text.size());
      for (int times = std::stoi(step); times > 0; --times) add_steps(world, text.substr(i + 1, end - i - 1));
      step.clear();
      i = end;
    } else if (text[i] == ',') {
      add_step(world, step);
      step.clear();
    } else {
      step += text[i];
    }
  }
  add_step(world, step);
}

void add_people(World& world, const Words& words) {
  for (std::size_t i = 1; i < words.size(); ++i) {
    const auto at = words[i].find('@');
    const std::string name = words[i].substr(0, at);
    world.people[name] = static_cast<int>(world.names.size());
    world.names.push_back(name);
    world.plan.late.push_back(at == std::string::npos ? 0 : clock_of(words[i].substr(at + 1)));
  }
}

void add_line(World& world, const std::string& line) {
  const Words words = words_of(line);
  if (words.empty()) return;
  const std::string& key = words[0];
  if (key == "floor") {
    for (std::size_t i = 1; i < words.size(); ++i) {
      const auto at = words[i].find('=');
      world.places[words[i].substr(0, at)] = static_cast<int>(world.plan.places.size());
      world.plan.places.push_back({{words[i].substr(0, at)}, std::stoi(words[i].substr(at + 1))});
    }
  } else if (key == "house") {
    world.piece.keep_place_while_resting = false;
  } else if (key == "class") {
    add_people(world, words);
  } else if (key == "team") {
    rehearsal::Team& team = world.piece.teams.emplace_back();
    for (std::size_t i = 1; i < words.size(); ++i) team.people.push_back(person_of(world, words[i]));
  } else if (key == "pool") {
    for (rehearsal::Team& team : world.piece.teams) {
      team.pools.push_back(std::stod(words.at(1)));
      team.one_works.push_back(words.size() > 2);
    }
  } else if (key == "heats") {
    for (std::size_t i = 1; i < words.size(); ++i) world.piece.heats += words[i] == "/" ? 1 : 0;
    world.expectations.push_back({words, ""});
  } else if (key == "length") {
    world.timetable.pieces[0].length = base::Duration::from_si(clock_of(words.at(1)));
  } else if (key == "stagger") {
    world.stagger = clock_of(words.at(1));
  } else if (key == "change") {
    world.piece.heat_change = clock_of(words.at(1));
  } else if (key == "door") {
    world.door = clock_of(words.at(1));
  } else if (key == "hand") {
    for (rehearsal::Team& team : world.piece.teams) team.hand_over = clock_of(words.at(1));
  } else if (key == "duty" && words.at(1) == "best") {
    const Op op{.kind = OpKind::MaxSet, .task = task_of(world, {.way = "pulls", .place = {}, .instead = {}})};
    world.script.duty = rehearsal::Duty{clock_of(words.at(4)), clock_of(words.at(6)), {op}};
  } else if (key == "penalty" || key == "duty") {
    const Op op{.kind = OpKind::Work,
                .amount = clock_of(words.at(1)),
                .task = task_of(world, {.way = "s", .place = {}, .instead = {}})};
    if (key == "penalty")
      world.script.penalty.push_back(op);
    else
      world.script.duty = rehearsal::Duty{clock_of(words.at(3)), clock_of(words.at(5)), {op}};
  } else if (key == "plan") {
    world.plan_text += line.substr(line.find("plan") + 4) + ",";
  } else if (key == "expect") {
    world.expectations.push_back({{words.begin() + 1, words.end()}, line});
  } else {
    wrong(line);
  }
}

World read(std::string_view text) {
  World world;
  world.timetable.pieces.emplace_back();
  world.timetable.boxes.emplace_back().piece = 0;
  std::istringstream in{std::string(text)};
  for (std::string line; std::getline(in, line);) add_line(world, line);
  add_steps(world, world.plan_text);
  for (const auto& [op, label] : world.jumps) {
    if (!world.labels.contains(label)) wrong(label);
    world.script.ops[op].target = world.labels.at(label);
  }
  world.piece.scripts.assign(world.names.size(), world.script);
  for (std::size_t p = 0; p < world.names.size(); ++p)
    world.piece.scripts[p].start = world.stagger * static_cast<double>(p);
  for (std::size_t t = 0; t < world.piece.teams.size(); ++t)
    for (const int person : world.piece.teams[t].people)
      world.piece.scripts[static_cast<std::size_t>(person)].team = static_cast<int>(t);
  for (const Expectation& heats : world.expectations) {
    if (!heats.text.empty()) continue;
    int heat = 0;
    for (std::size_t i = 1; i < heats.words.size(); ++i) {
      if (heats.words[i] == "/")
        ++heat;
      else
        world.piece.scripts[static_cast<std::size_t>(person_of(world, heats.words[i]))].heat = heat;
    }
  }
  std::erase_if(world.expectations, [](const Expectation& e) { return e.text.empty(); });
  world.plan.pieces.push_back(world.piece);
  return world;
}

/// Remembers starts of lines, the longest queues, and whether a wait ended before it began.
class Witness final : public rehearsal::Recorder {
 public:
  explicit Witness(const World& world) : starts(world.names.size()), longest(world.plan.places.size(), 0) {}
  void worked(rehearsal::Part part, const rehearsal::Stint& stint, const rehearsal::Player& player) override {
    starts[static_cast<std::size_t>(part.person)].push_back(rehearsal::seconds_of(stint.start - player.zero));
  }
  void queued(int, int, std::int64_t from, std::int64_t to) override { backwards = backwards || to < from; }
  void queue_length(int place, int waiting) override {
    longest[static_cast<std::size_t>(place)] = std::max(longest[static_cast<std::size_t>(place)], waiting);
  }
  void lap(rehearsal::Part, int, std::int64_t) override {}

  std::vector<std::vector<double>> starts;
  std::vector<int> longest;
  bool backwards = false;
};

struct Checked {
  double expected = 0, found = 0;
  double within = 0.0005;
};

Checked check_person(const Words& words, const rehearsal::PieceResult& result,
                     const std::vector<double>& starts) {
  const std::string& what = words.at(1);
  const auto number = [&] { return clock_of(words.at(2)); };
  if (what == "home") return {number(), rehearsal::seconds_of(result.home - result.zero)};
  if (what == "waits") return {number(), rehearsal::seconds_of(result.queued)};
  if (what == "reps") return {number(), result.counts.reps};
  if (what == "metres")
    return {number(), result.counts.metres, 0.005};  // half a millisecond of grace at the bell
  if (what == "rounds") return {number(), static_cast<double>(result.rounds)};
  if (what == "laps") return {number(), static_cast<double>(result.laps)};
  if (what == "full") return {clock_of(words.at(3)), static_cast<double>(result.full_laps)};
  if (what == "capped") return {1, result.capped ? 1.0 : 0.0};
  if (what == "absent") return {0, result.took_part ? 1.0 : 0.0};
  if (what == "starts") return {clock_of(words.at(4)), starts.at(std::stoul(words.at(2)))};
  wrong(what);
}

/// 4 m/s, ten pulls, nothing that drifts.
body::Body plain_body() {
  body::Body body;
  body.transition = 0;
  body.critical_speed = 4;
  body.reserve_distance = 1e-3;
  body.best_set = {28, 7, 85, 45, 40};
  body.cadence = body.recovery = 1;
  return body;
}

body::Constants plain_constants() {
  body::Constants constants;
  constants.fade = constants.leg_drag = constants.durability = 0;
  constants.shortest_break = 3;
  return constants;
}

}  // namespace

std::vector<std::string> disappointments(std::string_view text) {
  const World world = read(text);
  rehearsal::Cast cast;
  const body::Body body = plain_body();
  for (const std::string& name : world.names) {
    cast.ids.push_back({name});
    cast.median.push_back(body);
  }
  const body::Constants constants = plain_constants();
  rehearsal::Floor floor(world.plan, world.timetable, constants, rehearsal::Crowd::Shared);
  rehearsal::RunSetting setting = rehearsal::even_day(cast, world.timetable);
  setting.targets.assign(1, std::vector<double>(world.names.size(), 1e6));
  Witness witness(world);
  floor.play(setting, &witness);
  std::vector<std::string> missed;
  if (witness.backwards) missed.emplace_back("somebody's wait ended before it began");
  for (const Expectation& expectation : world.expectations) {
    const Words& words = expectation.words;
    Checked checked;
    if (words.at(0) == "class") {
      checked = {clock_of(words.at(2)), rehearsal::seconds_of(floor.boxes().back().end)};
    } else if (words.at(0) == "queue") {
      checked = {
          std::stod(words.at(2)),
          static_cast<double>(witness.longest.at(static_cast<std::size_t>(place_of(world, words.at(1)))))};
    } else {
      const auto person = static_cast<std::size_t>(person_of(world, words.at(0)));
      checked = check_person(words, floor.results()[0][person], witness.starts[person]);
    }
    if (std::abs(checked.expected - checked.found) > checked.within)
      missed.push_back(fmt::format("{}: it is {}", expectation.text, checked.found));
  }
  return missed;
}

}  // namespace repwright::test
