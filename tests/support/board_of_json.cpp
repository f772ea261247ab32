#include "support/board_of_json.hpp"

#include <stdexcept>

#include "support/files.hpp"

namespace repwright::test {
namespace {

using nlohmann::json;
using namespace domain;

/// The place of a word in a list in the order of an enumeration.
template <class Enum>
Enum named(const std::vector<std::string>& names, const json& word) {
  for (std::size_t i = 0; i < names.size(); ++i)
    if (names[i] == word.get<std::string>()) return static_cast<Enum>(i);
  throw std::invalid_argument("the vocabulary has no " + word.dump());
}

BlockKind kind_of(const json& word) {
  return named<BlockKind>(
      {"for_time", "amrap",    "every", "intervals",  "sets",         "superset",   "circuit", "ladder",
       "partner",  "relay",    "build", "accumulate", "for_distance", "max_effort", "window",  "rest",
       "note",     "optional", "once",  "rounds",     "partition",    "part"},
      word);
}
Score score_of(const json& word) {
  return named<Score>({"none", "time", "times", "rounds+reps", "rung+reps", "reps", "reps-sum", "kcal",
                       "kcal-sum", "distance", "distance-sum", "max-time", "min-time", "min-interval",
                       "max-interval", "load", "place", "points", "last-full-minute"},
                      word);
}
Unit unit_of(const json& word) {
  return named<Unit>({"reps", "m", "kcal", "s"}, word);
}

base::Duration seconds(const json& value) {
  return base::Duration::from_si(value.get<double>());
}
base::Mass kilograms(const json& value) {
  return base::Mass::from_si(value.get<double>());
}

Range range_of(const json& value) {
  if (value.is_number()) return {value.get<double>(), value.get<double>()};
  return {value.at("min").get<double>(), value.at("max").get<double>()};
}

SetAmount set_amount_of(const json& value) {
  if (value.is_number()) return value.get<double>();
  const auto word = value.get<std::string>();
  if (word == "max") return Max{};
  if (word.starts_with("max-")) return Max{std::stoi(word.substr(4))};
  return AtLeast{std::stod(word)};
}

struct Reader {
  std::vector<std::string> levels;
  int* steps;
  int* blocks;

  template <class Value>
  std::vector<Value> by_level(const json& object, Value (*read)(const json&)) const {
    std::vector<Value> values;
    for (const std::string& level : levels) values.push_back(read(object.at(level)));
    return values;
  }

  Amount amount(const json& value) const {
    if (value.is_null()) return WhileWorking{};
    if (value.is_array()) {
      PerSet sets;
      for (const json& each : value) sets.amounts.push_back(set_amount_of(each));
      return sets;
    }
    if (value.is_object()) {
      if (value.contains("min")) return range_of(value);
      if (value.contains("start")) return Climb{value["start"].get<double>(), value["step"].get<double>()};
      if (value.contains("pair"))
        return Tiers{value["pair"][0].get<double>(), value["pair"][1].get<double>()};
      return PerLevel{by_level<double>(value, [](const json& each) { return each.get<double>(); })};
    }
    return std::visit([](const auto& one) { return Amount(one); }, set_amount_of(value));
  }

  Loads loads(const json& value) const {
    if (value.is_object()) return {by_level<base::Mass>(value, kilograms), true};
    Loads loads;
    for (const json& each : value) loads.masses.push_back(kilograms(each));
    return loads;
  }

  static ScaleOption option(const json& value) {
    if (value.is_string()) return {{value.get<std::string>()}, 1};
    return {{value.at("move").get<std::string>()}, value.at("factor").get<double>()};
  }
  Scale scale(const json& value) const {
    if (value.is_object()) return {by_level<ScaleOption>(value, option), true};
    Scale scale;
    for (const json& each : value) scale.options.push_back(option(each));
    return scale;
  }

