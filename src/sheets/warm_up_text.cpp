#include "sheets/warm_up_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <vector>

#include "sheets/clock.hpp"
#include "sheets/page.hpp"
#include "sheets/rehearsal_text.hpp"

namespace repwright::sheets {
namespace {

using domain::WarmUp;
using domain::WarmUpNeed;
using domain::WarmUpPlan;
using domain::WarmUpStep;

std::string clock(base::Duration time) {
  return clock_text(time.si());
}

std::string capitals(std::string words) {
  std::ranges::transform(words, words.begin(),
                         [](char c) { return c >= 'a' && c <= 'z' ? c - 'a' + 'A' : c; });
  return words;
}

std::string names_of(const std::vector<int>& needs, const WarmUpPlan& plan) {
  std::vector<std::string> names;
  for (const int n : needs) {
    const std::string& name = plan.needs[static_cast<std::size_t>(n)].name;
    if (std::ranges::find(names, name) == names.end()) names.push_back(name);
  }
  return fmt::format("{}", fmt::join(names, ", "));
}

std::string steps_text(const WarmUp& warm_up, const WarmUpPlan& plan) {
  std::string text;
  std::string phase;
  base::Duration at;
  for (const WarmUpStep& step : warm_up.steps) {
    if (step.phase != phase) text += heading(capitals(phase = step.phase), "");
    text += paragraph(
        fmt::format("  {:>5}  ", clock(at)),
        fmt::format("{} ({}){}", step.name, clock(step.length), step.on_floor ? ", on the floor" : ""));
    text += paragraph("         ", fmt::format("{} Say: \"{}\"", step.how, step.say));
    if (!step.prepares.empty()) text += paragraph("         ", "For: " + names_of(step.prepares, plan));
    at += step.length;
  }
  return text;
}

std::string unprepared_text(const WarmUp& warm_up, const WarmUpPlan& plan) {
  if (warm_up.unprepared.empty()) return "";
  std::string text = heading("NOT PREPARED", "no drill is left for it, or no time");
  for (const int n : warm_up.unprepared) {
    const WarmUpNeed& need = plan.needs[static_cast<std::size_t>(n)];
    text += paragraph("  ", fmt::format("{}, for the {}", need.name, need.because));
  }
  return text;
}

/// By person, what is left out and what is done meanwhile.
std::string others_text(const WarmUp& warm_up) {
  std::map<std::string, std::vector<std::string>> by_person;
  std::map<std::string, std::string> actions;
  for (const WarmUpStep& step : warm_up.steps)
    for (const domain::OtherDrill& other : step.others) {
      const std::string instead = other.drill.empty() ? "the drill before again" : other.drill;
      by_person[other.person].push_back(fmt::format("{} → {}", step.name, instead));
      actions[other.person] = other.action;
    }
  if (by_person.empty()) return "";
  std::string text = heading("WHO DOES WHAT INSTEAD", "");
  for (const auto& [person, drills] : by_person) {
    const std::string& action = actions[person];
    text += paragraph("  ", action.empty() ? person : fmt::format("{}: {}", person, action), 4);
    text += paragraph("    ", fmt::format("{}", fmt::join(drills, "; ")), 6);
  }
  return text;
}

/// Drill after drill in one paragraph.
std::string in_short(const WarmUp& warm_up) {
  std::vector<std::string> drills;
  drills.reserve(warm_up.steps.size());
  for (const WarmUpStep& step : warm_up.steps)
    drills.push_back(fmt::format("{} ({})", step.name, clock(step.length)));
  return drills.empty() ? "no drill fits" : fmt::format("{}", fmt::join(drills, "; "));
}

}  // namespace

std::string warm_up_text(const WarmUpPlan& plan) {
  const WarmUp& all = plan.together;
  std::string text = paragraph(
      "",
      fmt::format("{} of {}, prepares {:.0f} % of what the board asks for{}{}.", clock(all.planned),
                  clock(all.asked), 100 * all.prepared_share, all.proven ? "" : " (stopped: the best so far)",
                  all.floor_visits == 0   ? ", everybody stays on their feet"
                  : all.floor_visits == 1 ? ", down to the floor once"
                                          : fmt::format(", down to the floor {} times", all.floor_visits)));
  for (const std::string& note : plan.notes) text += paragraph("  ", note);
  text += steps_text(all, plan) + unprepared_text(all, plan) + others_text(all);
  text += heading("COMES LATE", fmt::format("{} on their own, then to the others", clock(plan.late.asked)));
  text += paragraph("  ", in_short(plan.late));
  text += heading("AWAY", "the same without kit");
  for (const WarmUpStep& step : plan.away.steps)
    text += paragraph("  ", fmt::format("{} ({}): {}", step.name, clock(step.length), step.how), 4);
  if (!plan.away.unprepared.empty())
    text += paragraph("  ", "Not prepared: " + names_of(plan.away.unprepared, plan));
  return text + "\n" + paragraph("", caution_line());
}

}  // namespace repwright::sheets
