#include "rehearsal/luck.hpp"

#include "base/hash.hpp"
#include "body/day.hpp"

namespace repwright::rehearsal {

namespace {

// Keys of draws that belong to the class as a whole; those of people are hashes.
constexpr std::uint64_t the_coach = 1;

struct Draw {
  base::Seed seed;
  std::uint64_t run = 0;
  double shared = 1;  // the class factor
  Bodies bodies = Bodies::Drawn;
};

void draw_person(RunSetting& setting, const Cast& cast, std::size_t p, const Draw& draw) {
  const std::uint64_t key = person_key(cast.ids[p]);
  body::DayForm form = body::draw_day(draw.seed, draw.run, key);
  form.critical *= draw.shared;
  form.drive /= draw.shared;
  const bool drawn = draw.bodies == Bodies::Drawn;
  const body::Body body =
      drawn ? cast.drawn(static_cast<int>(p), static_cast<int>(draw.run)) : cast.median[p];
  setting.bodies[p] = body::on_day(body, form);
  setting.critical_factor[p] = cast.conditions * form.critical;
  setting.judge[p] = body::judge_factor(draw.seed, draw.run, key);
  setting.luck[p].emplace(draw.seed, draw.run, key, base::Purpose::Step);
}

void set_stretch(RunSetting& setting, const Cast& cast, const timetable::Timetable& timetable, int run) {
  if (!cast.stretch) return;
  setting.stretch.resize(timetable.pieces.size());
  for (std::size_t i = 0; i < timetable.pieces.size(); ++i) {
    setting.stretch[i].resize(cast.median.size());
    for (std::size_t p = 0; p < cast.median.size(); ++p)
      setting.stretch[i][p] = cast.stretch(timetable.pieces[i].block, static_cast<int>(p), run);
  }
}

}  // namespace

std::uint64_t person_key(const domain::PersonId& id) {
  return base::fnv1a(id.text);
}

RunSetting even_day(const Cast& cast, const timetable::Timetable& timetable) {
  const std::size_t people = cast.median.size();
  RunSetting setting{.bodies = cast.median,
                     .critical_factor = std::vector<double>(people, cast.conditions),
                     .judge = std::vector<double>(people, 1.0),
                     .targets = {},
                     .box_factor = std::vector<double>(timetable.boxes.size(), 1.0),
                     .luck = std::vector<std::optional<base::Stream>>(people)};
  set_stretch(setting, cast, timetable, in_the_middle);
  return setting;
}

void draw_run(RunSetting& setting, const Cast& cast, const timetable::Timetable& timetable, RunNumber number,
              Bodies bodies) {
  const auto [seed, run] = number;
  const double shared = body::class_factor(seed, run);
  base::Stream talk(seed, run, the_coach, base::Purpose::Class);
  for (std::size_t b = 0; b < timetable.boxes.size(); ++b)
    if (timetable.boxes[b].kind == timetable::BoxKind::Briefing)
      setting.box_factor[b] = briefing_overrun * talk.lognormal(briefing_spread);
  set_stretch(setting, cast, timetable, bodies == Bodies::Drawn ? static_cast<int>(run) : in_the_middle);
  const Draw draw{.seed = seed, .run = run, .shared = shared, .bodies = bodies};
  for (std::size_t p = 0; p < cast.median.size(); ++p) draw_person(setting, cast, p, draw);
}

}  // namespace repwright::rehearsal
