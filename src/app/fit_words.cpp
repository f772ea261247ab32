#include "app/fit_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "domain/spoken.hpp"
#include "rehearsal/findings.hpp"
#include "rehearsal/intent_window.hpp"

namespace repwright::app {
namespace {

using domain::FitMeasure;
using domain::FittedItem;

constexpr double worth_saying_s = 20;  // of waiting

/// `12 pull-ups`, `200 m run`, `ring rows` where the amount is no single number.
std::string line_words(const domain::Movement& movement, const domain::Amount& amount, domain::Unit unit) {
  const auto* count = std::get_if<double>(&amount);
  if (count == nullptr) return domain::spoken_many(movement);
  std::string one = domain::spoken_one(movement);
  switch (unit) {
    case domain::Unit::Reps:
      return fmt::format("{:g} {}", *count, *count == 1 ? one : domain::spoken_many(movement));
    case domain::Unit::Metres:
      return fmt::format("{:g} m {}", *count, one);
    case domain::Unit::Kilocalories:
      return fmt::format("{:g} cal {}", *count, one);
    case domain::Unit::Seconds:
      return fmt::format("{:g} s {}", *count, one);
  }
  return one;
}

std::string with_load(const std::string& words, const FittedItem& item) {
  if (!item.load) return words;
  return fmt::format("{} with {}{:g} kg", words,
                     item.implements > 1 ? fmt::format("{} x ", item.implements) : "",
                     std::round(item.load->si() * 10) / 10);
}

std::string own_words(const domain::Catalogue& catalogue, const FittedItem& item) {
  const domain::Movement* movement = catalogue.find(item.movement);
  const auto* count = std::get_if<double>(&item.amount);
  if (movement == nullptr || (count != nullptr && *count == 0)) return "rest";
  return with_load(line_words(*movement, item.amount, item.unit), item);
}

/// Two lines as a person does them, the second in place of the first; empty if they are the same.
std::string instead(const domain::Catalogue& catalogue, const FittedItem& was, const FittedItem& is) {
  if (was.movement == is.movement && was.amount == is.amount && was.load == is.load) return "";
  return fmt::format("{} for {}", own_words(catalogue, is), own_words(catalogue, was));
}

/// `3 rounds for 4`; empty where both are the same.
std::string rounds_words(const domain::Block& piece, const domain::FittedPerson& was,
                         const domain::FittedPerson& is) {
  const auto rounds = [&](const domain::FittedPerson& person) {
    const auto own = person.rounds.find(piece.id);
    return own != person.rounds.end() ? own->second : piece.rounds.value_or(1);
  };
  if (rounds(was) == rounds(is)) return "";
  return fmt::format("{} {} for {}", rounds(is), rounds(is) == 1 ? "round" : "rounds", rounds(was));
}

/// The line as the board asks it of this person: its amount with level and tier, its own load.
FittedItem written(const domain::Item& item, const FittedItem& plain) {
  FittedItem line = plain;
  if (!item.movement) return line;
  const domain::MovementId& asked = *item.movement;
  line.movement = asked;
  if (plain.movement != asked) {
    line.load.reset();
    line.amount = item.amount;
    line.unit = item.unit;
    if (std::get_if<double>(&item.amount) == nullptr) line.amount = domain::Max{};
  }
  if (item.loads && !item.loads->masses.empty() && plain.movement == asked &&
      std::ranges::find(item.loads->masses, plain.load.value_or(base::Mass{})) == item.loads->masses.end())
    line.load = item.loads->masses.back();
  return line;
}

const FittedItem* line_of(const domain::FittedPerson& person, const domain::Item& item) {
  const auto at = static_cast<std::size_t>(item.step.index);
  return item.step.index >= 0 && at < person.items.size() ? &person.items[at] : nullptr;
}

}  // namespace

void for_each_line(const domain::Block& piece, const std::function<void(const domain::Item&)>& one) {
  for (const domain::Item& item : piece.items) one(item);
  for (const std::vector<domain::Item>& slot : piece.slots)
    for (const domain::Item& item : slot) one(item);
  for (const domain::Block& child : piece.children)
    if (child.kind != domain::BlockKind::Optional) for_each_line(child, one);
}

std::vector<std::string> fit_words(const FitWordsOf& of, const domain::FittedPerson& own) {
  std::vector<std::string> words;
  if (std::string one = rounds_words(of.piece, of.plain, own); !one.empty()) words.push_back(std::move(one));
  for_each_line(of.piece, [&](const domain::Item& item) {
    const FittedItem* plain = line_of(of.plain, item);
    const FittedItem* now = line_of(own, item);
    if (!item.movement || plain == nullptr || now == nullptr) return;
    if (std::string one = instead(of.catalogue, written(item, *plain), *now); !one.empty())
      words.push_back(std::move(one));
  });
  return words;
}

std::string difference_words(const FitWordsOf& of, const domain::FittedPerson& own,
                             const domain::FittedPerson& other) {
  std::vector<std::string> words;
  if (std::string one = rounds_words(of.piece, own, other); !one.empty()) words.push_back(std::move(one));
  for_each_line(of.piece, [&](const domain::Item& item) {
    const FittedItem* was = line_of(own, item);
    const FittedItem* is = line_of(other, item);
    if (was == nullptr || is == nullptr) return;
    if (std::string one = instead(of.catalogue, *was, *is); !one.empty()) words.push_back(std::move(one));
  });
  return fmt::format("{}", fmt::join(words, ", "));
}

std::string clash_words(const FitWordsOf& of, const advice::ChosenFit& fit, const domain::FitWindow& window) {
  const advice::FitOption& own = fit.own;
  const bool slow = window.measure == FitMeasure::Seconds ? window.max && own.expected > *window.max
                                                          : own.expected < window.min;
  const std::string changed = difference_words(of, of.plain, own.fitted);
  const std::string comes_to = fmt::format(
      "{} is out of reach: {} comes to {}", rehearsal::window_words(window),
      changed.empty() ? "as it stands it" : "even " + changed, rehearsal::value_words(window, own.expected));
  if (!slow) return comes_to + "; raise the intent's upper end, or give more rounds";
  if (fit.waited_s < worth_saying_s)
    return comes_to + "; widen the intent, or give a shorter piece of their own";
  return fmt::format(
      "{}, with {} of waiting for a place, and to {} without; {}fewer on the floor at once (heats, another "
      "start place)",
      comes_to, rehearsal::clock_words(fit.waited_s), rehearsal::value_words(window, fit.alone),
      rehearsal::miss(window, fit.alone) > 0 ? "widen the intent, or " : "it takes ");
}

}  // namespace repwright::app
