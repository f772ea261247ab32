#include "rehearsal/luck.hpp"

#include "body/day.hpp"

namespace repwright::rehearsal {

namespace {

// Keys of draws that belong to the class as a whole; those of people are hashes.
constexpr std::uint64_t the_coach = 1;

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
  const double shared = body::class_factor(seed, run);
  base::Stream talk(seed, run, the_coach, base::Purpose::Class);
  for (std::size_t b = 0; b < timetable.boxes.size(); ++b)
    if (timetable.boxes[b].kind == timetable::BoxKind::Briefing)
      setting.box_factor[b] = briefing_overrun * talk.lognormal(briefing_spread);
  for (std::size_t p = 0; p < cast.median.size(); ++p) {
    const std::uint64_t key = person_key(cast.ids[p]);
    body::DayForm form = body::draw_day(seed, run, key);
    form.critical *= shared;
    form.drive /= shared;
    setting.bodies[p] = bodies == Bodies::Drawn
                            ? body::on_day(cast.drawn(static_cast<int>(p), static_cast<int>(run)), form)
                            : body::on_day(cast.median[p], form);
    setting.critical_factor[p] = cast.conditions * form.critical;
    setting.judge[p] = body::judge_factor(seed, run, key);
    setting.luck[p].emplace(seed, run, key, base::Purpose::Step);
  }
}

}  // namespace repwright::rehearsal
