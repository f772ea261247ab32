#include "cli/commands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <string>
#include <string_view>
#include <vector>

#include "api/reading_json.hpp"
#include "api/rehearsal_json.hpp"
#include "api/repairs_json.hpp"
#include "api/timetable_json.hpp"
#include "app/gym_learning.hpp"
#include "app/known_people.hpp"
#include "app/lately.hpp"
#include "app/person_record.hpp"
#include "app/rehearse_class.hpp"
#include "app/repair_class.hpp"
#include "app/swaps.hpp"
#include "app/why.hpp"
#include "base/civil_date.hpp"
#include "board/read.hpp"
#include "board/tidy.hpp"
#include "board/words.hpp"
#include "cli/inputs.hpp"
#include "cli/say.hpp"
#include "sheets/diagnostics_text.hpp"
#include "sheets/reading_text.hpp"
#include "sheets/reasons_text.hpp"
#include "sheets/rehearsal_text.hpp"
#include "sheets/repairs_text.hpp"
#include "sheets/timetable_text.hpp"
#include "timetable/length.hpp"

namespace repwright::cli {
namespace {

constexpr int fine = 0;
constexpr int input_at_fault = 1;

bool has_errors(const board::Reading& reading) {
  return std::ranges::any_of(reading.diagnostics, [](const domain::Diagnostic& diagnostic) {
    return diagnostic.severity == domain::Severity::Error;
  });
}

std::string remarks_of(const BoardText& board, const board::Reading& reading) {
  return sheets::diagnostics_text({board.name, board.text}, reading.diagnostics);
}

/// "Saturday 15 May 2027, 09:00"; empty if the class has no date.
std::string when_words(const domain::GymClass& gym_class) {
  if (!gym_class.date) return "";
  static constexpr std::array days{"Sunday",   "Monday", "Tuesday", "Wednesday",
                                   "Thursday", "Friday", "Saturday"};
  static constexpr std::array months{"January", "February", "March",     "April",   "May",      "June",
                                     "July",    "August",   "September", "October", "November", "December"};
  const auto date = *gym_class.date;
  const std::chrono::weekday day(std::chrono::sys_days{date});
  std::string words =
      fmt::format("{} {} {} {}", days.at(day.c_encoding()), static_cast<unsigned>(date.day()),
                  months.at(static_cast<unsigned>(date.month()) - 1), static_cast<int>(date.year()));
  if (gym_class.start_minute) words += ", " + base::format_time_of_day(*gym_class.start_minute);
  return words;
}

/// Nothing is known before a class without a day.
std::map<domain::PersonId, rehearsal::History> history_of(const ClassInputs& inputs) {
  const auto& day = inputs.gym_class.date;
  if (!day) return {};
  return app::lately(inputs.gym, inputs.people, *day);
}

/// What the scores of the gym have taught of those who may come, from before the class.
struct Taught {
  app::GymLearning learning{};
  std::map<domain::PersonId, body::BodyEstimate> known{};
};

base::Result<Taught> taught_by_scores(const ClassOptions& options, const ClassInputs& inputs) {
  if (inputs.gym.scores.empty()) return Taught{};
  const app::OpenGym gym{.knowledge = inputs.gym, .people = inputs.people, .classes = {}, .versions = {}};
  app::LearnRequest request{.seed = options.seed, .threads = options.threads};
  const auto& day = inputs.gym_class.date;
  if (day) request.today = std::chrono::sys_days{*day} - std::chrono::days(1);
  for (const domain::PersonId& id : inputs.gym_class.booked) request.of.insert(id);
  for (const domain::Arrival& arrival : inputs.gym_class.arrivals) request.of.insert(arrival.person);
  auto learning = app::learn_gym(gym, request);
  if (!learning) return tl::unexpected(learning.error());
  std::chrono::sys_days on = day ? std::chrono::sys_days{*day} : std::chrono::sys_days{};
  for (const app::LearnedPerson& person : learning->people) on = std::max(on, person.until);
  Taught taught{.learning = {}, .known = app::known_on(gym, *learning, on)};
  taught.learning = std::move(*learning);
  return taught;
}

std::string taught_note(const Taught& taught) {
  const std::size_t people = taught.known.size();
  return people == 1
             ? "the scores of one person have taught: they are forecast with them"
             : fmt::format("the scores of {} people have taught: they are forecast with them", people);
}

app::ClassRequest request_of(const ClassOptions& options, const ClassInputs& inputs,
                             const board::Reading& reading, const Taught& taught) {
  return {.reading = reading,
          .gym = inputs.gym,
          .people = inputs.people,
          .gym_class = inputs.gym_class,
          .heads = options.heads,
          .rule = options.as_written ? rehearsal::FitRule::AsWritten : rehearsal::FitRule::WithinLimits,
          .seed = {options.seed},
          .runs = options.runs,
          .threads = options.threads,
          .keep_draws = options.draws,
          .stop = {},
          .known = taught.known,
          .history = history_of(inputs)};
}

}  // namespace

int run_read(const ReadOptions& options) {
  const auto inputs = load_reading(options);
  if (!inputs) return refuse(inputs.error());
  const board::Reading reading = board::read(inputs->board.text, inputs->catalogue, inputs->house);
  const std::vector<std::string> sentences = board::in_words(reading.board, inputs->catalogue, inputs->house);
  if (options.json) {
    say(api::reading_json(reading, inputs->board.text, sentences));
    remark(remarks_of(inputs->board, reading));
  } else {
    say(sheets::reading_text({reading.board.title, sentences, timetable::fixed_length(reading.board)}));
    if (!reading.diagnostics.empty()) say("\n" + remarks_of(inputs->board, reading));
  }
  return has_errors(reading) ? input_at_fault : fine;
}

int run_tidy(const ReadOptions& options) {
  const auto inputs = load_reading(options);
  if (!inputs) return refuse(inputs.error());
  const board::Reading reading = board::read(inputs->board.text, inputs->catalogue, inputs->house);
  say(board::tidy(reading.board, inputs->catalogue, inputs->house));
  remark(remarks_of(inputs->board, reading));
  return has_errors(reading) ? input_at_fault : fine;
}

int run_timetable(const ClassOptions& options) {
  const auto inputs = load_class(options);
  if (!inputs) return refuse(inputs.error());
  const board::Reading reading = board::read(inputs->board.text, inputs->gym.catalogue, inputs->gym.house);
  remark(remarks_of(inputs->board, reading));
  if (has_errors(reading)) return input_at_fault;
  const timetable::Timetable planned = timetable::lay_out(
      reading.board, inputs->gym_class, {.last_rest_counts = inputs->gym.house.last_rest_counts});
  if (planned.boxes.empty())
    return refuse({base::ErrorCode::Invalid, inputs->board.name + ": nothing on it takes time"});
  if (options.json) {
    say(api::timetable_json(planned));
    return fine;
  }
  say(sheets::timetable_text(planned));
  if (inputs->people.empty() && !options.heads) return fine;
  const auto taught = taught_by_scores(options, *inputs);
  if (!taught) return refuse(taught.error());
  const auto result = app::rehearse_class(request_of(options, *inputs, reading, *taught));
  if (!result) return refuse(result.error());
  say("\nWith these people:\n" + sheets::hour_text(result->rehearsal.timetable));
  return fine;
}

int run_rehearse(const ClassOptions& options) {
  const auto inputs = load_class(options);
  if (!inputs) return refuse(inputs.error());
  const board::Reading reading = board::read(inputs->board.text, inputs->gym.catalogue, inputs->gym.house);
  remark(remarks_of(inputs->board, reading));
  if (has_errors(reading)) return input_at_fault;
  const auto taught = taught_by_scores(options, *inputs);
  if (!taught) return refuse(taught.error());
  const app::ClassRequest request = request_of(options, *inputs, reading, *taught);
  auto result = app::rehearse_class(request);
  if (!result) return refuse(result.error());
  std::optional<domain::Why> reasons;
  if (options.why) {
    auto told = app::person_named(inputs->people, *options.why).and_then([&](const domain::Person& person) {
      return app::why({request, *result, taught->learning, person.id});
    });
    if (!told) return refuse(told.error());
    reasons = std::move(*told);
  }
  domain::Rehearsal& rehearsal = result->rehearsal;
  rehearsal.notes.insert(rehearsal.notes.begin(), inputs->notes.begin(), inputs->notes.end());
  if (!taught->known.empty()) rehearsal.notes.push_back(taught_note(*taught));
  if (options.json) {
    say(api::rehearsal_json(rehearsal, {reading.board.title, timetable::fixed_length(reading.board)},
                            reasons ? &*reasons : nullptr));
  } else {
    say(sheets::rehearsal_text(
        rehearsal, {.title = reading.board.title,
                    .when = when_words(inputs->gym_class),
                    .people = static_cast<int>(result->people.size()),
                    .swaps = app::swaps_of(result->fitted, inputs->gym.catalogue, result->people)}));
    if (reasons) say(sheets::why_text(*reasons));
  }
  return fine;
}

int run_repairs(const ClassOptions& options) {
  const auto inputs = load_class(options);
  if (!inputs) return refuse(inputs.error());
  const board::Reading reading = board::read(inputs->board.text, inputs->gym.catalogue, inputs->gym.house);
  remark(remarks_of(inputs->board, reading));
  if (has_errors(reading)) return input_at_fault;
  const auto taught = taught_by_scores(options, *inputs);
  if (!taught) return refuse(taught.error());
  const auto plan = app::repair_class(request_of(options, *inputs, reading, *taught), inputs->board.text);
  if (!plan) return refuse(plan.error());
  say(options.json ? api::repairs_json(*plan) : sheets::repairs_text(*plan));
  return fine;
}

}  // namespace repwright::cli
