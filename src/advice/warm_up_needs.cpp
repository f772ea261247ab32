#include "advice/warm_up_needs.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "base/text.hpp"
#include "domain/spoken.hpp"
#include "timetable/box_words.hpp"

namespace repwright::advice {
namespace {

using domain::Item;
using domain::Movement;
using domain::NeedKind;
using domain::WarmUpNeed;

struct Strains {
  std::string_view what;
  std::string_view joint;
};

/// Joints that a flag of a movement takes to the end of their range (common practice, no source).
constexpr std::array<Strains, 20> by_flag{{{"overhead", "shoulder"},
                                           {"hanging", "shoulder"},
                                           {"hanging", "scapula"},
                                           {"shoulder-deep", "shoulder"},
                                           {"inverted", "shoulder"},
                                           {"inverted", "wrist"},
                                           {"swing", "shoulder"},
                                           {"wrist", "wrist"},
                                           {"deep-knee", "knee"},
                                           {"deep-knee", "hip"},
                                           {"deep-knee", "ankle"},
                                           {"jump", "ankle"},
                                           {"jump", "knee"},
                                           {"spine-flex", "spine"},
                                           {"rotation", "spine"},
                                           {"ballistic-hinge", "hip"},
                                           {"ballistic-hinge", "spine"},
                                           {"axial-load", "spine"},
                                           {"single-leg", "hip"},
                                           {"single-leg", "ankle"}}};
/// Joints that a pattern uses in their middle range (common practice, no source).
constexpr std::array<Strains, 8> by_pattern{{{"push", "shoulder"},
                                             {"pull", "shoulder"},
                                             {"squat", "hip"},
                                             {"squat", "knee"},
                                             {"lunge", "hip"},
                                             {"hinge", "hip"},
                                             {"locomotion", "ankle"},
                                             {"locomotion", "hip"}}};

constexpr int end_of_range = 2;       // weighs a joint there against one in the middle of its range
constexpr double heavy_percent = 80;  // of the best single
constexpr double firm_percent = 60;
constexpr double most_of_body = 0.9;  // moved by the arms or legs
constexpr double fast_run_m = 400;    // up to here people run fast

bool has(const std::vector<std::string>& words, std::string_view word) {
  return std::ranges::find(words, word) != words.end();
}

/// 0 none or light, 1 middling, 2 heavy.
int load_of(const Item& item, const Movement& movement) {
  if (item.load_share && !item.load_share->percent.empty()) {
    const double percent = std::ranges::max(item.load_share->percent);
    return percent >= heavy_percent ? 2 : percent >= firm_percent ? 1 : 0;
  }
  if (item.loads && !item.loads->masses.empty() && movement.typical_load) {
    const base::Mass most = std::ranges::max(item.loads->masses);
    return most >= movement.typical_load->heavy ? 2 : most >= movement.typical_load->medium ? 1 : 0;
  }
  return movement.body_fraction.value_or(0) >= most_of_body ? 1 : 0;
}

bool fast(const Item& item, const Movement& movement) {
  const auto* metres = std::get_if<double>(&item.amount);
  if (movement.category == "run")
    return item.unit == domain::Unit::Metres && metres != nullptr && *metres <= fast_run_m;
  return movement.impact == domain::Impact::High || has(movement.flags, "jump") ||
         has(movement.flags, "ballistic-hinge");
}

class Needs {
 public:
  explicit Needs(const domain::Catalogue& catalogue) : catalogue_(catalogue) {}

  void add(const Item& item, const Movement& movement) {
    const int strain = 1 + load_of(item, movement) + (fast(item, movement) ? 1 : 0);
    const std::string because = domain::spoken_many(movement);
    const auto joint = [&](const Strains& row, int weight) {
      need({NeedKind::Joint, std::string(row.joint), std::string(row.joint), weight, because});
    };
    for (const Strains& row : by_flag)
      if (has(movement.flags, row.what)) joint(row, end_of_range * strain);
    for (const Strains& row : by_pattern)
      if (has(movement.patterns, row.what)) joint(row, strain);
    for (const std::string& pattern : movement.patterns)
      need({NeedKind::Pattern, pattern, pattern, strain, because});
    for (const std::string& muscle : movement.primary_muscles)
      need({NeedKind::Muscle, muscle, muscle_name(muscle), strain, because});
  }

  std::vector<WarmUpNeed> take() {
    std::ranges::stable_sort(needs_, std::ranges::greater{}, &WarmUpNeed::weight);
    return std::move(needs_);
  }

 private:
  void need(WarmUpNeed one) {
    const auto known = std::ranges::find_if(
        needs_, [&](const WarmUpNeed& need) { return need.kind == one.kind && need.id == one.id; });
    if (known == needs_.end())
      needs_.push_back(std::move(one));
    else if (known->weight < one.weight)
      *known = std::move(one);
  }
  std::string muscle_name(const std::string& id) const {
    const auto term = std::ranges::find(catalogue_.terms.muscles, id, &domain::Term::id);
    return term == catalogue_.terms.muscles.end() ? id : base::lower(term->name);
  }

  const domain::Catalogue& catalogue_;
  std::vector<WarmUpNeed> needs_;
};

void collect(const std::vector<domain::Block>& blocks, std::vector<const Item*>& into) {
  using timetable::BoxKind;
  for (const domain::Block& block : blocks) {
    const BoxKind kind = timetable::box_kind(block.title.empty() ? block.text : block.title, BoxKind::Work);
    if (kind == BoxKind::WarmUp || kind == BoxKind::CoolDown || block.kind == domain::BlockKind::Optional)
      continue;
    for (const Item& item : block.items) into.push_back(&item);
    for (const std::vector<Item>& slot : block.slots)
      for (const Item& item : slot) into.push_back(&item);
    if (block.interrupt)
      for (const Item& item : block.interrupt->items) into.push_back(&item);
    collect(block.children, into);
  }
}

}  // namespace

std::vector<const Item*> lines_to_prepare(const domain::Board& board) {
  std::vector<const Item*> lines;
  collect(board.blocks, lines);
  return lines;
}

std::vector<WarmUpNeed> warm_up_needs(const std::vector<const Item*>& lines,
                                      const domain::Catalogue& catalogue) {
  Needs needs(catalogue);
  for (const Item* line : lines)
    if (const Movement* movement = line->movement ? catalogue.find(*line->movement) : nullptr)
      needs.add(*line, *movement);
  return needs.take();
}

}  // namespace repwright::advice
