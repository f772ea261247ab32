#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "base/text.hpp"
#include "domain/written_values.hpp"
#include "store/class_json.hpp"
#include "store/hall_json.hpp"
#include "store/house_json.hpp"
#include "store/people_columns.hpp"
#include "store/people_csv.hpp"
#include "store/scores_csv.hpp"
#include "support/shipped.hpp"

/// read(write(x)) == x for every file of a gym folder, and any bytes give a value or errors.
namespace repwright::store {
namespace {

using base::metre;
using base::second;
using domain::Movement;
using domain::Unit;
using rc::gen::inRange;
using test::shipped_catalogue;

/// Words as people write them, with everything in them that a file format could trip over.
std::string words() {
  const auto pieces = *rc::gen::container<std::vector<std::string>>(
      *inRange<std::size_t>(0, 6),
      rc::gen::element<std::string>("Ada", "ø", "Wąs", " ", ",", ";", "\"", "|", "\\", "'", "\n", "x", "12",
                                    ":", "~/", "\t", "{", "<"));
  std::string out;
  for (const std::string& piece : pieces) out += piece;
  return std::string(base::trim(out));
}
std::string some_words() {
  return "w" + words();
}

bool coin() {
  return *rc::gen::arbitrary<bool>();
}
double tenths(int min, int max) {
  return static_cast<double>(*inRange(min * 10, max * 10)) / 10.0;
}
std::chrono::year_month_day a_day() {
  return std::chrono::sys_days(std::chrono::days(*inRange(18000, 24000)));
}

const Movement& a_movement(bool (*fits)(const Movement&)) {
  std::vector<const Movement*> fitting;
  for (const Movement& movement : shipped_catalogue().movements)
    if (fits(movement)) fitting.push_back(&movement);
  return **rc::gen::elementOf(fitting);
}

domain::Mark a_mark() {
  switch (*inRange(0, 6)) {
    case 0: {
      const Movement& m = a_movement([](const Movement& x) { return x.pace.contains(Unit::Metres); });
      const int metres = *inRange(10, 5000);
      const double ms = std::round(metres * m.pace.at(Unit::Metres).sustained * tenths(1, 3) * 1000);
      return domain::TimedDistance{m.id, metres * metre, ms / 1000.0 * second};
    }
    case 1: {
      const Movement& m = a_movement(
          [](const Movement& x) { return x.pace.contains(Unit::Reps) && x.default_unit != Unit::Seconds; });
      return domain::BestSet{m.id, static_cast<double>(*inRange(0, 60)), coin()};
    }
    case 2: {
      const Movement& m = a_movement([](const Movement& x) { return x.pace.contains(Unit::Reps); });
      const double most = 120 / (m.pace.at(Unit::Reps).brisk * 2);
      return domain::TimedReps{m.id, 120 * second,
                               static_cast<double>(*inRange(0, static_cast<int>(most) + 1))};
    }
    case 3: {
      const Movement& m = a_movement([](const Movement& x) { return x.default_unit == Unit::Seconds; });
      return domain::BestHold{m.id, tenths(0, 600) * second};
    }
    case 4: {
      const Movement& m = a_movement([](const Movement& x) { return x.typical_load.has_value(); });
      // No reader believes more than five times the usual load.
      const int most = std::min(60, static_cast<int>(m.typical_load->heavy.si() * 5));
      return domain::BestLoad{m.id, tenths(1, most) * base::kilogram, *inRange(1, 11)};
    }
    default:
      return domain::AerobicPeak{tenths(20, 70)};
  }
}

std::vector<domain::Limit> some_limits() {
  std::vector<domain::Limit> out;
  for (const domain::LimitKind& kind : shipped_catalogue().limits) {
    if (*inRange(0, 6) != 0) continue;
    domain::Limit limit{kind.id, words(), {}};
    if (coin()) limit.until = a_day();
    out.push_back(std::move(limit));
  }
  return out;
}

domain::Person a_person(int number) {
  domain::Person p;
  p.id = {"p" + std::to_string(number)};
  p.name = some_words();
  p.sex = *rc::gen::element(domain::Sex::Unsaid, domain::Sex::Female, domain::Sex::Male);
  if (coin()) p.age = tenths(5, 90);
  if (coin()) p.birth_year = *inRange(1930, 2020);
  if (coin()) p.mass = tenths(30, 150) * base::kilogram;
  if (coin()) p.height = domain::to_millimetre(tenths(120, 210) / 100.0 * metre);
  if (coin()) p.training_years = tenths(0, 30);
  for (int i = *inRange(0, 6); i > 0; --i) {
    domain::Mark mark = a_mark();
    const bool there = std::ranges::any_of(p.marks, [&](const domain::Mark& other) {
      return write_mark_header(other) == write_mark_header(mark);
    });
    if (!there) p.marks.push_back(std::move(mark));
  }
  std::ranges::sort(p.marks, mark_before);
  p.limits = some_limits();
  for (const char* day : {"mon", "thu", "sat"})
    if (coin()) p.attends.emplace_back(day);
  for (const char* word : {"push", "pull", "pull up", "box-step-up"})
    if (coin()) p.versions[word] = a_movement([](const Movement&) { return true; }).id;
  return p;
}

RC_GTEST_PROP(PeopleFileLaw, ReadsWhatItWrites, ()) {
  std::vector<domain::Person> people;
  for (int i = *inRange(0, 5); i > 0; --i) people.push_back(a_person(i));
  const std::string bytes = write_people(people);
  RC_LOG() << bytes;
  const auto read = read_people(bytes, "people.csv", shipped_catalogue());
  if (!read) RC_FAIL(read.error().message);
  RC_ASSERT(read->people == people);
  RC_ASSERT(read->notes.empty());
}

domain::EquipmentId some_equipment() {
  return (*rc::gen::elementOf(shipped_catalogue().equipment)).id;
}

domain::Hall a_hall() {
  domain::Hall hall;
  hall.name = words();
  if (coin()) hall.floor = tenths(10, 900) * (metre * metre);
  std::set<domain::EquipmentId> kinds;
  for (int i = *inRange(0, 4); i > 0; --i) kinds.insert(some_equipment());
  for (const domain::EquipmentId& kind : kinds) hall.places.push_back({kind, *inRange(0, 20)});
  if (coin()) hall.displacements.push_back({some_equipment(), some_equipment()});
  for (int i = *inRange(0, 4); i > 0; --i) {
    domain::KitLot lot{some_equipment(), {}, {}, words(), *inRange(0, 50)};
    if (coin()) lot.mass = tenths(1, 40) * base::kilogram;
    if (coin()) lot.height = domain::to_millimetre(tenths(10, 80) / 100.0 * metre);
    hall.kit.push_back(std::move(lot));
  }
  for (int i = *inRange(0, 3); i > 0; --i) {
    domain::Route route{{"r" + std::to_string(i)},
                        words(),
                        tenths(10, 3000) * metre,
                        *rc::gen::element<std::string>("out-and-back", "loop", "shuttle"),
                        coin(),
                        coin(),
                        coin(),
                        {},
                        tenths(0, 50) * metre,
                        tenths(0, 60) * second,
                        words(),
                        {words()}};
    if (coin()) route.max_people = *inRange(0, 30);
    hall.routes.push_back(std::move(route));
  }
  if (coin()) hall.quiet_hours.push_back({{"mon", "sat"}, *inRange(0, 1440), words()});
  hall.unlimited = hall.places.empty() && hall.kit.empty();
  return hall;
}

RC_GTEST_PROP(HallFileLaw, ReadsWhatItWrites, ()) {
  const domain::Hall hall = a_hall();
  const auto read = read_hall(write_hall(hall), "hall.json", shipped_catalogue());
  if (!read) RC_FAIL(read.error().message);
  RC_ASSERT(read->hall == hall);
  RC_ASSERT(read->notes.empty());
}

std::vector<domain::PersonId> some_ids(const std::string& prefix) {
  std::vector<domain::PersonId> out;
  for (int i = *inRange(0, 4); i > 0; --i) out.push_back({prefix + std::to_string(i) + words()});
  return out;
}

RC_GTEST_PROP(ClassFileLaw, ReadsWhatItWrites, ()) {
  domain::GymClass to;
  to.id = some_words();
  if (coin()) to.date = a_day();
  if (coin()) to.start_minute = *inRange(0, 1440);
  if (coin()) to.length = *inRange(1, 240) * base::minute;
  to.board_id = words();
  to.booked = some_ids("b");
  for (const domain::PersonId& id : some_ids("a")) to.arrivals.push_back({id, *inRange(0, 900) * second});
  to.walk_ins = some_ids("w");
  if (coin()) to.faults.push_back({some_equipment(), *inRange(0, 5), words()});
  to.weather = {words(), {}, {}, coin(), coin(), {{some_words()}}};
  if (coin()) to.weather.temperature_c = tenths(-10, 40);
  if (coin()) to.weather.wbgt_c = tenths(-10, 40);
  if (coin()) to.boxes.briefing = *inRange(0, 30) * base::minute;
  if (coin()) to.boxes.clean = *inRange(0, 30) * base::minute;
  to.indoors = coin();
  const auto read = read_class(write_class(to), "class.json", "class", shipped_catalogue());
  if (!read) RC_FAIL(read.error().message);
  RC_ASSERT(read->gym_class == to);
  RC_ASSERT(read->notes.empty());
}

RC_GTEST_PROP(HouseFileLaw, ReadsWhatItWrites, ()) {
  domain::House house;
  house.mass_unit = *rc::gen::element(domain::MassUnit::Kilograms, domain::MassUnit::Pounds);
  house.tiers = *rc::gen::element(domain::TierRule::BySex, domain::TierRule::ByChoice);
  house.tempo = *rc::gen::element(domain::TempoOrder::DownPauseUpTop, domain::TempoOrder::UpTopDownPause);
  for (bool domain::House::* rule :
       {&domain::House::legs_counted_together, &domain::House::pull_up_may_swing,
        &domain::House::burpee_has_push_up, &domain::House::minute_one_is_odd,
        &domain::House::last_rest_counts, &domain::House::keep_place_while_resting})
    house.*rule = coin();
  for (int i = *inRange(0, 3); i > 0; --i)
    house.words[some_words()] = a_movement([](const Movement&) { return true; }).id.text;
  const auto read = read_house(write_house(house), "house.json", shipped_catalogue());
  if (!read) RC_FAIL(read.error().message);
  RC_ASSERT(read->house == house);
  RC_ASSERT(read->notes.empty());
}

RC_GTEST_PROP(ScoresFileLaw, ReadsWhatItWrites, ()) {
  std::vector<domain::ScoreEntry> entries;
  for (int i = *inRange(0, 6); i > 0; --i) {
    domain::ScoreEntry entry;
    entry.date = a_day();
    entry.class_id = words();
    entry.board_id = words();
    entry.piece = words();
    entry.person = {some_words()};
    entry.text = *rc::gen::element<std::string>("22:10", "4+12", "61.5 kg", "cap, 3 rds + 40", "44",
                                                "a \"bit\", more");
    entry.value = domain::read_score(entry.text);
    entry.version = words();
    if (coin()) entry.effort = tenths(0, 10);
    entry.flag = *rc::gen::element(domain::DayFlag::None, domain::DayFlag::Ill, domain::DayFlag::Hot,
                                   domain::DayFlag::Easy);
    entry.entered_by = words();
    entry.key = words();
    entries.push_back(std::move(entry));
  }
  const auto read = read_scores(write_scores(entries), "scores.csv");
  if (!read) RC_FAIL(read.error().message);
  RC_ASSERT(read->entries == entries);
}

RC_GTEST_PROP(WrittenValuesLaw, ReadWhatTheyWrite, ()) {
  const double number = *rc::gen::arbitrary<int>() / 1000.0;
  RC_ASSERT(domain::read_number(domain::write_number(number)) == number);
  const base::Duration time = *inRange(0, 100000000) / 1000.0 * second;
  RC_ASSERT(domain::read_clock(domain::write_clock(time)) == time);
}

RC_GTEST_PROP(GymFilesLaw, GiveAValueOrErrorsForAnyBytes, ()) {
  const std::string noise = *rc::gen::string<std::string>();
  const std::string bytes =
      *rc::gen::element<std::string>("", "name\n", "{\"", "[[movement]]\n", "date,person,score\n") + noise;
  const auto said = [](const auto& result) { return result.has_value() || !result.error().message.empty(); };
  RC_ASSERT(said(read_people(bytes, "f", shipped_catalogue())));
  RC_ASSERT(said(read_hall(bytes, "f", shipped_catalogue())));
  RC_ASSERT(said(read_class(bytes, "f", "c", shipped_catalogue())));
  RC_ASSERT(said(read_house(bytes, "f", shipped_catalogue())));
  RC_ASSERT(said(read_scores(bytes, "f")));
  RC_ASSERT(said(read_catalogue({{"f", bytes}}, std::nullopt)));
}

}  // namespace
}  // namespace repwright::store
