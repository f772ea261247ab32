#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <functional>
#include <string>
#include <vector>

#include "api/hindsight_json.hpp"
#include "api/reasons_json.hpp"
#include "app/gym_learning.hpp"
#include "app/hindsight.hpp"
#include "app/known_people.hpp"
#include "app/next_test.hpp"
#include "app/person_record.hpp"
#include "board/read.hpp"
#include "cli/commands.hpp"
#include "cli/inputs.hpp"
#include "cli/open_store.hpp"
#include "cli/say.hpp"
#include "sheets/reasons_text.hpp"

namespace repwright::cli {
namespace {

using app::GymLearning;
using app::HindsightRow;

void tell_progress(int done, int of) {
  std::fprintf(stderr, "\r%d of %d sessions%s", done, of, done == of ? "\n" : "");
}

/// Today, or the day of the gym's last class where that is later: a gym that is planned ahead, as the demo
/// is, has scores of days that only it has seen.
std::chrono::sys_days today_of(const app::OpenGym& gym) {
  auto day = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
  for (const auto& [id, gym_class] : gym.classes)
    if (gym_class.date) day = std::max(day, std::chrono::sys_days{*gym_class.date});
  return day;
}

base::Result<GymLearning> learned(const LearnOptions& options, const app::OpenGym& gym) {
  const bool terminal = isatty(STDERR_FILENO) != 0;
  return app::learn_gym(gym, {.runs = options.runs,
                              .seed = options.seed,
                              .threads = options.threads,
                              .today = today_of(gym),
                              .progress = terminal ? tell_progress : std::function<void(int, int)>{}});
}

base::Result<app::OpenGym> gym_of(const LearnOptions& options) {
  auto store = open_store(options.gym);
  if (!store) return tl::unexpected(store.error());
  return load_gym(**store);
}

void tell_notes(const std::vector<std::string>& notes) {
  constexpr std::size_t most = 10;
  for (std::size_t i = 0; i < std::min(most, notes.size()); ++i) remark(fmt::format("note: {}\n", notes[i]));
  if (notes.size() > most) remark(fmt::format("note: and {} more\n", notes.size() - most));
}

/// In whole per cent; nothing is never less than nothing.
double whole_percent(double share) {
  return std::round(100 * share) + 0.0;
}

/// By how much the scores moved what the marks told, in a coach's words.
std::string person_line(const std::string& name, const app::LearnedPerson& person,
                        const body::Constants& constants) {
  if (person.scores == 0) return fmt::format("{:<28} no score to learn from\n", name);
  const body::Body before = body::median(person.by_marks, constants);
  const body::Body after = body::median(person.now, constants);
  const auto change = [](double from, double to) { return whole_percent(to / from - 1); };
  const auto narrower = [&](body::Parameter parameter) {
    const auto i = body::index_of(parameter);
    return whole_percent(1 - std::sqrt(person.now.parameters.covariance.at(i).at(i) /
                                       person.by_marks.parameters.covariance.at(i).at(i)));
  };
  const auto pull = static_cast<std::size_t>(body::Group::Pull);
  return fmt::format("{:<28} {:>6} {:>+8.0f} % {:>+9.0f} % {:>+9.0f} % {:>6.0f} to {:<4.0f} {:>6.0f} %\n",
                     name, person.scores, change(before.critical_speed, after.critical_speed),
                     change(before.best_set[0], after.best_set[0]),
                     change(before.best_set[2], after.best_set[2]), std::max(0.0, before.best_set.at(pull)),
                     std::max(0.0, after.best_set.at(pull)), narrower(body::Parameter::CriticalSpeed));
}

std::string row_line(const HindsightRow& row) {
  std::string line = fmt::format("{:<28} {:>6} {:>+7.0f} % {:>6.0f} % {:>9.0f} %", row.of, row.scores,
                                 whole_percent(row.bias), 100 * row.median_error, 100 * row.held);
  if (row.compared > 0)
    line += fmt::format(" {:>7} {:>9.0f} % {:>9.0f} % {:>9.0f} %", row.compared, 100 * row.forecast_error,
                        100 * row.last_error, 100 * row.group_error);
  return line + "\n";
}

std::string table(const char* title, const std::vector<HindsightRow>& rows) {
  std::string out =
      fmt::format("\n{:<28} {:>6} {:>9} {:>8} {:>11} {:>7} {:>11} {:>11} {:>11}\n", title, "scores", "bias",
                  "error", "in range", "again", "forecast", "last score", "group");
  for (const HindsightRow& row : rows) out += row_line(row);
  return out;
}

/// The text of one of the gym's boards, else of a file.
base::Result<BoardText> board_of(const app::OpenGym& gym, const std::string& board) {
  const auto known = gym.knowledge.boards.find(board);
  if (known != gym.knowledge.boards.end()) return BoardText{board, known->second};
  return load_board(board);
}

/// Which tests would tell most of a person, alone on the floor with that board.
base::Result<domain::TestOffers> offers_for(const LearnOptions& options, const app::OpenGym& gym,
                                            const app::GymLearning& learning) {
  const auto person = app::person_named(gym.people, options.next.front());
  if (!person) return tl::unexpected(person.error());
  const auto board = board_of(gym, options.next.back());
  if (!board) return tl::unexpected(board.error());
  const board::Reading reading = board::read(board->text, gym.knowledge.catalogue, gym.knowledge.house);
  const std::vector<domain::Person> alone{*person};
  const domain::GymClass no_class;
  return app::next_tests({.reading = reading,
                          .gym = gym.knowledge,
                          .people = alone,
                          .gym_class = no_class,
                          .heads = {},
                          .seed = {options.seed},
                          .runs = std::max(200, options.runs),
                          .threads = options.threads,
                          .stop = {},
                          .known = app::known_on(gym, learning, today_of(gym)).bodies},
                         person->id);
}

}  // namespace

int run_learn(const LearnOptions& options) {
  const auto gym = gym_of(options);
  if (!gym) return refuse(gym.error());
  const auto learning = learned(options, *gym);
  if (!learning) return refuse(learning.error());
  tell_notes(learning->notes);
  if (!options.next.empty()) {
    const auto offers = offers_for(options, *gym, *learning);
    if (!offers) return refuse(offers.error());
    say(options.json ? api::tests_json(*offers) : sheets::tests_text(*offers));
    return 0;
  }
  std::string out = fmt::format("{:<28} {:>6} {:>10} {:>11} {:>11} {:>13} {:>8}\n", "What the scores taught",
                                "scores", "run", "push-up", "squat", "pull-ups", "surer");
  for (std::size_t p = 0; p < learning->people.size(); ++p)
    out += person_line(gym->people[p].name, learning->people[p], gym->knowledge.constants);
  say(out);
  return 0;
}

int run_hindsight(const LearnOptions& options) {
  const auto gym = gym_of(options);
  if (!gym) return refuse(gym.error());
  const auto learning = learned(options, *gym);
  if (!learning) return refuse(learning.error());
  tell_notes(learning->notes);
  const app::Hindsight seen = app::hindsight(learning->forecasts, gym->people);
  if (options.json) {
    say(api::hindsight_json(seen));
    return 0;
  }
  if (seen.all.scores == 0)
    return refuse({base::ErrorCode::Invalid, options.gym + ": no score that had a forecast"});
  const std::string out =
      "How far the forecasts were off, each made from what was known the day before.\n"
      "Errors are middle ones; the last three columns are of scores in a piece done before: the forecast,\n"
      "the person's last score as the guess, and the middle of everybody's earlier scores.\n" +
      table("", {seen.all}) + table("By scores seen", seen.by_count) + table("By board", seen.by_board) +
      table("By person", seen.by_person);
  say(out);
  return 0;
}

}  // namespace repwright::cli
