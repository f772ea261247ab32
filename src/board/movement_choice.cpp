#include "board/movement_choice.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "domain/movement_names.hpp"

namespace repwright::board {
namespace {

using domain::Movement;
using domain::MovementId;
using domain::Unit;

std::string_view category_of(Kit kit) {
  if (kit == Kit::Barbell) return "barbell";
  return kit == Kit::Dumbbell ? "dumbbell" : "kettlebell";
}

template <class Fits>
void keep_if_any(std::vector<const Movement*>& candidates, Fits fits) {
  std::vector<const Movement*> kept;
  std::ranges::copy_if(candidates, std::back_inserter(kept), fits);
  if (!kept.empty()) candidates = std::move(kept);
}

bool can_carry(const Movement& movement, base::Mass load) {
  return !movement.typical_load || load <= 1.6 * movement.typical_load->heavy;
}

/// The one kind of kit that the line names.
Kit kit_of_line(const Session& session) {
  if (session.line == nullptr) return Kit::Unsaid;
  Kit found = Kit::Unsaid;
  constexpr std::size_t farthest = 200;  // marks: no chalked line is longer
  const std::size_t last = std::min(session.line->last, session.line->first + farthest);
  for (std::size_t i = session.line->first; i < last; ++i) {
    const Token& token = session.source.tokens[i];
    const Kit kit = token.kind == TokenKind::Word ? kit_of(token.text) : Kit::Unsaid;
    if (kit == Kit::Unsaid) continue;
    if (found != Kit::Unsaid && found != kit) return Kit::Unsaid;
    found = kit;
  }
  return found;
}

/// What the name means with the word for that kit before it: as written, else by another name of the same
/// movement ('DB overhead press' by 'db shoulder press'); null if nothing.
const Meaning* with_kit(const Names& names, std::string_view kit, const std::string& written,
                        const Movement& movement) {
  if (const Meaning* found = names.exact(std::string(kit) + written)) return found;
  for (const std::string& alias : movement.aliases)
    if (const Meaning* found = names.exact(std::string(kit) + alias)) return found;
  return nullptr;
}

std::string shown(const Movement& movement) {
  return movement.aliases.empty() ? movement.name : movement.aliases.front();
}

bool says_all(const Movement& movement, const std::string& words) {
  std::string all =
      " " + domain::normal_name(movement.id.text) + " " + domain::normal_name(movement.name) + " ";
  for (const std::string& alias : movement.aliases) all += domain::normal_name(alias) + " ";
  const std::string normal = domain::normal_name(words);
  for (std::size_t at = 0; at < normal.size();) {
    const std::size_t blank = std::min(normal.find(' ', at), normal.size());
    if (all.find(" " + normal.substr(at, blank - at) + " ") == std::string::npos) return false;
    at = blank + 1;
  }
  return !normal.empty();
}

}  // namespace

MovementId choose_movement(Session& session, const Named& named, const Entry& entry,
                           const domain::Span& span) {
  std::vector<const Movement*> candidates;
  for (const MovementId& id : named.meaning.movements)
    if (const Movement* movement = session.names.movement(id)) candidates.push_back(movement);
  if (candidates.empty()) return named.meaning.movements.front();
  const bool open = candidates.size() > 1;
  const std::size_t before = candidates.size();
  if (named.kit != Kit::Unsaid)
    keep_if_any(candidates, [&](const Movement* m) { return m->category == category_of(named.kit); });
  const std::optional<Unit> unit = unit_of(entry);
  if (unit) keep_if_any(candidates, [&](const Movement* m) { return m->pace.contains(*unit); });
  if (open && !unit && entry.sets)  // `row 3x12` counts repetitions
    keep_if_any(candidates, [](const Movement* m) { return m->category != "ergometer"; });
  if (open && entry.item.implements == 2)
    keep_if_any(candidates, [](const Movement* m) { return m->category == "dumbbell"; });
  if (open && !entry.loads.empty()) {
    const base::Mass most = mass_of(*std::ranges::max_element(entry.loads), entry.load_unit,
                                    session.house.mass_unit == domain::MassUnit::Pounds);
    keep_if_any(candidates, [&](const Movement* m) { return m->typical_load && can_carry(*m, most); });
  }
  const Kit nearby = candidates.size() > 1 ? kit_of_line(session) : Kit::Unsaid;
  if (candidates.size() > 1 && nearby != Kit::Unsaid)
    keep_if_any(candidates, [&](const Movement* m) { return m->category == category_of(nearby); });
  const Movement& chosen = *candidates.front();
  const bool decided = candidates.size() == 1 && before > 1;
  if (named.meaning.ambiguous && !decided && !named.class_word) {
    std::vector<std::string> repairs;
    for (std::size_t i = 1; i < candidates.size() && i < 4; ++i) repairs.push_back(shown(*candidates[i]));
    session.remarks.add({"ambiguous-movement", span,
                         fmt::format("`{}` was read as {}", session.kept(span), shown(chosen)),
                         "write the full name if you mean another", std::move(repairs)});
  }
  if (named.kit == Kit::Unsaid || chosen.category == category_of(named.kit)) return chosen.id;
  // 'KB lunges' where only 'DB lunges' is known: the same movement with the other bell.
  const Kit other = named.kit == Kit::Kettlebell ? Kit::Dumbbell : Kit::Kettlebell;
  for (const Kit kit : {named.kit, other}) {
    const std::string_view word = kit == Kit::Dumbbell ? "db " : kit == Kit::Kettlebell ? "kb " : "bb ";
    const Meaning* bell = with_kit(session.names, word, named.written, chosen);
    if (bell == nullptr || named.kit == Kit::Barbell) continue;
    session.remarks.add({"ambiguous-movement",
                         span,
                         fmt::format("`{}` was read as {}", session.kept(span),
                                     shown(*session.names.movement(bell->movements.front()))),
                         "the catalogue knows it with this kit",
                         {shown(chosen)}});
    return bell->movements.front();
  }
  return chosen.id;
}

std::optional<MovementId> lift_of(const Session& session, const Named& named) {
  const bool bare = named.written == "squat" || named.written == "squats";
  MovementId lift{"bb-back-squat"};
  if (!bare || named.kit != Kit::Unsaid || named.meaning.movements.front() != MovementId{"air-squat"} ||
      session.names.movement(lift) == nullptr)
    return std::nullopt;
  return lift;
}

void settle_lift(Session& session, Entry& entry, LiftedIn in) {
  if (!entry.lift) return;
  constexpr double most_of_a_lift = 12;  // repetitions a set; more are done without a bar
  const auto few = [](const domain::SetAmount& amount) {
    const auto* number = std::get_if<double>(&amount);
    return number == nullptr || *number <= most_of_a_lift;
  };
  const bool few_each = entry.amount && !entry.amount->unit && std::ranges::all_of(entry.amount->values, few);
  const domain::Item& item = entry.item;
  const bool loaded =
      item.load_share || item.load_step || (in.sets_alone && (item.effort || !entry.loads.empty()));
  const Movement* lift = session.names.movement(*entry.lift);
  const bool pounds = session.house.mass_unit == domain::MassUnit::Pounds;
  const bool of_a_bar =
      lift != nullptr && lift->typical_load && !entry.loads.empty() &&
      mass_of(std::ranges::max(entry.loads), entry.load_unit, pounds) >= lift->typical_load->light;
  if (!loaded && !in.build && !of_a_bar && !(in.sets_alone && few_each)) return;
  const Movement* without = item.movement ? session.names.movement(*item.movement) : nullptr;
  if (lift == nullptr || without == nullptr) return;
  session.remarks.add_once({"ambiguous-movement",
                            entry.span,
                            fmt::format("`{}` was read as {}", session.kept(entry.span), shown(*lift)),
                            "write the full name if you mean another",
                            {shown(*lift), shown(*without)}});
  entry.item.movement = entry.lift;
}

std::optional<MovementId> option_of(Session& session, Cursor words, const std::optional<MovementId>& base,
                                    std::optional<Unit> unit) {
  if (words.done()) return std::nullopt;
  std::string text;
  for (Cursor c = words; !c.done(); c.next()) {
    if (c.at_symbol('-')) continue;
    if (!text.empty()) text += ' ';
    text += c.peek().text;
  }
  if (const Meaning* meaning = session.names.exact(text); meaning != nullptr && !meaning->ambiguous)
    return meaning->movements.front();
  if (base) {
    std::vector<MovementId> family{*base};
    if (const Movement* movement = session.names.movement(*base)) {
      family.insert(family.end(), movement->easier.begin(), movement->easier.end());
      family.insert(family.end(), movement->harder.begin(), movement->harder.end());
    }
    for (const MovementId& id : family) {
      const Movement* movement = session.names.movement(id);
      if (movement != nullptr && says_all(*movement, text)) return id;
    }
  }
  const auto named = session.names.find(words);
  if (!named) return std::nullopt;
  Entry said;
  said.unit = unit;
  return choose_movement(session, *named, said, words.rest_span());
}

std::optional<Unit> unit_of(const Entry& entry) {
  return entry.amount && entry.amount->unit ? entry.amount->unit : entry.unit;
}

void remark_unknown(Session& session, const domain::Span& span, const std::string& words,
                    std::optional<Unit> unit) {
  std::vector<std::string> near;
  if (++session.unknown_movements <= 40) near = session.names.nearest(words, 3, unit);
  std::string hint = "name it in the house's words or the catalogue";
  if (!near.empty()) hint = fmt::format("did you mean {}", fmt::join(near, ", "));
  session.remarks.add(
      {"unknown-movement", span,
       fmt::format("`{}` is in no catalogue: kept as words, rehearsed at a usual cost", words),
       std::move(hint), std::move(near)});
}

}  // namespace repwright::board
