#include "rehearsal/versions.hpp"

#include <algorithm>
#include <cstddef>
#include <tuple>

#include "domain/proposals.hpp"
#include "rehearsal/amounts.hpp"

namespace repwright::rehearsal {

namespace {

using domain::Movement;

bool contains(const std::vector<Version>& versions, const Movement* movement) {
  return std::ranges::find(versions, movement, &Version::movement) != versions.end();
}

void add(std::vector<Version>& versions, const Movement& written, const Version& version) {
  if (version.movement && version.movement != &written && !contains(versions, version.movement))
    versions.push_back(version);
}

void add_easier(std::vector<Version>& versions, const domain::Catalogue& catalogue, const Movement& written) {
  std::vector<const Movement*> ring{&written};
  for (std::size_t next = 0; next < ring.size(); ++next) {
    for (const domain::MovementId& id : ring[next]->easier) {
      const Movement* easier = catalogue.find(id);
      if (!easier || std::ranges::find(ring, easier) != ring.end()) continue;
      ring.push_back(easier);
      add(versions, written, {.movement = easier});
    }
  }
}

long shared_patterns(const Movement& a, const Movement& b) {
  return std::ranges::count_if(a.patterns, [&](const std::string& pattern) {
    return std::ranges::find(b.patterns, pattern) != b.patterns.end();
  });
}

/// Most alike first: patterns in common, the same first pattern, without kit.
void add_alike(std::vector<Version>& versions, const domain::Catalogue& catalogue, const Movement& written) {
  const auto first = [&](const Movement& m) -> int {
    return !m.patterns.empty() && !written.patterns.empty() && m.patterns.front() == written.patterns.front();
  };
  std::vector<const Movement*> alike;
  for (const Movement& movement : catalogue.movements)
    if (shared_patterns(movement, written) > 0) alike.push_back(&movement);
  const auto rank = [&](const Movement* m) {
    return std::tuple(-first(*m), -shared_patterns(*m, written), m->kit_free ? 0 : 1, m->id);
  };
  std::ranges::sort(alike, [&](const Movement* a, const Movement* b) { return rank(a) < rank(b); });
  for (const Movement* movement : alike) add(versions, written, {.movement = movement, .alike = true});
}

double lightest_usual(const Movement& movement) {
  return movement.typical_load ? movement.typical_load->light.si() : 0;
}

}  // namespace

const Movement* standing_version(const Ability& ability, const Movement& written) {
  const auto& catalogue = ability.request.catalogue;
  const auto means = [&](const std::string& word) {
    if (word == written.id.text) return true;
    const auto known = catalogue.ambiguous_words.find(word);
    if (known != catalogue.ambiguous_words.end())
      return std::ranges::find(known->second, written.id) != known->second.end();
    return !written.patterns.empty() && word == written.patterns.front();
  };
  const auto exact = ability.person.versions.find(written.id.text);
  if (exact != ability.person.versions.end()) return catalogue.find(exact->second);
  for (const auto& [word, version] : ability.person.versions)
    if (means(word)) return catalogue.find(version);
  return nullptr;
}

std::vector<Version> stand_ins(const Ability& ability, const Movement& written, const domain::Item* item) {
  const auto& catalogue = ability.request.catalogue;
  std::vector<Version> versions;
  add(versions, written, {.movement = standing_version(ability, written), .standing = true});
  if (item && item->scale && !item->scale->by_level)
    for (const domain::ScaleOption& option : item->scale->options)
      add(versions, written, {.movement = catalogue.find(option.movement), .factor = option.factor});
  if (item && item->second_station)
    add(versions, written, {.movement = catalogue.find(*item->second_station)});
  for (const domain::Limit& limit : ability.limits) {
    const auto swap = written.swap_for.find(limit.limit);
    if (forbidden(written, limit.limit) && swap != written.swap_for.end())
      add(versions, written, {.movement = catalogue.find(swap->second)});
  }
  const std::size_t chosen = versions.size();
  add_easier(versions, catalogue, written);
  add_alike(versions, catalogue, written);
  const domain::Hall anywhere;
  const domain::Hall& hall = ability.request.hall != nullptr ? *ability.request.hall : anywhere;
  const domain::Premises premises{catalogue, hall, ability.request.house};
  versions.erase(std::remove_if(versions.begin() + static_cast<std::ptrdiff_t>(chosen), versions.end(),
                                [&](const Version& version) {
                                  return !domain::may_propose(premises, *version.movement);
                                }),
                 versions.end());
  return versions;
}

bool passes(const Ability& ability, const Movement& movement, double at_least) {
  if (ability.request.rule == FitRule::AsWritten) return true;
  return forbidding(ability, movement) == nullptr && lacking(ability, movement) == nullptr &&
         best_set(ability, movement, movement.default_unit, lightest_usual(movement)) >= at_least;
}

Version first_passing(const Ability& ability, const std::vector<Version>& versions, StandInRule rule) {
  std::vector<double> wanted{1};
  if (rule.for_lack_of_reps) wanted = {std::max(plenty_at_once, 2 * rule.set), plenty_at_once, 1};
  for (const bool alike : {false, true})
    for (const double at_least : wanted) {
      const auto at = std::ranges::find_if(versions, [&](const Version& version) {
        return version.alike == alike &&
               passes(ability, *version.movement, (version.standing ? 1 : at_least) * version.factor);
      });
      if (at != versions.end()) return *at;
    }
  return {};
}

const Movement* allowed_version(const Ability& ability, const domain::MovementId& written) {
  const Movement* movement = ability.request.catalogue.find(written);
  if (!movement || passes(ability, *movement, 1)) return movement;
  return first_passing(ability, stand_ins(ability, *movement, nullptr), {}).movement;
}

}  // namespace repwright::rehearsal
