#include <gmock/gmock.h>

#include <filesystem>
#include <set>

#include "filled_store.hpp"
#include "store/read_file.hpp"

/// Somebody is forgotten: nothing of them is left, and the class keeps its sums.
namespace repwright {
namespace {

using base::ErrorCode;
using test::kim;
using test::lou;
using test::StoreKind;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

/// Somebody with a name of two words in everything that a gym keeps.
class Forgetting : public test::FilledStore {
 protected:
  static constexpr const char* name = "Zelda Quarrington";
  static constexpr const char* class_id = "sat-24";

  void SetUp() override {
    FilledStore::SetUp();
    store::KeptGym kept = this->kept();
    store::GymFolder& gym = kept.gym;
    domain::Person& person = gym.people.emplace_back();
    person.id = {"zq"};
    person.name = name;
    must(store_->save_people(gym.people, {kept.versions.people.version, kim}));
    domain::GymClass& sat = gym.classes.at(class_id);
    sat.booked.push_back({"zq"});
    sat.walk_ins.push_back({"zq"});
    sat.arrivals.push_back({{"zq"}, 90 * base::second});
    must(store_->save_class(sat, {kept.versions.classes.at(class_id).version, kim}));
    must(store_->save_board("pairs", "5 RFT\n9 pull-ups\nnote: Zelda Quarrington and Bo share a bar\n",
                            {0, kim}));
    must(store_->add_score(score_of("21:00"), lou));
    must(store_->add_score(score_of("19:30"), lou));
    domain::ClockAct start;
    start.key = "k1";
    start.who = name;
    must(store_->add_clock_act(class_id, start, 0));
    if (in_a_folder()) return;
    must(store_->accounts()->put({name, domain::Role::Person, "pin", "link", "", {"zq"}}, kim));
    must(store_->accounts()->sign_in({"token", name, kim.when}));
    must(store_->correct_score(3, score_of("20:00"), {1, {name, kim.when}}));
    must(store_->put_effort({class_id, {"a01"}, 6}, kim));
    must(store_->put_effort({class_id, {"zq"}, 8}, {name, kim.when}));
    must(store_->add_note({{"zq"}, "left-handed", {}}, kim));
    must(store_->add_note({{"a01"}, "trains with Zelda Quarrington", {}}, kim));
  }