  static Tempo tempo(const json& value) {
    Tempo tempo;
    for (std::size_t i = 0; i < 4; ++i)
      if (value[i].is_number()) tempo[i] = value[i].get<int>();
    return tempo;
  }

  static void manner(const json& from, Item& to) {
    if (from.contains("effort")) to.effort = range_of(from["effort"]);
    if (from.contains("tempo")) to.tempo = tempo(from["tempo"]);
    to.pace = from.value("pace", "");
    to.each_side = from.value("each_side", false);
    to.personal_version = from.contains("version");
    if (from.contains("share")) to.share = named<Share>({"total", "sync", "each"}, from["share"]);
    if (from.contains("mode")) to.mode = named<PartnerMode>({"one-works", "free"}, from["mode"]);
    to.note = from.value("note", "");
    if (from.contains("second_station")) to.second_station = MovementId{from["second_station"]};
    if (!from.contains("height_cm")) return;
    const json& heights = from["height_cm"];
    for (const json& each : heights.is_array() ? heights : json::array({heights}))
      to.heights.push_back(base::Length::from_si(each.get<double>() / 100));
  }

  void weight(const json& from, Item& to) const {
    if (from.contains("load_kg")) to.loads = loads(from["load_kg"]);
    to.implements = from.value("implements", 1);
    if (from.contains("load_pct")) {
      LoadShare share;
      share.of = named<ShareOf>({"one-rep-best", "today-best"}, from["load_of"]);
      const json& percent = from["load_pct"];
      for (const json& each : percent.is_array() ? percent : json::array({percent}))
        share.percent.push_back(each.get<double>());
      to.load_share = share;
    }
    if (!from.contains("load_rel")) return;
    to.load_step = LoadStep{};
    if (from["load_rel"].is_object()) to.load_step->plus = kilograms(from["load_rel"]["plus_kg"]);
  }

  static void movement(const json& from, std::optional<MovementId>& id, std::string& words) {
    if (!from.at("move").is_null()) id = MovementId{from["move"].get<std::string>()};
    words = from.value("free_text", "");
  }

  Item item(const json& from) const {
    Item to;
    to.step = StepId{(*steps)++};
    movement(from, to.movement, to.free_text);
    to.amount = amount(from.at("qty"));
    to.unit = unit_of(from.at("unit"));
    weight(from, to);
    manner(from, to);
    if (from.contains("scale")) to.scale = scale(from["scale"]);
    if (from.contains("gate")) {
      to.gate = Gate{};
      to.gate->unit = unit_of(from["gate"].at("unit"));
      movement(from["gate"], to.gate->movement, to.gate->free_text);
    }
    return to;
  }
  std::vector<Item> items(const json& from) const {
    std::vector<Item> list;
    for (const json& each : from) list.push_back(item(each));
    return list;
  }

  static void count(const json& from, const char* name, std::optional<int>& to) {
    if (from.contains(name)) to = from[name].get<int>();
  }
  static void time(const json& from, const char* name, std::optional<base::Duration>& to) {
    if (from.contains(name)) to = seconds(from[name]);
  }

  static RestRule rest(const json& from) {
    RestRule rule;
    rule.kind = named<RestKind>({"fixed", "ratio", "free"}, from.at("kind"));
    if (from.contains("seconds")) rule.length = seconds(from["seconds"]);
    rule.work = from.value("work", 1.0);
    rule.rest = from.value("rest", 1.0);
    rule.between_only = from.value("between_only", false);
    return rule;
  }

  static Intent::Window window(const json& from) {
    Intent::Window window;
    window.min = from.at("min").get<double>();
    if (from.contains("max")) window.max = from["max"].get<double>();
    return window;
  }
  static Intent intent(const json& from) {
    Intent intent;
    if (from.contains("time_s")) intent.time = window(from["time_s"]);
    if (from.contains("rounds")) intent.rounds = window(from["rounds"]);
    if (from.contains("effort")) intent.effort = range_of(from["effort"]);
    if (from.contains("spare_s")) intent.spare = seconds(from["spare_s"]);
    return intent;
  }

