#include <gmock/gmock.h>

#include "filled_store.hpp"

/// What every store promises. Where the gym folder has no place for something, the case says so and checks
/// that it answers NotKept.
namespace repwright {
namespace {

using base::ErrorCode;
using domain::Stamp;
using test::kim;
using test::lou;
using test::may_14;
using testing::ElementsAre;

class StoreContract : public test::FilledStore {};

TEST_P(StoreContract, GivesBackTheGymThatWasPutThere) {
  const store::KeptGym kept = this->kept(reopened());
  EXPECT_EQ(kept.gym.people, gym_.people);
  EXPECT_EQ(kept.gym.hall, gym_.hall);
  EXPECT_EQ(kept.gym.house, gym_.house);
  EXPECT_EQ(kept.gym.boards, gym_.boards);
  EXPECT_EQ(kept.gym.classes, gym_.classes);
  EXPECT_EQ(kept.gym.scores, gym_.scores);
  EXPECT_EQ(store_->own_movements(), "# none of our own\n");
}

TEST_P(StoreContract, TakesAGymOnlyOnce) {
  EXPECT_EQ(code(store_->put_gym(gym_, std::nullopt, kim)), ErrorCode::Conflict);
}

TEST_P(StoreContract, HasNoGymBeforeOneWasPutThere) {
  const test::Scratch other;
  const auto empty = test::make_store(GetParam(), other.path());
  EXPECT_EQ(code(empty->gym(test::shipped_catalogue())), ErrorCode::NotFound);
  const auto own = empty->own_movements();
  ASSERT_TRUE(own);
  EXPECT_EQ(*own, std::nullopt);
}

TEST_P(StoreContract, RefusesIdsThatCannotBeFileNames) {
  const test::Scratch other;
  store::GymFolder bad = gym_;
  bad.boards["../up"] = "text";
  EXPECT_EQ(code(test::make_store(GetParam(), other.path())->put_gym(bad, std::nullopt, kim)),
            ErrorCode::Invalid);
  EXPECT_EQ(code(store_->save_board(".hidden", "text", {0, kim})), ErrorCode::Invalid);
  domain::GymClass gym_class;
  gym_class.id = "a/b";
  EXPECT_EQ(code(store_->save_class(gym_class, {0, kim})), ErrorCode::Invalid);
}

TEST_P(StoreContract, KeepsEveryPartThatIsSaved) {
  store::KeptGym before = kept();
  store::GymFolder& gym = before.gym;
  domain::Person& fresh = gym.people.emplace_back(gym.people[1]);
  fresh.id = {"a99"};
  fresh.name = "Somebody Invented";
  gym.people[0].limits.push_back({{"knee"}, "No jumps", std::chrono::year{2027} / 5 / 31});
  gym.hall.places[0].count += 1;
  gym.hall.kit.push_back({{"kettlebell"}, 20 * base::kilogram, {}, "", 3});
  gym.house.last_rest_counts = !gym.house.last_rest_counts;
  domain::GymClass& gym_class = gym.classes.begin()->second;
  gym_class.booked.pop_back();
  gym_class.arrivals = {{gym_class.booked[0], 90 * base::second}};
  gym_class.faults.push_back({{"pull-up-bar"}, 1, "loose bolt"});
  const domain::GymVersions& seen = before.versions;
  ASSERT_TRUE(store_->save_people(gym.people, {seen.people.version, lou}));
  ASSERT_TRUE(store_->save_hall(gym.hall, {seen.hall.version, lou}));
  ASSERT_TRUE(store_->save_house(gym.house, {seen.house.version, lou}));
  ASSERT_TRUE(store_->save_own_movements("# still none\n", {seen.movements.version, lou}));
  ASSERT_TRUE(store_->save_class(gym_class, {seen.classes.at(gym_class.id).version, lou}));
  const store::KeptGym after = kept(reopened());
  EXPECT_EQ(after.gym.people, gym.people);
  EXPECT_EQ(after.gym.hall, gym.hall);
  EXPECT_EQ(after.gym.house, gym.house);
  EXPECT_EQ(after.gym.classes, gym.classes);
  EXPECT_EQ(reopened().own_movements(), "# still none\n");
}

TEST_P(StoreContract, KeepsANewBoardAndItsNextText) {
  const auto first = store_->save_board("thursday", "5 RFT\n9 pull-ups\n", {0, kim});
  ASSERT_TRUE(first) << first.error().message;
  const auto second = store_->save_board("thursday", "3 RFT\n9 pull-ups\n", {first->version, lou});
  ASSERT_TRUE(second) << second.error().message;
  EXPECT_NE(second->version, first->version);
  EXPECT_EQ(second->by, lou);
  const store::KeptGym after = kept(reopened());
  EXPECT_EQ(after.gym.boards.at("thursday"), "3 RFT\n9 pull-ups\n");
  EXPECT_EQ(after.versions.boards.at("thursday").version, second->version);
}

TEST_P(StoreContract, RefusesAChangeOfWhatIsNotAsItWasSeen) {
  const domain::GymVersions seen = kept().versions;
  const auto first = store_->save_board("thursday", "one", {0, kim});
  ASSERT_TRUE(first);
  ASSERT_TRUE(reopened().save_board("thursday", "two", {first->version, lou}));
  EXPECT_EQ(code(store_->save_board("thursday", "three", {first->version, kim})), ErrorCode::Conflict);
  EXPECT_EQ(code(store_->save_board("thursday", "new", {0, kim})), ErrorCode::Conflict);
  EXPECT_EQ(code(store_->save_board("friday", "x", {first->version, kim})), ErrorCode::Conflict);
  EXPECT_EQ(kept(reopened()).gym.boards.at("thursday"), "two");
  EXPECT_FALSE(kept().gym.boards.contains("friday"));
  ASSERT_TRUE(store_->save_people({}, {seen.people.version, kim}));
  EXPECT_EQ(code(store_->save_people(gym_.people, {seen.people.version, lou})), ErrorCode::Conflict);
}

TEST_P(StoreContract, ShowsByItsMarkThatAnotherProgramChangedSomething) {
  const auto before = store_->mark();
  ASSERT_TRUE(before);
  EXPECT_EQ(*store_->mark(), *before);
  ASSERT_TRUE(reopened().save_board("thursday", "one", {0, lou}));
  const auto after = store_->mark();
  EXPECT_NE(*after, *before);
  ASSERT_TRUE(reopened().add_score(score("20:10"), lou));
  EXPECT_NE(*store_->mark(), *after);
}

TEST_P(StoreContract, KeepsEveryTextOfABoard) {
  if (in_a_folder()) {
    EXPECT_EQ(code(store_->board_versions("sat-two-clocks")), ErrorCode::NotKept);
    return;
  }
  const auto first = store_->save_board("thursday", "one", {0, kim});
  ASSERT_TRUE(store_->save_board("thursday", "two", {first->version, lou}));
  const auto versions = reopened().board_versions("thursday");
  ASSERT_TRUE(versions);
  EXPECT_THAT(*versions,
              ElementsAre(domain::BoardVersion{{1, kim}, "one"}, domain::BoardVersion{{2, lou}, "two"}));
  EXPECT_EQ(code(store_->board_versions("never")), ErrorCode::NotFound);
}

TEST_P(StoreContract, AddsScoresInTheirOrder) {
  const auto number = store_->add_score(score("cap, 3 rds + 40"), lou);
  ASSERT_TRUE(number) << number.error().message;
  EXPECT_EQ(*number, 3);
  const auto scores = reopened().scores();
  ASSERT_TRUE(scores);
  ASSERT_EQ(scores->size(), 3u);
  EXPECT_EQ((*scores)[2].entry, score("cap, 3 rds + 40"));
  EXPECT_EQ(kept().gym.scores.back(), score("cap, 3 rds + 40"));
}

TEST_P(StoreContract, AddsALineOfAKeyOnceHoweverOftenItIsSent) {
  domain::ScoreEntry sent = score("19:30");
  sent.key = "phone-1-17";
  const auto number = store_->add_score(sent, lou);
  ASSERT_TRUE(number) << number.error().message;
  EXPECT_EQ(store_->add_score(sent, lou), *number);
  EXPECT_EQ(reopened().add_score(sent, kim), *number);
  domain::ScoreEntry other = sent;
  other.key = "phone-2-17";
  EXPECT_EQ(store_->add_score(other, lou), *number + 1) << "equal lines of two keys are two lines";
  EXPECT_EQ(reopened().scores()->size(), 4u);
  EXPECT_EQ(kept().gym.scores.at(2), sent);
  if (in_a_folder()) return;
  sent.text = "19:31";
  ASSERT_TRUE(store_->correct_score(*number, sent, {1, kim}));
  EXPECT_EQ(store_->add_score(sent, lou), *number) << "a corrected line is still that of its key";
}

TEST_P(StoreContract, AddsManyLinesAtOnceAndSaysWhichAreNew) {
  domain::ScoreEntry sent = score("19:30");
  sent.key = "phone-1-17";
  ASSERT_TRUE(store_->add_score(sent, lou));
  const auto added = store_->add_scores({{score("18:00"), kim}, {sent, lou}, {score("18:00"), lou}});
  ASSERT_TRUE(added) << added.error().message;
  EXPECT_THAT(*added, ElementsAre(domain::AddedScore{4, true}, domain::AddedScore{3, false},
                                  domain::AddedScore{5, true}));
  EXPECT_EQ(reopened().scores()->size(), 5u);
}

TEST_P(StoreContract, TellsTheScoresOfOneClass) {
  domain::ScoreEntry other = score("19:30");
  other.class_id = "wed-morning-9";
  ASSERT_TRUE(store_->add_score(other, lou));
  const auto one = reopened().scores_of_class("wed-morning-9");
  ASSERT_TRUE(one);
  ASSERT_EQ(one->size(), 1u);
  EXPECT_EQ(one->front().entry, other);
  EXPECT_EQ(one->front().number, 3);
  EXPECT_TRUE(reopened().scores_of_class("never")->empty());
}

TEST_P(StoreContract, KeepsPapersAndForgetsPeopleInThem) {
  using domain::Paper;
  EXPECT_EQ(*store_->paper(Paper::EmergencyCard), domain::KeptPaper{});
  const auto saved = store_->save_paper(Paper::EmergencyCard, "Door code on the key board.\n", {0, kim});
  ASSERT_TRUE(saved) << saved.error().message;
  EXPECT_EQ(code(store_->save_paper(Paper::EmergencyCard, "other", {0, lou})), ErrorCode::Conflict);
  EXPECT_EQ(reopened().paper(Paper::EmergencyCard)->text, "Door code on the key board.\n");
  ASSERT_TRUE(store_->save_paper(Paper::Rankings, "a07\na17\n", {0, lou}));
  ASSERT_TRUE(store_->forget({"a17"}, test::shipped_catalogue(), kim));
  EXPECT_EQ(reopened().paper(Paper::Rankings)->text, "a07\n");
}

TEST_P(StoreContract, KeepsWhoWasSeenAtTheDoor) {
  const domain::DoorLine out{"sat-24", {"a17"}, domain::DoorAct::Out, may_14 + std::chrono::hours(7), "p1"};
  domain::DoorLine in = out;
  in.act = domain::DoorAct::In;
  in.seen += std::chrono::seconds(95);
  in.key = "p2";
  const auto number = store_->add_door_line(out, kim);
  ASSERT_TRUE(number) << number.error().message;
  ASSERT_TRUE(store_->add_door_line(in, lou));
  EXPECT_EQ(store_->add_door_line(out, lou), *number) << "sent again, it is the same line";
  store::Store& later = in_a_folder() ? *store_ : reopened();
  const auto lines = later.door_lines("sat-24");
  ASSERT_TRUE(lines);
  EXPECT_THAT(*lines, ElementsAre(domain::KeptDoorLine{*number, kim, out},
                                  domain::KeptDoorLine{*number + 1, lou, in}));
  EXPECT_TRUE(later.door_lines("another")->empty());
  ASSERT_TRUE(later.forget({"a17"}, test::shipped_catalogue(), kim));
  EXPECT_TRUE(later.door_lines("sat-24")->empty());
}

TEST_P(StoreContract, KeepsWhatAScoreSaidBeforeItWasCorrected) {
  if (in_a_folder()) {
    EXPECT_EQ(code(store_->correct_score(1, score("21:10"), {1, lou})), ErrorCode::NotKept);
    EXPECT_EQ(code(store_->score_versions(1)), ErrorCode::NotKept);
    return;
  }
  const auto saved = store_->correct_score(1, score("21:10"), {1, lou});
  ASSERT_TRUE(saved) << saved.error().message;
  EXPECT_EQ(code(store_->correct_score(1, score("20:10"), {1, kim})), ErrorCode::Conflict);
  EXPECT_EQ(code(store_->correct_score(77, score("20:10"), {1, kim})), ErrorCode::NotFound);
  const auto versions = reopened().score_versions(1);
  ASSERT_TRUE(versions);
  EXPECT_THAT(*versions, ElementsAre(domain::KeptScore{1, {1, kim}, score("22:10")},
                                     domain::KeptScore{1, *saved, score("21:10")}));
  EXPECT_EQ((*reopened().scores())[0].entry, score("21:10"));
  EXPECT_EQ(code(store_->score_versions(77)), ErrorCode::NotFound);
}

TEST_P(StoreContract, KeepsHowHardTheHourWas) {
  const std::string id = gym_.classes.begin()->first;
  if (in_a_folder()) {
    EXPECT_EQ(code(store_->put_effort({id, {"a01"}, 8}, kim)), ErrorCode::NotKept);
    EXPECT_EQ(code(store_->efforts(id)), ErrorCode::NotKept);
    return;
  }
  ASSERT_TRUE(store_->put_effort({id, {"a01"}, 8}, kim));
  ASSERT_TRUE(store_->put_effort({id, {"a07"}, 6.5}, kim));
  ASSERT_TRUE(store_->put_effort({id, {"a01"}, 9}, lou));
  EXPECT_EQ(code(store_->put_effort({"never", {"a01"}, 9}, lou)), ErrorCode::NotFound);
  const auto efforts = reopened().efforts(id);
  ASSERT_TRUE(efforts);
  EXPECT_THAT(*efforts,
              ElementsAre(domain::ClassEffort{id, {"a01"}, 9}, domain::ClassEffort{id, {"a07"}, 6.5}));
}

TEST_P(StoreContract, KeepsAnEffortAndANoteOfAKeyOnce) {
  if (in_a_folder()) return;  // it keeps neither
  const std::string id = "sat-24";
  ASSERT_TRUE(store_->put_effort({id, {"a01"}, 8, "k1"}, kim));
  ASSERT_TRUE(store_->put_effort({id, {"a01"}, 8, "k1"}, kim));
  ASSERT_TRUE(store_->put_effort({id, {"a01"}, 6, "k2"}, kim));
  EXPECT_THAT(*reopened().efforts(id), ElementsAre(domain::ClassEffort{id, {"a01"}, 6, "k2"}));
  const domain::Note note{{"a01"}, "likes the end bar", {}, "k3"};
  EXPECT_EQ(store_->add_note(note, kim), 1);
  EXPECT_EQ(reopened().add_note(note, kim), 1);
  EXPECT_THAT(*reopened().notes_on(may_14), ElementsAre(domain::KeptNote{1, kim, note}));
  EXPECT_EQ(store_->trail({})->size(), 4u) << "the gym, two efforts, a note";
}

TEST_P(StoreContract, LetsNotesWearOff) {
  const std::chrono::year_month_day may_15 = may_14 + std::chrono::days(1);
  if (in_a_folder()) {
    EXPECT_EQ(code(store_->add_note({{"a01"}, "new shoes", {}}, kim)), ErrorCode::NotKept);
    EXPECT_EQ(code(store_->notes_on(may_15)), ErrorCode::NotKept);
    return;
  }
  const domain::Note stays{{"a01"}, "likes the end bar", {}};
  const domain::Note today{{}, "door code changed", may_14};
  ASSERT_TRUE(store_->add_note(today, kim));
  ASSERT_TRUE(store_->add_note(stays, kim));
  EXPECT_THAT(*reopened().notes_on(may_14),
              ElementsAre(domain::KeptNote{1, kim, today}, domain::KeptNote{2, kim, stays}));
  EXPECT_THAT(*store_->notes_on(may_15), ElementsAre(domain::KeptNote{2, kim, stays}));
  const Stamp later{"Lou", may_14 + std::chrono::hours(30)};
  ASSERT_TRUE(store_->add_note(stays, later));
  EXPECT_THAT(*store_->notes_on(may_14),
              ElementsAre(domain::KeptNote{2, kim, stays}, domain::KeptNote{3, later, stays}))
      << "what wore off is gone for good";
}

TEST_P(StoreContract, TakesANoteAwayAndNeverGivesItsNumberAgain) {
  if (in_a_folder()) {
    EXPECT_EQ(code(store_->remove_note(1, kim)), ErrorCode::NotKept);
    return;
  }
  const domain::Note note{{"a01"}, "likes the end bar", {}};
  ASSERT_TRUE(store_->add_note(note, kim));
  ASSERT_TRUE(store_->remove_note(1, lou));
  EXPECT_EQ(code(store_->remove_note(1, lou)), ErrorCode::NotFound);
  EXPECT_TRUE(store_->notes_on(may_14)->empty());
  EXPECT_EQ(store_->add_note(note, lou), 2);
}

domain::ClockAct clock_act(domain::ClockDeed deed, std::int64_t at_ms, std::string key) {
  domain::ClockAct act;
  act.deed = deed;
  act.at_ms = at_ms;
  act.key = std::move(key);
  act.who = "Lou";
  return act;
}

TEST_P(StoreContract, KeepsWhatWasDoneToAClockInItsOrder) {
  domain::ClockAct start = clock_act(domain::ClockDeed::Start, 1'810'000'000'123, "k1");
  start.cue = "2.0.0";
  domain::ClockAct more = clock_act(domain::ClockDeed::Add, 1'810'000'090'456, "k2");
  more.seconds = base::Duration::from_si(-30);
  EXPECT_TRUE(store_->clock_acts("sat-24")->empty());
  EXPECT_EQ(store_->add_clock_act("sat-24", start, 0), 1);
  EXPECT_EQ(store_->add_clock_act("sat-24", more, 1), 2);
  EXPECT_THAT(*reopened().clock_acts("sat-24"), ElementsAre(start, more));
  EXPECT_TRUE(store_->clock_acts("wed-morning-9")->empty());
  EXPECT_EQ(code(store_->add_clock_act("never", start, 0)), ErrorCode::NotFound);
}

TEST_P(StoreContract, KeepsAnActOfAClockOnlyOnceAndNoneByWhoDidNotSeeTheLast) {
  const auto start = clock_act(domain::ClockDeed::Start, 1'810'000'000'000, "k1");
  const auto pause = clock_act(domain::ClockDeed::Pause, 1'810'000'005'000, "k2");
  ASSERT_TRUE(store_->add_clock_act("sat-24", start, 0));
  ASSERT_TRUE(store_->add_clock_act("sat-24", pause, 1));
  EXPECT_EQ(store_->add_clock_act("sat-24", start, 0), 1) << "sent again";
  EXPECT_EQ(code(store_->add_clock_act("sat-24", clock_act(domain::ClockDeed::GoOn, 1, "k3"), 1)),
            ErrorCode::Conflict);
  EXPECT_THAT(*reopened().clock_acts("sat-24"), ElementsAre(start, pause));
  if (in_a_folder()) return;  // it keeps no trail
  EXPECT_EQ(store_->trail({.most = 1})->front(),
            (domain::TrailLine{3, {"Lou", store::stamp_of(pause).when}, "clock sat-24: pause"}));
}

TEST_P(StoreContract, TakesAClassAwayWithWhatWasDoneToItsClockAndSeenAtItsDoor) {
  const domain::Version seen = kept().versions.classes.at("sat-24").version;
  ASSERT_TRUE(store_->add_clock_act("sat-24", clock_act(domain::ClockDeed::Start, 1, "k1"), 0));
  ASSERT_TRUE(store_->add_door_line({"sat-24", {"a17"}, domain::DoorAct::Here, may_14, "p1"}, kim));
  const auto removed = store_->remove_class("sat-24", {seen, lou});
  ASSERT_TRUE(removed) << removed.error().message;
  EXPECT_EQ(code(store_->remove_class("sat-24", {seen, lou})), ErrorCode::NotFound);
  const store::KeptGym after = kept(reopened());
  EXPECT_FALSE(after.gym.classes.contains("sat-24"));
  EXPECT_FALSE(after.versions.classes.contains("sat-24"));
  EXPECT_EQ(after.gym.classes.size(), gym_.classes.size() - 1);
  EXPECT_EQ(after.gym.boards, gym_.boards);
  ASSERT_TRUE(store_->save_class(gym_.classes.at("sat-24"), {0, kim})) << "one of that name is a new one";
  EXPECT_TRUE(reopened().clock_acts("sat-24")->empty());
  EXPECT_TRUE(store_->door_lines("sat-24")->empty());
  if (in_a_folder()) return;  // it keeps no trail
  EXPECT_EQ(store_->trail({.most = 2})->back().what, "class sat-24: taken away");
}

TEST_P(StoreContract, KeepsAClassThatWasChangedMeanwhileOrOfWhichSomethingWasSaid) {
  const domain::Version seen = kept().versions.classes.at("sat-24").version;
  EXPECT_EQ(code(store_->remove_class("sat-24", {seen + 1, kim})), ErrorCode::Conflict);
  EXPECT_EQ(code(store_->remove_class("never", {1, kim})), ErrorCode::NotFound);
  if (!in_a_folder()) {  // it keeps no efforts
    const std::string other = "wed-morning-9";
    ASSERT_TRUE(store_->put_effort({other, {"a01"}, 8}, kim));
    EXPECT_EQ(code(store_->remove_class(other, {1, kim})), ErrorCode::Conflict);
  }
  domain::ScoreEntry said = score("19:30");
  said.class_id = "sat-24";
  ASSERT_TRUE(store_->add_score(said, lou));
  const auto refused = store_->remove_class("sat-24", {seen, kim});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, ErrorCode::Conflict);
  EXPECT_EQ(refused.error().message, "scores of this class are kept, so it stays");
  EXPECT_EQ(kept(reopened()).gym.classes, gym_.classes);
}

TEST_P(StoreContract, TellsWhoChangedWhatAndWhen) {
  if (in_a_folder()) {
    EXPECT_EQ(code(store_->trail({})), ErrorCode::NotKept);
    return;
  }
  ASSERT_TRUE(store_->save_board("thursday", "one", {0, lou}));
  EXPECT_EQ(code(store_->save_board("thursday", "two", {0, lou})), ErrorCode::Conflict);
  const auto trail = reopened().trail({});
  ASSERT_TRUE(trail);
  EXPECT_THAT(*trail,
              ElementsAre(domain::TrailLine{2, lou, "board thursday"}, domain::TrailLine{1, kim, "gym"}));
  EXPECT_THAT(*store_->trail({.most = 1}), ElementsAre(domain::TrailLine{2, lou, "board thursday"}));
  EXPECT_THAT(*store_->trail({.most = 9, .before = 2}), ElementsAre(domain::TrailLine{1, kim, "gym"}));
}

INSTANTIATE_TEST_SUITE_P(Every, StoreContract, test::every_store, test::name_of_store);

}  // namespace
}  // namespace repwright
