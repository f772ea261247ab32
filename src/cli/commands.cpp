#include "cli/commands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <string>
#include <vector>

#include "api/reading_json.hpp"
#include "api/rehearsal_json.hpp"
#include "api/timetable_json.hpp"
#include "app/hour_class.hpp"
#include "app/person_record.hpp"
#include "app/rehearse_class.hpp"
#include "app/swaps.hpp"
#include "app/why.hpp"
#include "base/civil_date.hpp"
#include "board/read.hpp"
#include "board/tidy.hpp"
#include "board/words.hpp"
#include "cli/class_command.hpp"
#include "cli/say.hpp"
#include "sheets/hour_plan_text.hpp"
#include "sheets/reading_text.hpp"
#include "sheets/reasons_text.hpp"
#include "sheets/rehearsal_text.hpp"
#include "sheets/timetable_text.hpp"
#include "timetable/length.hpp"

namespace repwright::cli {
namespace {

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

/// Why the person of `--why` is forecast so; nothing if it was not asked.
base::Result<std::optional<domain::Why>> reasons_for(const ClassAsked& asked,
                                                     const app::ClassRequest& request,
                                                     const app::ClassRehearsal& rehearsed) {
  if (!asked.options.why) return std::nullopt;
  const auto person = app::person_named(rehearsed.people, *asked.options.why);
  if (!person) return tl::unexpected(person.error());
  auto told = app::why({request, rehearsed, asked.taught.learning, person->id});
  if (!told) return tl::unexpected(told.error());
  return std::optional(std::move(*told));
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
  return with_class(options, [](const ClassAsked& asked) {
    const timetable::Timetable planned =
        timetable::lay_out(asked.reading.board, asked.inputs.gym_class,
                           {.last_rest_counts = asked.inputs.gym.house.last_rest_counts});
    if (planned.boxes.empty())
      return refuse({base::ErrorCode::Invalid, asked.inputs.board.name + ": nothing on it takes time"});
    const bool people = !planned.pieces.empty() && (!asked.inputs.people.empty() || asked.options.heads);
    if (!people) {
      say(asked.options.json ? api::timetable_json(planned, {}) : sheets::timetable_text(planned));
      return fine;
    }
    const app::ClassRequest request = asked.request();
    const auto gathered = app::gather(request);
    if (!gathered) return refuse(gathered.error());
    const auto rehearsed = app::rehearse_class(request, *gathered);
    if (!rehearsed) return refuse(rehearsed.error());
    const auto hour = app::hour_class(request, *gathered, *rehearsed);
    if (!hour) return refuse(hour.error());
    say(asked.options.json
            ? api::timetable_json(planned, *hour)
            : sheets::timetable_text(planned) + "\nWith these people:\n" +
                  sheets::hour_text(rehearsed->rehearsal.timetable) + sheets::hour_plan_text(*hour));
    return fine;
  });
}

int run_rehearse(const ClassOptions& options) {
  return with_class(options, [](const ClassAsked& asked) {
    const app::ClassRequest request = asked.request();
    auto result = app::rehearse_class(request);
    if (!result) return refuse(result.error());
    const auto reasons = reasons_for(asked, request, *result);
    if (!reasons) return refuse(reasons.error());
    const ClassInputs& inputs = asked.inputs;
    domain::Rehearsal& rehearsal = result->rehearsal;
    rehearsal.notes.insert(rehearsal.notes.begin(), inputs.notes.begin(), inputs.notes.end());
    if (auto note = app::note_of(asked.taught.known, result->people); !note.empty())
      rehearsal.notes.push_back(std::move(note));
    if (asked.options.json) {
      say(api::rehearsal_json(rehearsal,
                              {asked.reading.board.title, timetable::fixed_length(asked.reading.board)},
                              *reasons ? &**reasons : nullptr));
    } else {
      say(sheets::rehearsal_text(
          rehearsal, {.title = asked.reading.board.title,
                      .when = when_words(inputs.gym_class),
                      .people = static_cast<int>(result->people.size()),
                      .swaps = app::swaps_of(result->fitted, inputs.gym.catalogue, result->people)}));
      if (*reasons) say(sheets::why_text(**reasons));
    }
    return fine;
  });
}

}  // namespace repwright::cli
