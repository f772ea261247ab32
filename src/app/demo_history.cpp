#include "app/demo_history.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "app/past_session.hpp"
#include "base/civil_date.hpp"
#include "base/clock_text.hpp"
#include "body/estimate.hpp"
#include "rehearsal/luck.hpp"

namespace repwright::app {
namespace {

using domain::DayFlag;
using domain::DemoPast;
using domain::Measure;
using domain::PastFlag;
using domain::PastSession;
using domain::PieceOutcome;
using domain::ScoreEntry;

/// Runs of the class that a flagged day is slower by: common practice, no source.
constexpr double ill_share = 1.35, easy_share = 1.15, hot_share = 1.06;

std::uint64_t day_number(std::chrono::year_month_day date) {
  return static_cast<std::uint64_t>(std::chrono::sys_days(date).time_since_epoch().count());
}

bool comes(const DemoPast& past, const domain::Person& person, std::chrono::year_month_day date) {
  const auto joined = past.joined.find(person.id);
  if (joined != past.joined.end() && date < joined->second) return false;
  if (std::ranges::find(person.attends, base::weekday_name(date)) == person.attends.end()) return false;
  const auto rate = past.show_rate.find(person.id);
  base::Stream luck(past.seed, day_number(date), rehearsal::person_key(person.id), base::Purpose::Attendance);
  return luck.uniform() < (rate == past.show_rate.end() ? 1.0 : rate->second);
}

DayFlag flag_of(const DemoPast& past, const domain::Person& person, std::chrono::year_month_day date) {
  for (const PastFlag& flag : past.flagged)
    if (flag.date == date && flag.person == person.id) return flag.flag;
  return DayFlag::None;
}

double slower_by(DayFlag flag) {
  switch (flag) {
    case DayFlag::Ill:
      return ill_share;
    case DayFlag::Easy:
      return easy_share;
    case DayFlag::Hot:
      return hot_share;
    case DayFlag::None:
      return 1;
  }
  return 1;
}

/// The score as a coach would write it down.
std::string written(const PieceOutcome& piece, double slower) {
  const double less = piece.score.mean / slower;
  switch (piece.measure) {
    case Measure::Seconds:
      if (piece.capped > 0) return "cap";
      return base::format_clock(std::round(piece.score.mean * slower) * base::second);
    case Measure::Reps: {
      const double round = piece.reps_per_round;
      if (!piece.rounds || round < 1) return fmt::format("{:.0f}", std::floor(less));
      const double full = std::floor(less / round);
      return fmt::format("{:.0f}+{:.0f}", full, std::floor(less - full * round));
    }
    case Measure::Kilograms:
      return fmt::format("{:.1f} kg", less);
    case Measure::Metres:
      return fmt::format("{:.0f} m", less);
    case Measure::Kilocalories:
      return fmt::format("{:.0f} kcal", less);
  }
  return {};
}

/// Most people say 7 to 9 after a scored piece; on an easy day less.
double effort_said(const DemoPast& past, const ScoreEntry& entry) {
  base::Stream luck(past.seed, day_number(entry.date), rehearsal::person_key(entry.person),
                    base::Purpose::Demo);
  const double middle = entry.flag == DayFlag::Easy ? 5.0 : 7.8;
  return std::clamp(std::round(middle + 0.8 * luck.normal()), 1.0, 10.0);
}

void write_down(const PastSession& session, const DemoPast& past, const ClassRehearsal& played,
                DemoHistory& history) {
  for (std::size_t p = 0; p < played.people.size(); ++p) {
    const domain::PersonOutcome& outcome = played.rehearsal.people[p];
    if (outcome.pieces.empty()) continue;
    ScoreEntry entry{.date = session.date,
                     .class_id = session.class_id,
                     .board_id = session.board_id,
                     .piece = {},
                     .person = outcome.person,
                     .text = {},
                     .value = {},
                     .version = versions_done(played.fitted.people[p]),
                     .effort = std::nullopt,
                     .flag = flag_of(past, played.people[p], session.date),
                     .entered_by = "coach",
                     .key = {}};
    entry.effort = effort_said(past, entry);
    for (const PieceOutcome& piece : outcome.pieces) {
      entry.piece = outcome.pieces.size() > 1
                        ? played.rehearsal.piece_names[static_cast<std::size_t>(piece.piece)]
                        : "";
      entry.text = written(piece, slower_by(entry.flag));
      entry.value = domain::read_score(entry.text);
      history.scores.push_back(entry);
    }
  }
}

}  // namespace

base::Result<DemoHistory> demo_history(const DemoPast& past, const GymKnowledge& gym,
                                       const std::vector<domain::Person>& people) {
  DemoHistory history;
  for (const domain::Person& person : people)
    history.hidden.push_back(body::draw(body::estimate(person, gym.catalogue, gym.constants), past.seed, 0,
                                        rehearsal::person_key(person.id), gym.constants));
  const auto hidden_body = [&](const domain::Person& person, int) {
    const auto at = std::ranges::find(people, person.id, &domain::Person::id);
    return history.hidden[static_cast<std::size_t>(at - people.begin())];
  };
  for (const PastSession& session : past.sessions) {
    domain::GymClass gym_class;
    gym_class.id = session.class_id;
    gym_class.date = session.date;
    for (const domain::Person& person : people)
      if (comes(past, person, session.date)) gym_class.booked.push_back(person.id);
    if (gym_class.booked.empty()) continue;
    const board::Reading reading = board::read(session.board_text, gym.catalogue, gym.house);
    const auto played = rehearse_class({.reading = reading,
                                        .gym = gym,
                                        .people = people,
                                        .gym_class = gym_class,
                                        .heads = {},
                                        .seed = {past.seed.value + day_number(session.date)},
                                        .runs = 1,
                                        .threads = 1,
                                        .stop = {},
                                        .bodies = hidden_body});
    if (!played) return base::failure(played.error().code, session.board_id + ": " + played.error().message);
    write_down(session, past, *played, history);
  }
  return history;
}

}  // namespace repwright::app
