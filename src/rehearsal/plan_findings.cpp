#include "rehearsal/plan_findings.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "rehearsal/board_items.hpp"
#include "rehearsal/kit_demand.hpp"

namespace repwright::rehearsal {

namespace {

using domain::Finding;
using domain::FindingKind;
using domain::FindingSeverity;

std::string name_of(const domain::Catalogue& catalogue, const domain::MovementId& id) {
  const domain::Movement* movement = catalogue.find(id);
  return movement ? movement->name : id.text;
}

std::string name_of(const domain::Catalogue& catalogue, const domain::EquipmentId& id) {
  const domain::Equipment* equipment = catalogue.find(id);
  return equipment ? equipment->name : id.text;
}

Finding finding_at(FindingKind kind, FindingSeverity severity, std::optional<domain::StepId> step) {
  Finding finding;
  finding.kind = kind;
  finding.severity = severity;
  finding.step = step;
  return finding;
}

std::string size_text(const KitNeed& need) {
  if (need.mass) return fmt::format(" {:g} kg", std::round(need.mass->si() * 10) / 10);
  if (need.height) return fmt::format(" {:g} cm", std::round(need.height->si() * 100));
  return {};
}

const domain::FittedItem& line_of(const WriteRequest& request, std::size_t person, domain::StepId step) {
  return request.fitted.people[person].items[static_cast<std::size_t>(step.index)];
}

void append(std::vector<Finding>& all, std::vector<Finding> more) {
  std::ranges::move(more, std::back_inserter(all));
}

/// People named by what they do instead, in the order in which it comes up first.
class Groups {
 public:
  void add(const std::string& what, const std::string& name) {
    auto group = std::ranges::find(groups_, what, &std::pair<std::string, std::string>::first);
    if (group == groups_.end()) group = groups_.insert(groups_.end(), {what, ""});
    group->second += (group->second.empty() ? "" : ", ") + name;
  }
  bool empty() const { return groups_.empty(); }
  std::string words() const {
    std::string words;
    for (const auto& [what, names] : groups_)
      words += fmt::format("{}{}: {}", words.empty() ? "" : "; ", what, names);
    return words;
  }

