#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>

#include "support/files.hpp"
#include "support/front_desk.hpp"

/// One answer of each address as a file, for the page's tests to decode: tests/golden/api/NAME.json.
/// UPDATE_GOLDEN=1 writes them anew.
namespace repwright {
namespace {

using api::Method;
using app::Role;
using nlohmann::ordered_json;

struct Example {
  const char* name;
  Method method;
  const char* path;
  const char* body;
  std::optional<Role> role;
};

const std::vector<Example> examples{
    {"me-nobody", Method::Get, "/api/me", "", std::nullopt},
    {"me-coach", Method::Get, "/api/me", "", Role::Coach},
    {"me-relief", Method::Get, "/api/me", "", Role::Relief},
    {"me-person", Method::Get, "/api/me", "", Role::Person},
    {"me-screen", Method::Get, "/api/me", "", Role::Screen},
    {"owner", Method::Post, "/api/owner",
     R"({"token": "token-1", "name": "Mira", "password": "ten letters"})", std::nullopt},
    {"sign-in-refused", Method::Post, "/api/sign-in", R"({"name": "Jo", "password": "ten letters"})",
     std::nullopt},
    {"sign-out", Method::Post, "/api/sign-out", "{}", Role::Coach},
    {"accounts", Method::Get, "/api/accounts", "", Role::Owner},
    {"account-person", Method::Post, "/api/accounts",
     R"({"name": "p7", "role": "person", "person": "a07", "pin": "4711"})", Role::Owner},
    {"account-screen", Method::Post, "/api/accounts", R"({"name": "The wall", "role": "screen"})",
     Role::Coach},
    {"account-signed-out", Method::Post, "/api/accounts/sign-out", R"({"name": "owner"})", Role::Owner},
    {"account-removed-refused", Method::Post, "/api/accounts/remove", R"({"name": "owner"})", Role::Owner},
    {"trail", Method::Get, "/api/trail", "", Role::Owner},
    {"trail-before", Method::Get, "/api/trail/2", "", Role::Owner},
    {"gym", Method::Get, "/api/gym", "", Role::Owner},
    {"boards", Method::Get, "/api/boards", "", Role::Coach},
    {"board", Method::Get, "/api/boards/sat-two-clocks", "", Role::Coach},
    {"board-saved", Method::Put, "/api/boards/thursday", R"({"text": "5 RFT\n9 pull-ups\n"})", Role::Coach},
    {"board-stale", Method::Put, "/api/boards/sat-two-clocks",
     R"({"text": "5 RFT", "version": "0123456789abcdef"})", Role::Coach},
    {"board-last", Method::Get, "/api/boards/everyday-four-rounds/last", "", Role::Coach},
    {"board-never", Method::Get, "/api/boards/sat-two-clocks/last", "", Role::Coach},
    {"classes", Method::Get, "/api/classes", "", Role::Coach},
    {"class", Method::Get, "/api/classes/wed-morning-9", "", Role::Coach},
    {"brief", Method::Get, "/api/classes/wed-morning-9/brief", "", Role::Coach},
    {"class-refused", Method::Put, "/api/classes/thursday", R"({"class": {"booked": ["nobody"]}})",
     Role::Coach},
    {"class-removed", Method::Delete, "/api/classes/wed-morning-9", R"({"version": "d3cbafb4b5694fa2"})",
     Role::Coach},
    {"class-removed-refused", Method::Delete, "/api/classes/wed-morning-9",
     R"({"version": "0123456789abcdef"})", Role::Coach},
    {"arrivals", Method::Get, "/api/classes/wed-morning-9/arrivals", "", Role::Coach},
    {"arrival-ticked", Method::Post, "/api/classes/sat-24/arrivals",
     R"({"key": "k1", "person": "a07", "state": "here", "late_s": 120})", Role::Relief},
    {"arrivals-over-refused", Method::Post, "/api/classes/sat-24/arrivals/nobody-else", R"({"key": "k1"})",
     Role::Coach},
    {"list-effect", Method::Get, "/api/classes/wed-morning-9/arrivals/effect", "", Role::Coach},
    {"walk-in", Method::Post, "/api/classes/sat-24/walk-ins", R"({"key": "ab12", "name": "Ro Invented"})",
     Role::Coach},
    {"runners", Method::Get, "/api/classes/sat-24/runners", "", Role::Relief},
    {"runs", Method::Get, "/api/classes/sat-24/runs", "", Role::Coach},
    {"runner-out", Method::Post, "/api/classes/sat-24/runners",
     R"({"key": "k1", "person": "a07", "act": "out", "ago_s": 5})", Role::Coach},
    {"score-form", Method::Get, "/api/classes/sat-24/score-form", "", Role::Coach},
    {"results", Method::Get, "/api/classes/sat-24/results", "", Role::Coach},
    {"own-today", Method::Get, "/api/people/a07/today", "", Role::Person},
    {"line-up", Method::Get, "/api/classes/tue-pairs-13/line-up", "", Role::Screen},
    {"home", Method::Get, "/api/classes/sat-24/home", "", Role::Screen},
    {"consent", Method::Get, "/api/people/a07/consent", "", Role::Person},
    {"consent-said", Method::Put, "/api/people/a07/consent", R"({"in_rankings": true})", Role::Person},
    {"emergency", Method::Get, "/api/emergency", "", Role::Person},
    {"emergency-saved", Method::Put, "/api/emergency", R"({"version": "0", "text": "Address: on the door"})",
     Role::Owner},
    {"class-scores", Method::Get, "/api/classes/sat-24/scores", "", Role::Coach},
    {"score-added", Method::Post, "/api/classes/sat-24/scores",
     R"({"person": "a07", "score": "22:10", "done_as": "ring-row", "effort": 7})", Role::Relief},
    {"score-refused", Method::Post, "/api/classes/sat-24/scores", R"({"person": "a08", "score": "22:10"})",
     Role::Person},
    {"score-corrected", Method::Put, "/api/scores/1", R"({"version": 1, "person": "a07", "score": "21:10"})",
     Role::Coach},
    {"score-stale", Method::Put, "/api/scores/1", R"({"version": 7, "person": "a07", "score": "21:10"})",
     Role::Coach},
    {"score-versions", Method::Get, "/api/scores/1/versions", "", Role::Coach},
    {"class-effort", Method::Get, "/api/classes/sat-24/effort", "", Role::Coach},
    {"effort-said", Method::Put, "/api/classes/sat-24/effort", R"({"effort": 8})", Role::Person},
    {"time", Method::Get, "/api/time", "", Role::Person},
    {"clock", Method::Get, "/api/classes/sat-24/clock", "", Role::Person},
    {"clock-started", Method::Post, "/api/classes/sat-24/clock",
     R"({"act": "start", "key": "k1", "version": 0, "cue": "2.0.0"})", Role::Relief},
    {"clock-refused", Method::Post, "/api/classes/sat-24/clock",
     R"({"act": "pause", "key": "k1", "version": 0})", Role::Coach},
    {"notes", Method::Get, "/api/notes", "", Role::Coach},
    {"note-added", Method::Post, "/api/notes", R"({"person": "a07", "text": "likes the end bar"})",
     Role::Coach},
    {"note-refused", Method::Post, "/api/notes", R"({"text": "old news", "until": "2027-05-01"})",
     Role::Coach},
    {"note-removed", Method::Delete, "/api/notes/1", "", Role::Coach},
    {"people", Method::Get, "/api/people", "", Role::Coach},
    {"people-relief", Method::Get, "/api/people", "", Role::Relief},
    {"people-refused", Method::Put, "/api/people", R"({"rows": [{"name": "Jo", "sex": "q"}]})", Role::Coach},
    {"person", Method::Get, "/api/people/a07", "", Role::Person},
    {"person-scores", Method::Get, "/api/people/a07/scores", "", Role::Person},
    {"person-refused", Method::Get, "/api/people/a08", "", Role::Person},
    {"people-preview", Method::Post, "/api/people/preview", "name,sex,run 400 m\nJo,f,1:20\n", Role::Coach},
    {"people-preview-bad", Method::Post, "/api/people/preview", "name,sex,run 400 m\nJo,q,fast\n",
     Role::Coach},
    {"hall", Method::Get, "/api/hall", "", Role::Coach},
    {"hall-refused", Method::Put, "/api/hall", R"({"hall": {"floor_m2": "wide"}})", Role::Coach},
    {"house", Method::Get, "/api/house", "", Role::Coach},
    {"house-refused", Method::Put, "/api/house", "{}", Role::Coach},
    {"read", Method::Post, "/api/read",
     R"({"text": "5 RFT (cap 18)\n300 m run\n9 pull-ups\n12 swngs 24/16\n9 zork\n"})", Role::Coach},
    {"read-refused", Method::Post, "/api/read", "{}", Role::Coach},
    {"tidy", Method::Post, "/api/tidy", R"({"text": "5 rft cap 18\n15 kbs 24/16"})", Role::Coach},
    {"rehearse", Method::Post, "/api/rehearse",
     R"({"text": "5 RFT (cap 18)\n300 m run\n9 pull-ups\n", "class": "wed-morning-9", "heads": 3, "runs": 5})",
     Role::Coach},
    {"rehearse-refused", Method::Post, "/api/rehearse", R"({"text": "12:75 AMRAP\n7 burpees\n"})",
     Role::Coach},
    {"repairs", Method::Post, "/api/repairs", R"({"board": "sat-two-clocks", "class": "sat-24", "runs": 16})",
     Role::Coach},
    {"repairs-refused", Method::Post, "/api/repairs", R"({"text": "12:75 AMRAP\n7 burpees\n"})", Role::Coach},
    {"timetable", Method::Post, "/api/timetable",
     R"({"board": "sat-two-clocks", "class": "sat-24", "runs": 8, "words_per_minute": 120})", Role::Relief},
    {"fit", Method::Post, "/api/fit", R"({"board": "sat-two-clocks", "class": "sat-24", "runs": 8})",
     Role::Coach},
    {"warmup", Method::Post, "/api/warmup",
     R"({"board": "sat-two-clocks", "class": "sat-24", "minutes": 8, "kit": ["band"]})", Role::Relief},
    {"warmup-refused", Method::Post, "/api/warmup", R"({"board": "sat-two-clocks", "kit": ["trampoline"]})",
     Role::Coach},
    {"pairs", Method::Post, "/api/pairs",
     R"({"board": "tue-pairs", "class": "tue-pairs-13", "apart": ["a01+a07"]})", Role::Coach},
    {"pairs-refused", Method::Post, "/api/pairs", R"({"board": "tue-pairs", "apart": ["a01"]})", Role::Coach},
    {"away", Method::Post, "/api/away",
     R"({"board": "sat-two-clocks", "who": "a07", "quiet": true, "room": 4, "minutes": 30})", Role::Coach},
    {"own-away", Method::Post, "/api/people/a07/away", R"({"kit": ["kettlebell"], "outside": true})",
     Role::Person},
    {"own-away-refused", Method::Post, "/api/people/a01/away", R"({"quiet": true})", Role::Person},
    {"movements", Method::Get, "/api/movements", "", Role::Coach},
    {"equipment", Method::Get, "/api/equipment", "", Role::Coach},
    {"limits", Method::Get, "/api/limits", "", Role::Coach},
};

/// The kinds of values and the names, not the numbers and words: a forecast moves with every better constant,
/// and the catalogue grows.
ordered_json shape_of(const ordered_json& value) {
  ordered_json shape = value;
  if (value.is_number()) return "a number";
  if (value.is_string()) return "a text";
  if (value.is_object())
    for (auto& [key, each] : shape.items()) each = shape_of(each);
  if (value.is_array())
    return value.empty() ? ordered_json::array() : ordered_json::array({shape_of(value[0])});
  return shape;
}

/// A board that was done once: the demo's past is played when the gym is made, so the gym here has none.
void add_scores(store::Store& store) {
  for (const char* text : {"12:57", "23:35", "cap, 3 rds + 40"}) {
    domain::ScoreEntry entry;
    entry.date = std::chrono::year{2027} / 4 / 20;
    entry.board_id = "everyday-four-rounds";
    entry.text = text;
    entry.value = domain::read_score(text);
    entry.effort = 8;
    ASSERT_TRUE(store.add_score(entry, {"Mira", {}}));
  }
}

/// A score, an effort and a note of a class that is over.
void add_lines(store::Store& store) {
  domain::ScoreEntry entry;
  entry.date = std::chrono::year{2027} / 5 / 15;
  entry.class_id = "sat-24";
  entry.board_id = "sat-two-clocks";
  entry.person = {"a07"};
  entry.text = "22:01";
  entry.value = domain::read_score(entry.text);
  entry.effort = 7;
  entry.entered_by = "Mira";
  const domain::Stamp mira{"Mira", std::chrono::sys_days{entry.date}};
  ASSERT_TRUE(store.add_score(entry, mira));
  ASSERT_TRUE(store.put_effort({"sat-24", {"a07"}, 8}, mira));
  ASSERT_TRUE(store.add_note({{"a07"}, "likes the end bar", std::chrono::year{2027} / 6 / 30}, mira));
}

/// The examples before which there is something to read or to change.
bool needs_lines(const std::string& name) {
  return name.starts_with("score-") || name.starts_with("class-scores") || name.starts_with("class-effort") ||
         name.starts_with("note") || name == "results" || name.starts_with("trail");
}

TEST(GoldenAnswers, AreWhatEachAddressAnswers) {
  const std::filesystem::path folder = test::source_dir() / "tests/golden/api";
  for (const Example& example : examples) {
    test::FrontDesk front;
    const std::string name = example.name;
    if (name == "owner") front.gate.new_owner_token();
    if (name == "board-last") add_scores(front.store);
    if (needs_lines(name)) add_lines(front.store);
    const api::Response given = front.ask(example.method, example.path, example.body,
                                          example.role ? front.cookie_of(*example.role) : "");
    const ordered_json answer{{"status", given.status}, {"body", ordered_json::parse(given.body)}};
    const std::filesystem::path file = folder / (name + ".json");
    if (std::getenv("UPDATE_GOLDEN") != nullptr) {
      std::filesystem::create_directories(folder);
      std::ofstream(file, std::ios::binary) << answer.dump(1) << "\n";
      continue;
    }
    const ordered_json expected = ordered_json::parse(test::text_of_file(file));
    const bool moves = name == "list-effect" || name == "runs" || name == "score-form" || name == "results" ||
                       name == "own-today" || name == "home" || name == "rehearse" || name == "repairs" ||
                       name == "brief" || name == "movements" || name == "equipment" || name == "limits" ||
                       name == "fit" || name == "warmup" || name == "warmup-refused" || name == "pairs" ||
                       name == "away" || name == "own-away" || name == "timetable";
    EXPECT_EQ((moves ? shape_of(answer) : answer).dump(1), (moves ? shape_of(expected) : expected).dump(1))
        << name;
  }
}

TEST(GoldenAnswers, ShowEveryRoute) {
  std::set<const api::Route*> shown;
  for (const Example& example : examples) shown.insert(api::match(example.method, example.path).route);
  for (const api::Route& route : api::routes())
    // A stream has no answer to show.
    EXPECT_TRUE(shown.contains(&route) || route.path == "/api/events") << route.path;
}

}  // namespace
}  // namespace repwright