  static domain::ScoreEntry score_of(const std::string& text) {
    domain::ScoreEntry entry = score(text);
    entry.person = {"zq"};
    entry.entered_by = name;
    return entry;
  }
  template <class T>
  static void must(const base::Result<T>& result) {
    if (!result) throw std::runtime_error(result.error().message);
  }
  domain::Forgotten forget() {
    auto done = store_->forget({"zq"}, test::shipped_catalogue(), lou);
    must(done);
    return *done;
  }
  std::vector<domain::ScoreEntry> sheet() {
    std::vector<domain::ScoreEntry> out;
    const auto scores = reopened().scores();
    must(scores);
    for (const domain::KeptScore& each : *scores) out.push_back(each.entry);
    return out;
  }
};

TEST_P(Forgetting, TakesThemOffEveryList) {
  const std::size_t people = kept().gym.people.size();
  const domain::Forgotten done = forget();
  const store::KeptGym after = kept(reopened());
  EXPECT_EQ(after.gym.people.size(), people - 1);
  const domain::GymClass& sat = after.gym.classes.at(class_id);
  EXPECT_EQ(sat.booked, gym_.classes.at(class_id).booked);
  EXPECT_EQ(sat.walk_ins, gym_.classes.at(class_id).walk_ins);
  EXPECT_EQ(sat.arrivals, gym_.classes.at(class_id).arrivals);
  EXPECT_EQ(after.gym.boards.at("pairs"), "5 RFT\n9 pull-ups\nnote: somebody and Bo share a bar\n");
  EXPECT_EQ(done.classes, 1);
  EXPECT_EQ(done.boards, 1);
}

TEST_P(Forgetting, KeepsTheSumsOfTheClass) {
  const auto before = sheet();
  const domain::Forgotten done = forget();
  const auto after = sheet();
  ASSERT_EQ(after.size(), before.size());
  std::set<domain::PersonId> distinct_before, distinct_after;
  for (std::size_t i = 0; i < before.size(); ++i) {
    EXPECT_EQ(after[i].text, before[i].text);
    EXPECT_EQ(after[i].effort, before[i].effort);
    EXPECT_EQ(after[i].date, before[i].date);
    EXPECT_NE(after[i].person.text, "zq");
    distinct_before.insert(before[i].person);
    distinct_after.insert(after[i].person);
  }
  EXPECT_EQ(distinct_after.size(), distinct_before.size());
  EXPECT_EQ(done.scores, 2);
  if (in_a_folder()) return;
  EXPECT_EQ(done.efforts, 1);
  EXPECT_THAT(*reopened().efforts(class_id), ElementsAre(domain::ClassEffort{class_id, {"a01"}, 6},
                                                         domain::ClassEffort{class_id, {"somebody-1"}, 8}));
}

TEST_P(Forgetting, GivesThemAnotherIdInEverySession) {
  domain::ScoreEntry other_day = score_of("18:00");
  other_day.date = std::chrono::year{2027} / 4 / 30;
  domain::ScoreEntry of_somebody = other_day;
  of_somebody.person = {"somebody-1"};
  must(store_->add_score(of_somebody, lou));
  must(store_->add_score(other_day, lou));
  forget();
  const auto after = sheet();
  EXPECT_EQ(after[2].person.text, "somebody-1");
  EXPECT_EQ(after[3].person.text, "somebody-1") << "two pieces of one session are one person's";
  EXPECT_EQ(after[5].person.text, "somebody-2");
}

TEST_P(Forgetting, LeavesTheirNameNowhere) {
  forget();
  for (const domain::ScoreEntry& entry : sheet()) EXPECT_THAT(entry.entered_by, Not(HasSubstr("Zelda")));
  EXPECT_EQ(reopened().clock_acts(class_id)->front().who, "somebody");
  if (!in_a_folder()) {
    const auto trail = reopened().trail({});
    EXPECT_EQ(trail->front().what, "somebody was forgotten");
    EXPECT_EQ(trail->front().by, lou);
    for (const domain::TrailLine& line : *trail)
      EXPECT_THAT(line.by.who + " " + line.what, Not(HasSubstr("Zelda")));
    EXPECT_TRUE(reopened().accounts()->all()->empty());
    EXPECT_EQ(*reopened().accounts()->find("token"), std::nullopt);
    const auto notes = reopened().notes_on(test::may_14);
    ASSERT_EQ(notes->size(), 1u);
    EXPECT_EQ((*notes)[0].note.text, "trains with somebody");
    EXPECT_EQ(reopened().score_versions(3)->size(), 1u) << "what it said before is theirs";
    const auto texts = reopened().board_versions("pairs");
    for (const domain::BoardVersion& each : texts.value()) EXPECT_THAT(each.text, Not(HasSubstr("Zelda")));
  }
  for (const auto& file : std::filesystem::recursive_directory_iterator(scratch_.path())) {
    if (!file.is_regular_file()) continue;
    const auto bytes = store::read_file(file.path());
    ASSERT_TRUE(bytes) << file.path();
    EXPECT_EQ(bytes->find("Quarrington"), std::string::npos) << file.path() << " still has the name";
  }
}

TEST_P(Forgetting, SaysThatNobodyIsCalledSo) {
  const auto before = kept().gym.people;
  EXPECT_EQ(code(store_->forget({"nobody"}, test::shipped_catalogue(), lou)), ErrorCode::NotFound);
  forget();
  EXPECT_EQ(code(store_->forget({"zq"}, test::shipped_catalogue(), lou)), ErrorCode::NotFound);
  EXPECT_EQ(kept().gym.people.size(), before.size() - 1);
}

INSTANTIATE_TEST_SUITE_P(Every, Forgetting, test::every_store, test::name_of_store);

}  // namespace
}  // namespace repwright