 private:
  std::vector<std::pair<std::string, std::string>> groups_;
};

std::string version_of(const WriteRequest& request, const domain::FittedItem& own) {
  return own.movement.empty() ? "rest" : name_of(request.catalogue, own.movement);
}

std::string written_name(const WriteRequest& request, const domain::Item& item) {
  return item.movement ? name_of(request.catalogue, *item.movement) : item.free_text;
}

/// Lines for which there is no place at all: who does what instead.
std::vector<Finding> lacking_findings(const WriteRequest& request) {
  std::vector<Finding> findings;
  for (const ItemAt& line : items_by_step(request.fitted.board)) {
    if (!line.item || line.block->kind == domain::BlockKind::Optional) continue;
    Finding finding = finding_at(FindingKind::KitShort, FindingSeverity::Problem, line.item->step);
    Groups groups;
    std::string place;
    for (std::size_t i = 0; i < request.fitted.people.size(); ++i) {
      const domain::FittedItem& own = line_of(request, i, line.item->step);
      if (own.lacking.empty()) continue;
      place = name_of(request.catalogue, own.lacking);
      groups.add(version_of(request, own), request.people[i].name);
      finding.people.push_back(request.people[i].id);
    }
    if (groups.empty()) continue;
    finding.text = fmt::format("{}: none today. Instead of {}: {}.", place, written_name(request, *line.item),
                               groups.words());
    findings.push_back(std::move(finding));
  }
  return findings;
}

/// Lines rehearsed as if there were places: other kit takes them all, or the board is played as written.
std::vector<Finding> crowded_out_findings(const WriteRequest& request, const domain::EquipmentId& place) {
  std::vector<Finding> findings;
  for (const ItemAt& line : items_by_step(request.fitted.board)) {
    if (!line.item || line.block->kind == domain::BlockKind::Optional) continue;
    Finding finding = finding_at(FindingKind::KitShort, FindingSeverity::Problem, line.item->step);
    for (std::size_t i = 0; i < request.fitted.people.size(); ++i) {
      const domain::Movement* movement =
          request.catalogue.find(line_of(request, i, line.item->step).movement);
      if (movement && std::ranges::find(movement->equipment, place) != movement->equipment.end())
        finding.people.push_back(request.people[i].id);
    }
    if (finding.people.empty()) continue;
    finding.text = fmt::format("{}: none left for {}; rehearsed as if there were enough.",
                               name_of(request.catalogue, place), written_name(request, *line.item));
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace

std::vector<Finding> swap_findings(const WriteRequest& request) {
  std::vector<Finding> findings;
  for (const ItemAt& line : items_by_step(request.fitted.board)) {
    if (!line.item || line.block->kind == domain::BlockKind::Optional) continue;
    Finding finding = finding_at(FindingKind::LimitSwapped, FindingSeverity::Note, line.item->step);
    Groups groups;  // who does the same for the same reason is named together
    for (std::size_t i = 0; i < request.fitted.people.size(); ++i) {
      const domain::FittedItem& own = line_of(request, i, line.item->step);
      if (own.swapped_for.empty() || !own.lacking.empty()) continue;
      groups.add(fmt::format("{} ({})", version_of(request, own), own.swapped_for), request.people[i].name);
      finding.people.push_back(request.people[i].id);
    }
    if (groups.empty()) continue;
    finding.text = fmt::format("Instead of {}: {}.", written_name(request, *line.item), groups.words());
    findings.push_back(std::move(finding));
  }
  return findings;
}

std::vector<Finding> free_text_findings(const WriteRequest& request) {
  std::vector<Finding> findings;
  for (const ItemAt& line : items_by_step(request.fitted.board)) {
    if (!line.item || line.item->movement || line.block->kind == domain::BlockKind::Optional) continue;
    Finding finding = finding_at(FindingKind::FreeText, FindingSeverity::Warning, line.item->step);
    finding.text =
        fmt::format("'{}' is not in the catalogue: rehearsed at a usual cost.", line.item->free_text);
    findings.push_back(std::move(finding));
  }
  return findings;
}

std::vector<Finding> kit_findings(const WriteRequest& request,
                                  const std::vector<domain::EquipmentId>& missing_places) {
  std::vector<Finding> findings;
  for (const KitNeed& need : kit_demand(request)) {
    if (need.needed <= need.available) continue;
    Finding finding = finding_at(FindingKind::KitShort, FindingSeverity::Warning, need.step);
    finding.text =
        fmt::format("{}{}: {} needed at once, {} in the hall.", name_of(request.catalogue, need.equipment),
                    size_text(need), need.needed, need.available);
    findings.push_back(std::move(finding));
  }
  append(findings, lacking_findings(request));
  for (const domain::EquipmentId& place : missing_places)
    append(findings, crowded_out_findings(request, place));
  return findings;
}

std::vector<Finding> route_findings(const WriteRequest& request, const std::vector<RouteChoice>& routes) {
  std::vector<Finding> findings;
  const std::vector<ItemAt> lines = items_by_step(request.fitted.board);
  for (std::size_t step = 0; step < routes.size(); ++step) {
    if (!routes[step].closed || !lines[step].item) continue;
    Finding finding = finding_at(FindingKind::RouteClosed, FindingSeverity::Warning, lines[step].item->step);
    const domain::Route* route = routes[step].route;
    finding.text = route ? fmt::format("The usual route is closed: {} x {} ({:g} m).", routes[step].laps,
                                       route->name, route->lap.si())
                         : std::string("No route is open: rehearsed on the spot, as written.");
    findings.push_back(std::move(finding));
  }
  return findings;
}

std::vector<Finding> team_findings(const WriteRequest& request) {
  std::vector<Finding> findings;
  const std::size_t people = request.people.size();
  for (const domain::Block& block : request.fitted.board.blocks) {
    if (block.team_sizes.empty() || block.kind == domain::BlockKind::Optional) continue;
    const int least = std::ranges::min(block.team_sizes);
    if (static_cast<int>(people) >= least) continue;
    Finding finding = finding_at(FindingKind::TooFewForATeam, FindingSeverity::Warning, std::nullopt);
    finding.text = fmt::format(
        "{} for a piece of teams of {}: rehearsed doing all of the shared work. Usual is {} of it, and "
        "after each set a rest as long as the set.",
        people == 1 ? "One person" : fmt::format("{} people", people), least,
        people == 1 && least == 2 ? "half" : "their share");
    for (const domain::Person& person : request.people) finding.people.push_back(person.id);
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace repwright::rehearsal
