#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "store/catalogue_file.hpp"
#include "support/source_dir.hpp"

/// The shipped rows against the collection that they were made from, field by field. The collection is not
/// part of the project: where it is not beside the checkout, the test is skipped.
namespace repwright::store {
namespace {

using nlohmann::json;

const std::filesystem::path collection = test::source_dir() / ".." / "shared" / "data" / "movements.json";

constexpr std::array<std::string_view, 3> stations{"own", "shared", "lane"};
constexpr std::array<std::string_view, 3> impacts{"none", "low", "high"};
const std::map<domain::Unit, std::string> units{{domain::Unit::Reps, "reps"},
                                                {domain::Unit::Metres, "m"},
                                                {domain::Unit::Kilocalories, "kcal"},
                                                {domain::Unit::Seconds, "s"}};

/// Aliases that went to a movement of their own, to another one or to the words of several meanings.
const std::set<std::string> moved{"hollow rock", "clean and jerk", "c&j", "bent over row"};

/// Rows whose flags or limits the collection had wrong (a lap is run, hands lean on the wall), field by
/// field.
const std::map<std::string, std::vector<std::string>> corrected{
    {"wall-push-up", {"flags", "avoid_with", "swap_for", "cautions"}},
    {"easy-jog-lap", {"avoid_with"}},
    {"side-shuffle", {"avoid_with"}},
    {"rope-easy", {"avoid_with"}},
    {"calf-bounce-no-rope", {"avoid_with"}},
    {"run-drills", {"avoid_with"}},
    {"strides", {"avoid_with"}},
    {"calf-pump", {"avoid_with"}},
    {"cat-arch", {"avoid_with"}},
    {"thread-needle", {"avoid_with"}},
    {"wrist-prep", {"avoid_with"}},
    {"bird-dog-drill", {"avoid_with"}},
    {"nineties", {"flags", "avoid_with"}},
    {"inchworm-drill", {"flags", "avoid_with"}},
    {"open-book", {"flags", "avoid_with"}},
    {"lunge-reach", {"flags", "avoid_with"}},
    {"wall-slide", {"flags", "avoid_with"}},
    {"prone-swim", {"flags", "avoid_with"}},
    {"ring-lean", {"avoid_with"}},
    {"push-ladder", {"avoid_with"}},
    {"band-face-pull", {"home_substitute"}},
    {"band-walk", {"home_substitute"}}};

/// Takes the fields that were corrected out of both sides; each must differ, or it is no correction.
void leave_out_corrected(const std::string& id, json& wanted, json& have) {
  const auto fields = corrected.find(id);
  if (fields == corrected.end()) return;
  for (const std::string& field : fields->second) {
    EXPECT_NE(wanted.at(field), have.at(field)) << id << " " << field;
    wanted.erase(field);
    have.erase(field);
  }
}

template <class Id>
json texts(const std::vector<Id>& ids) {
  json out = json::array();
  for (const Id& id : ids) out.push_back(id.text);
  return out;
}

template <class T>
json or_null(const std::optional<T>& value) {
  if (!value) return nullptr;
  if constexpr (requires { value->si(); })
    return value->si();
  else
    return *value;
}

json numbers(const domain::Movement& m) {
  json out;
  for (const auto& [unit, pace] : m.pace)
    out["seconds_per_unit"][units.at(unit)] = {{"brisk", pace.brisk}, {"sustained", pace.sustained}};
  out["default_unit"] = units.at(m.default_unit);
  out["unbroken"] = nullptr;
  if (m.unbroken)
    out["unbroken"] = {
        {"novice", m.unbroken->novice}, {"competent", m.unbroken->competent}, {"strong", m.unbroken->strong}};
  out["break_s"] = m.break_rest.si();
  out["on_off_s"] = m.on_off.si();
  out["body_fraction"] = or_null(m.body_fraction);
  out["rise_m"] = or_null(m.rise);
  out["space_m2"] = m.space.si();
  out["ceiling_m"] = or_null(m.ceiling);
  out["pace_spread_cv"] = m.pace_spread;
  out["typical_load_kg"] = nullptr;
  if (m.typical_load)
    out["typical_load_kg"] = {{"light", m.typical_load->light.si()},
                              {"medium", m.typical_load->medium.si()},
                              {"heavy", m.typical_load->heavy.si()}};
  return out;
}

json words(const domain::Movement& m) {
  json out{{"id", m.id.text},
           {"name", m.name},
           {"category", m.category},
           {"patterns", m.patterns},
           {"muscles", {{"primary", m.primary_muscles}, {"secondary", m.secondary_muscles}}},
           {"equipment", texts(m.equipment)},
           {"station", stations[static_cast<std::size_t>(m.station)]},
           {"impact", impacts[static_cast<std::size_t>(m.impact)]},
           {"flags", m.flags},
           {"standard", {{"start", m.standard_start}, {"finish", m.standard_finish}}},
           {"cautions", m.cautions},
           {"eccentric_stress", m.eccentric_stress},
           {"avoid_with", texts(m.avoid_with)},
           {"kit_free", m.kit_free}};
  out["count_rule"] = m.count_rule.empty() ? json(nullptr) : json(m.count_rule);
  out["faults"] = json::array();
  for (const domain::Fault& fault : m.faults)
    out["faults"].push_back({{"fault", fault.fault}, {"cue", fault.cue}});
  out["home"] = json::array();
  for (const domain::HomeVersion& home : m.home)
    out["home"].push_back({{"id", home.movement.text}, {"factor", home.factor}, {"basis", home.basis}});
  out["swap_for"] = json::object();
  for (const auto& [limit, target] : m.swap_for) out["swap_for"][limit.text] = target.text;
  return out;
}

void expect_all_of(const json& wanted, const std::vector<domain::MovementId>& found,
                   const std::string& what) {
  std::set<std::string> have;
  for (const domain::MovementId& id : found) have.insert(id.text);
  for (const json& id : wanted) EXPECT_TRUE(have.contains(id.get<std::string>())) << what << " " << id;
}

class Collection : public testing::Test {
 protected:
  void SetUp() override {
    std::ifstream in(collection);
    if (!in) GTEST_SKIP() << "the collection is not beside the checkout: " << collection;
    source = json::parse(in);
    auto loaded = load_catalogue(test::source_dir() / "data" / "catalogue", std::nullopt);
    ASSERT_TRUE(loaded.has_value()) << loaded.error().message;
    catalogue = std::move(*loaded);
  }
  json source;
  domain::Catalogue catalogue;
};

TEST_F(Collection, ArrivesWithEveryFieldOfEveryMovement) {
  for (json wanted : source["movements"]) {
    const std::string id = wanted["id"];
    const domain::Movement* found = catalogue.find(domain::MovementId{id});
    ASSERT_NE(found, nullptr) << id;
    // Ladders grew where new movements joined them.
    expect_all_of(wanted["regressions"], found->easier, id + " easier");
    expect_all_of(wanted["progressions"], found->harder, id + " harder");
    for (const json& alias : wanted["aliases"])
      EXPECT_TRUE(moved.contains(alias.get<std::string>()) ||
                  std::ranges::count(found->aliases, alias.get<std::string>()) == 1)
          << id << " " << alias;
    for (const char* apart : {"regressions", "progressions", "aliases"}) wanted.erase(apart);
    json have = words(*found);
    have.update(numbers(*found));
    leave_out_corrected(id, wanted, have);
    EXPECT_EQ(wanted, have) << id;
  }
}

TEST_F(Collection, ArrivesWithEveryFieldOfEveryDrill) {
  ASSERT_EQ(source["drills"].size(), catalogue.drills.size());
  for (std::size_t i = 0; i < catalogue.drills.size(); ++i) {
    const domain::Drill& d = catalogue.drills[i];
    const json home{{"kind", d.home_kind},
                    {"drill", d.home_drill.empty() ? json(nullptr) : json(d.home_drill)},
                    {"text", d.home_text}};
    json have{{"id", d.id},
              {"name", d.name},
              {"phase", d.phase},
              {"joints", d.joints},
              {"patterns", d.patterns},
              {"muscles", d.muscles},
              {"seconds", d.length.si()},
              {"both_sides_included", d.both_sides_included},
              {"equipment", d.equipment},
              {"how", d.how},
              {"coach_line", d.coach_line},
              {"home_substitute", home},
              {"space_m2", d.space.si()},
              {"flags", d.flags},
              {"avoid_with", texts(d.avoid_with)},
              {"effort_0_10", d.effort}};
    json wanted = source["drills"][i];
    // The first collection did not say that these are run along a course.
    if (d.id == "easy-jog-lap" || d.id == "strides") wanted["equipment"] = json::array({"course"});
    leave_out_corrected(d.id, wanted, have);
    EXPECT_EQ(wanted, have) << d.id;
  }
}

TEST_F(Collection, ArrivesWithItsKitLimitsTermsAndWords) {
  for (const json& wanted : source["equipment"]) {
    const domain::Equipment* found = catalogue.find(domain::EquipmentId{wanted["id"]});
    ASSERT_NE(found, nullptr) << wanted;
    const json have{{"id", found->id.text},
                    {"name", found->name},
                    {"kind", found->kind},
                    {"width_m", found->width.si()},
                    {"people_per_unit", found->people_per_unit}};
    EXPECT_EQ(wanted, have);
  }
  json limits = json::array();
  for (const domain::LimitKind& limit : catalogue.limits)
    limits.push_back({{"id", limit.id.text}, {"name", limit.name}, {"from_flags", limit.from_flags}});
  EXPECT_EQ(source["limits"], limits);
  for (const auto& [key, terms] : {std::pair{"muscle_groups", &catalogue.terms.muscles},
                                   std::pair{"patterns", &catalogue.terms.patterns}})
    for (const json& wanted : source[key])
      EXPECT_NE(std::ranges::find(*terms, domain::Term{wanted["id"], wanted["name"]}), terms->end())
          << wanted;
  for (const auto& [word, ids] : source["ambiguous_words"].items()) {
    if (word != "clean" && word != "snatch") {  // these have a lift of their own with the bar and the bells
      EXPECT_EQ(ids, texts(catalogue.ambiguous_words.at(word))) << word;
    }
  }
}

}  // namespace
}  // namespace repwright::store
