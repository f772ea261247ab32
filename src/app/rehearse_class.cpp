#include "app/rehearse_class.hpp"

#include <algorithm>
#include <limits>
#include <utility>

#include "app/hall_notes.hpp"
#include "app/parallel.hpp"
#include "app/rehearse_fitted.hpp"
#include "app/who_comes.hpp"
#include "body/knowledge.hpp"
#include "rehearsal/findings.hpp"
#include "rehearsal/findings_intent.hpp"
#include "rehearsal/luck.hpp"
#include "rehearsal/place_table.hpp"
#include "rehearsal/rehearse.hpp"
#include "rehearsal/write_script.hpp"

namespace repwright::app {
namespace {

bool has_work(const domain::Block& block) {
  return !block.items.empty() || !block.slots.empty() || std::ranges::any_of(block.children, has_work);
}

std::vector<rehearsal::History> history_of(const std::vector<domain::Person>& people,
                                           const ClassRequest& request) {
  std::vector<rehearsal::History> histories;
  for (const domain::Person& person : people) {
    const auto known = request.history.find(person.id);
    histories.push_back(known == request.history.end() ? rehearsal::History{} : known->second);
  }
  return histories;
}

int line_of(const board::Reading& reading, domain::StepId step) {
  const auto index = static_cast<std::size_t>(step.index);
  return step.index >= 0 && index < reading.steps.size() ? reading.steps[index].line : 0;
}

/// Lines of the text where so far only steps of the board are named.
void fill_in_lines(domain::Rehearsal& rehearsal, const board::Reading& reading) {
  for (domain::PersonOutcome& person : rehearsal.people)
    for (domain::PieceOutcome& piece : person.pieces)
      for (domain::StepTrace& step : piece.steps) step.line = line_of(reading, step.step);
  for (domain::Finding& finding : rehearsal.findings)
    if (finding.step) finding.line = line_of(reading, *finding.step);
}

void fill_in_names(domain::Rehearsal& rehearsal, const GymKnowledge& gym) {
  for (domain::PlaceUse& use : rehearsal.places) {
    const auto route = std::ranges::find(gym.hall.routes, use.place.text,
                                         [](const domain::Route& known) { return known.id.text; });
    if (route != gym.hall.routes.end())
      use.name = route->name;
    else if (const domain::Equipment* equipment = gym.catalogue.find(use.place))
      use.name = equipment->name;
  }
}

/// How many people a finding is about; the whole class, and the hall that does not hold it, come before any
/// of its people.
std::size_t reach(const domain::Finding& finding) {
  const bool everybody = finding.kind == domain::FindingKind::OverClass ||
                         finding.kind == domain::FindingKind::NobodyFinishes ||
                         (finding.kind == domain::FindingKind::HallTooFull &&
                          finding.severity == domain::FindingSeverity::Problem);
  return everybody ? std::numeric_limits<std::size_t>::max() : finding.people.size();
}

/// What was seen while the scripts were written and what the runs showed: the gravest first, then what most
/// people meet.
std::vector<domain::Finding> findings_of(const rehearsal::WrittenFloor& floor,
                                         const rehearsal::FindingRequest& request,
                                         const rehearsal::IntentRequest& meant) {
  std::vector<domain::Finding> findings = rehearsal::find(request);
  rehearsal::find_missed_intents(meant, findings);
  findings.insert(findings.end(), floor.findings.begin(), floor.findings.end());
  std::ranges::stable_sort(findings, [](const domain::Finding& a, const domain::Finding& b) {
    return a.severity != b.severity ? a.severity > b.severity : reach(a) > reach(b);
  });
  return findings;
}

/// Adds the findings, and what each person did.
void add_findings(ClassRehearsal& result, const rehearsal::WrittenFloor& floor,
                  const std::vector<domain::Person>& people, const ClassRequest& request) {
  const rehearsal::FindingRequest seen{.rehearsal = result.rehearsal,
                                       .plan = floor.plan,
                                       .timetable = result.timetable,
                                       .catalogue = request.gym.catalogue,
                                       .hall = request.gym.hall,
                                       .history = history_of(people, request)};
  result.rehearsal.findings =
      findings_of(floor, seen, {result.rehearsal, result.timetable, request.reading.board});
  for (std::size_t p = 0; p < people.size(); ++p) result.reps.push_back(rehearsal::reps_by_group(seen, p));
}

using PacesOf = std::map<domain::BlockId, OwnPace>;

const PacesOf* paces_of(const Gathered& gathered, std::size_t person) {
  const auto own = gathered.paces.find(gathered.people[person].id);
  return own == gathered.paces.end() ? nullptr : &own->second;
}

/// The number that the body of a run is drawn by: the run's own, or the first of some behind it whose body
/// could have done what the person has done.
std::uint64_t drawn_run(const ClassRequest& request, const Gathered& gathered, std::size_t person, int run) {
  const auto first = static_cast<std::uint64_t>(run);
  const PacesOf* paces = paces_of(gathered, person);
  if (paces == nullptr) return first;
  constexpr std::uint64_t attempts = 16, far_behind = std::uint64_t{1} << 40U;
  const std::uint64_t key = rehearsal::person_key(gathered.people[person].id);
  for (std::uint64_t attempt = 0; attempt < attempts; ++attempt) {
    const std::uint64_t number = first + attempt * far_behind;
    body::Body body =
        body::draw(gathered.estimates[person], request.seed, number, key, request.gym.constants);
    body.knack = 0;  // what they have done tells of it
    const auto possible = [&](const auto& pace) {
      return pace.second.possible_for(body, request.gym.constants);
    };
    if (std::ranges::all_of(*paces, possible)) return number;
  }
  return first;
}

/// How much longer than their body tells a line of that piece takes one of those who were gathered; nothing
/// if they are not known to have done it.
std::optional<double> stretch_of(const ClassRequest& request, const Gathered& gathered, domain::BlockId piece,
                                 std::size_t person, int run) {
  const PacesOf* paces = paces_of(gathered, person);
  if (paces == nullptr) return std::nullopt;
  const auto pace = paces->find(piece);
  if (pace == paces->end()) return std::nullopt;
  if (run == rehearsal::in_the_middle) return pace->second.stretch({}, 0);
  const std::uint64_t key = rehearsal::person_key(gathered.people[person].id);
  const std::uint64_t number = drawn_run(request, gathered, person, run);
  // Behind the draws that the body takes.
  const std::uint64_t next = body::parameter_count + static_cast<std::uint64_t>(piece.index);
  const double own_luck = base::normal_quantile(
      base::unit_interval(base::Stream(request.seed, number, key, base::Purpose::Body).bits_at(next)));
  return pace->second.stretch(body::normals_behind(request.seed, number, key), own_luck);
}

}  // namespace

base::Result<Gathered> gather(const ClassRequest& request) {
  if (std::ranges::none_of(request.reading.board.blocks, has_work))
    return base::failure(base::ErrorCode::Invalid,
                         "the board has no work to rehearse: chalk at least one line such as `10 push-ups`");
  auto attendance = who_comes(request.people, request.gym_class, request.heads);
  if (!attendance) return tl::unexpected(attendance.error());
  Gathered gathered{std::move(attendance->people), std::move(attendance->late), {}, {}};
  for (const domain::Person& person : gathered.people) {
    const auto known = request.known.find(person.id);
    gathered.estimates.push_back(known != request.known.end()
                                     ? known->second
                                     : body::estimate(person, request.gym.catalogue, request.gym.constants));
  }
  gathered.paces = own_paces(request, gathered);
  return gathered;
}

body::Body drawn_body(const ClassRequest& request, const Gathered& gathered, std::size_t person, int run) {
  return body::draw(gathered.estimates[person], request.seed, drawn_run(request, gathered, person, run),
                    rehearsal::person_key(gathered.people[person].id), request.gym.constants);
}

rehearsal::Cast cast_of(const ClassRequest& request, const Gathered& gathered) {
  const std::vector<domain::Person>& people = gathered.people;
  const std::vector<body::BodyEstimate>& estimates = gathered.estimates;
  rehearsal::Cast cast;
  for (std::size_t p = 0; p < people.size(); ++p) {
    cast.ids.push_back(people[p].id);
    cast.names.push_back(people[p].name);
    cast.median.push_back(body::median(estimates[p], request.gym.constants));
  }
  cast.drawn = [&request, &gathered](int person, int run) {
    return drawn_body(request, gathered, static_cast<std::size_t>(person), run);
  };
  if (request.bodies)
    cast.drawn = [&people, &bodies = request.bodies](int person, int run) {
      return bodies(people[static_cast<std::size_t>(person)], run);
    };
  if (!gathered.paces.empty())
    cast.stretch = [&request, &gathered](domain::BlockId piece, int person, int run) {
      return stretch_of(request, gathered, piece, static_cast<std::size_t>(person), run);
    };
  if (request.gym_class.weather.wbgt_c)
    cast.conditions = body::heat_factor(*request.gym_class.weather.wbgt_c);
  return cast;
}

domain::FittedBoard plain_fit_of(const ClassRequest& request, const Gathered& gathered) {
  return rehearsal::plain_fit({.board = request.reading.board,
                               .catalogue = request.gym.catalogue,
                               .house = request.gym.house,
                               .people = gathered.people,
                               .bodies = cast_of(request, gathered).median,
                               .constants = request.gym.constants,
                               .date = request.gym_class.date,
                               .rule = request.rule,
                               .hall = &request.gym.hall,
                               .gone = rehearsal::kinds_gone(request.gym.hall, request.gym_class),
                               .said = &request.said});
}

base::Result<ClassRehearsal> rehearse_class(const ClassRequest& request) {
  const auto gathered = gather(request);
  if (!gathered) return tl::unexpected(gathered.error());
  return rehearse_class(request, *gathered);
}

base::Result<ClassRehearsal> rehearse_class(const ClassRequest& request, const Gathered& gathered) {
  return rehearse_fitted(request, gathered, plain_fit_of(request, gathered));
}

base::Result<ClassRehearsal> rehearse_fitted(const ClassRequest& request, const Gathered& gathered,
                                             domain::FittedBoard fitted) {
  domain::GymClass gym_class = request.gym_class;
  gym_class.arrivals.clear();
  for (std::size_t p = 0; p < gathered.people.size(); ++p)
    gym_class.arrivals.push_back({gathered.people[p].id, gathered.late[p]});
  const rehearsal::Cast cast = cast_of(request, gathered);

  ClassRehearsal result;
  result.timetable = timetable::lay_out(request.reading.board, gym_class,
                                        {.last_rest_counts = request.gym.house.last_rest_counts});
  result.fitted = std::move(fitted);
  const rehearsal::WriteRequest to_write{
      .fitted = result.fitted,
      .timetable = result.timetable,
      .catalogue = request.gym.catalogue,
      .hall = request.gym.hall,
      .house = request.gym.house,
      .gym_class = gym_class,
      .people = gathered.people,
      .bodies = cast.median,
      .constants = request.gym.constants,
      .helped_set = request.rule == rehearsal::FitRule::AsWritten ? 0 : rehearsal::usual_help};
  const rehearsal::WrittenFloor floor = rehearsal::write_scripts(to_write);
  result.kit = rehearsal::kit_demand(to_write);
  auto rehearsed =
      rehearsal::rehearse({.plan = floor.plan,
                           .timetable = result.timetable,
                           .constants = request.gym.constants,
                           .cast = cast,
                           .seed = request.seed,
                           .runs = request.runs,
                           .keep = request.keep_draws ? rehearsal::Keep::Draws : rehearsal::Keep::Sums,
                           .stop = request.stop},
                          in_parallel(request.threads));
  if (!rehearsed) return tl::unexpected(rehearsed.error());
  result.rehearsal = std::move(*rehearsed);
  fill_in_names(result.rehearsal, request.gym);
  add_findings(result, floor, gathered.people, request);
  result.rehearsal.notes.insert(result.rehearsal.notes.end(), floor.notes.begin(), floor.notes.end());
  const std::vector<std::string> of_hall = hall_notes(request.gym.hall);
  result.rehearsal.notes.insert(result.rehearsal.notes.end(), of_hall.begin(), of_hall.end());
  result.people = gathered.people;
  fill_in_lines(result.rehearsal, request.reading);
  return result;
}

}  // namespace repwright::app