  static void counts(const json& from, Block& to) {
    if (from.contains("team_size")) {
      const json& sizes = from["team_size"];
      for (const json& each : sizes.is_array() ? sizes : json::array({sizes}))
        to.team_sizes.push_back(each.get<int>());
    }
    count(from, "rounds", to.rounds);
    count(from, "sets", to.sets);
    count(from, "laps", to.laps);
    count(from, "intervals", to.intervals);
    count(from, "turns_each", to.turns_each);
    count(from, "lanes", to.lanes);
    count(from, "heats", to.heats);
    time(from, "duration_s", to.duration);
    time(from, "cap_s", to.cap);
    time(from, "work_s", to.work);
    time(from, "every_s", to.every);
    time(from, "rest_s", to.rest);
    time(from, "lap_rest_s", to.lap_rest);
    time(from, "from_s", to.from);
    time(from, "to_s", to.to);
  }

  void rules(const json& from, Block& to) const {
    if (from.contains("rest")) to.rest_rule = rest(from["rest"]);
    if (from.contains("score")) to.score = score_of(from["score"]);
    to.carry_over = from.value("carry_over", false);
    to.keep_place = from.value("keep_place", false);
    to.quiet = from.value("quiet", false);
    if (from.contains("start"))
      to.start = Stagger{seconds(from["start"]["every_s"]), from["start"]["people"]};
    if (from.contains("interrupt"))
      to.interrupt = Interrupt{.every = seconds(from["interrupt"]["every_s"]),
                               .first = seconds(from["interrupt"]["first_s"]),
                               .items = items(from["interrupt"]["items"])};
    if (from.contains("work_mode"))
      to.work_mode =
          named<WorkMode>({"alternate-by-piece", "alternate-by-round", "swap-parts"}, from["work_mode"]);
    for (const json& each : from.value("level_rules", json::array()))
      to.level_rules.push_back({each["level"], each["rounds"]});
    if (from.contains("intent")) to.intent = intent(from["intent"]);
    if (from.contains("vest_kg")) to.vest = kilograms(from["vest_kg"]);
    if (from.contains("odd_start")) to.odd_start = MovementId{from["odd_start"]};
    if (from.contains("odd_team"))
      to.odd_team = OddTeam{from["odd_team"]["size"], from["odd_team"]["factor"]};
  }

  Block block(const json& from) {
    Block to;
    to.kind = kind_of(from.at("kind"));
    to.id = BlockId{(*blocks)++};
    to.title = from.value("title", "");
    to.text = from.value("text", "");
    if (from.contains("levels")) to.levels = levels = from["levels"].get<std::vector<std::string>>();
    counts(from, to);
    to.items = items(from.value("items", json::array()));
    for (const char* holder : {"slots", "stations"})
      for (const json& slot : from.value(holder, json::array())) to.slots.push_back(items(slot));
    for (const json& child : from.value("children", json::array()))
      to.children.push_back(Reader{levels, steps, blocks}.block(child));
    rules(from, to);
    if (from.contains("penalty")) to.penalty = items(from["penalty"]["items"]);
    to.after_fail = items(from.value("after_fail", json::array()));
    return to;
  }
};

}  // namespace

domain::Board board_of_json(const json& blocks, std::string title) {
  Board board;
  board.title = std::move(title);
  int steps = 0;
  int count = 0;
  for (const json& each : blocks) board.blocks.push_back(Reader{{}, &steps, &count}.block(each));
  return board;
}

const std::vector<Example>& examples() {
  static const std::vector<Example> all = [] {
    std::vector<Example> list;
    for (const char* file : {"whiteboards.json", "reading-examples.json"}) {
      const json document = json::parse(test_data(file));
      for (const json& each : document["boards"]) list.push_back({each["id"], each["text"], each["expect"]});
    }
    return list;
  }();
  return all;
}

}  // namespace repwright::test
