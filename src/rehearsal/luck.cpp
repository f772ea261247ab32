#include "rehearsal/luck.hpp"

#include <cmath>

#include "base/math.hpp"

namespace repwright::rehearsal {

namespace {

// Nobody's number: person keys are hashes, this is the key of the class as a whole.
constexpr std::uint64_t the_class = 0;
// A load moves less than a count: about 0.3 of the spread of the sets that it allows.
constexpr double load_share = 0.3;

struct Form {
  double critical = 1, capacity = 1, drive = 1;
};

Form draw_form(base::Stream stream) {
  const double first = stream.normal();
  const double second = stream.normal();
  const double third = stream.normal();
  const double mixed = form_correlation * first +
                       std::sqrt(1 - form_correlation * form_correlation) * second;
  return {base::exp(form_critical * first), base::exp(form_capacity * mixed), base::exp(form_drive * third)};
}

body::Body on_the_day(body::Body body, const Form& form, double haste) {
  for (double& best : body.best_set)
    if (best > 1) best *= form.capacity;
  for (double& best : body.best_lift) best *= 1 + load_share * (form.capacity - 1);
  body.cadence *= form.drive / haste;
  body.transition *= form.drive / haste;
  return body;
}

}  // namespace

std::uint64_t person_key(const domain::PersonId& id) {
  // FNV-1a: G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, RFC 9923.
  std::uint64_t hash = 0xcbf29ce484222325U;
  for (const char c : id.text) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
  return hash;
}

RunSetting even_day(const Cast& cast, const timetable::Timetable& timetable) {
  const std::size_t people = cast.median.size();
  return {.bodies = cast.median,
          .critical_factor = std::vector<double>(people, cast.conditions),
          .judge = std::vector<double>(people, 1.0),
          .targets = {},
          .box_factor = std::vector<double>(timetable.boxes.size(), 1.0),
          .luck = std::vector<std::optional<base::Stream>>(people)};
}

void draw_run(RunSetting& setting, const Cast& cast, const timetable::Timetable& timetable, base::Seed seed,
              std::uint64_t run, Bodies bodies) {
  base::Stream shared(seed, run, the_class, base::Purpose::Class);
  const double haste = shared.lognormal(class_spread);
  for (std::size_t b = 0; b < timetable.boxes.size(); ++b)
    if (timetable.boxes[b].kind == timetable::BoxKind::Briefing)
      setting.box_factor[b] = briefing_overrun * shared.lognormal(briefing_spread);
  for (std::size_t p = 0; p < cast.median.size(); ++p) {
    const std::uint64_t key = person_key(cast.ids[p]);
    const Form form = draw_form(base::Stream(seed, run, key, base::Purpose::Day));
    const body::Body body = bodies == Bodies::Drawn
                                ? cast.drawn(static_cast<int>(p), static_cast<int>(run))
                                : cast.median[p];
    setting.bodies[p] = on_the_day(body, form, haste);
    setting.critical_factor[p] = cast.conditions * form.critical * haste;
    setting.judge[p] = base::Stream(seed, run, key, base::Purpose::Judge).lognormal(judge_spread);
    setting.luck[p].emplace(seed, run, key, base::Purpose::Step);
  }
}

}  // namespace repwright::rehearsal
