#include "app/runs.hpp"

#include <algorithm>
#include <map>

namespace repwright::app {
namespace {

/// When that person begins the line of work in that round: seconds of the piece, the mean over the runs.
double start_of(const domain::Rehearsal& rehearsal, const domain::RunnerBack& back) {
  for (const domain::PersonOutcome& person : rehearsal.people) {
    if (person.person != back.person) continue;
    for (const domain::PieceOutcome& piece : person.pieces) {
      if (piece.piece != back.piece) continue;
      for (const domain::StepTrace& step : piece.steps)
        if (step.round == back.round && step.step == back.step) return step.start_s;
    }
  }
  return 0;
}

}  // namespace

std::vector<RunLength> run_lengths(const domain::Rehearsal& rehearsal) {
  std::vector<RunLength> out;
  for (const domain::RunnerBack& back : rehearsal.runners) {
    const double start = start_of(rehearsal, back);
    const RunLength one{back.person, std::max(0.0, back.back_s.p10 - start),
                        std::max(0.0, back.back_s.p50 - start), std::max(0.0, back.back_s.p90 - start)};
    const auto known = std::ranges::find(out, back.person, &RunLength::person);
    if (known == out.end()) {
      out.push_back(one);
      continue;
    }
    known->p10_s = std::min(known->p10_s, one.p10_s);
    known->p50_s = std::max(known->p50_s, one.p50_s);
    known->p90_s = std::max(known->p90_s, one.p90_s);
  }
  return out;
}

OutAndIn out_and_in(const std::vector<domain::KeptDoorLine>& lines) {
  OutAndIn now;
  for (const domain::KeptDoorLine& kept : lines) {
    const domain::PersonId& person = kept.line.person;
    if (kept.line.act != domain::DoorAct::Out && kept.line.act != domain::DoorAct::In) continue;
    std::erase_if(now.out, [&](const StillOut& each) { return each.person == person; });
    std::erase(now.back, person);
    if (kept.line.act == domain::DoorAct::Out)
      now.out.push_back({person, kept.line.seen});
    else
      now.back.push_back(person);
  }
  return now;
}

}  // namespace repwright::app
