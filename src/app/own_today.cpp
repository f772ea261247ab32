#include "app/own_today.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "app/arrivals.hpp"
#include "base/overloaded.hpp"
#include "domain/board_search.hpp"
#include "domain/people_search.hpp"
#include "domain/spoken.hpp"
#include "domain/written_values.hpp"

namespace repwright::app {
namespace {

using base::Result;
using domain::GymClass;
using domain::PersonId;
using domain::write_number;

bool is_listed(const GymClass& gym_class, const PersonId& person) {
  if (!gym_class.arrivals.empty())
    return std::ranges::find(gym_class.arrivals, person, &domain::Arrival::person) !=
           gym_class.arrivals.end();
  return std::ranges::find(gym_class.booked, person) != gym_class.booked.end();
}

std::string set_words(const domain::SetAmount& amount) {
  return std::visit(
      base::Overloaded{[](double count) { return write_number(count); },
                       [](const domain::AtLeast& least) { return write_number(least.count) + "+"; },
                       [](const domain::Max& max) {
                         return max.short_of == 0 ? std::string("max")
                                                  : fmt::format("max less {}", max.short_of);
                       }},
      amount);
}

std::string amount_words(const domain::Amount& amount) {
  return std::visit(base::Overloaded{[](double count) { return write_number(count); },
                                     [](const domain::PerSet& sets) {
                                       std::vector<std::string> words;
                                       words.reserve(sets.amounts.size());
                                       for (const domain::SetAmount& each : sets.amounts)
                                         words.push_back(set_words(each));
                                       return fmt::format("{}", fmt::join(words, "-"));
                                     },
                                     [](const domain::Range& range) {
                                       return write_number(range.min) + " to " + write_number(range.max);
                                     },
                                     [](const domain::Climb& climb) {
                                       return fmt::format("{}, then {} more each time,",
                                                          write_number(climb.start),
                                                          write_number(climb.step));
                                     },
                                     [](const domain::AtLeast& least) { return set_words(least); },
                                     [](const domain::Max& max) { return set_words(max); },
                                     [](const auto&) { return std::string(); }},
                    amount);
}

std::string_view unit_words(domain::Unit unit) {
  switch (unit) {
    case domain::Unit::Metres:
      return " m";
    case domain::Unit::Kilocalories:
      return " kcal";
    case domain::Unit::Seconds:
      return " s";
    case domain::Unit::Reps:
      break;
  }
  return "";
}

/// What the person begins with where every second one begins elsewhere; empty: with the first line.
std::string starts_with(const board::Reading& reading, const FormPerson& own, std::size_t seat,
                        const domain::Catalogue& catalogue) {
  if (seat % 2 == 0 || own.lines.empty()) return {};
  for (const domain::Block& block : reading.board.blocks) {
    if (!block.odd_start) continue;
    const auto first = std::ranges::find_if(own.lines, [&](const domain::FittedItem& line) {
      const domain::Item* written = domain::find_item(reading.board, line.step);
      return written != nullptr && written->movement == block.odd_start;
    });
    if (first != own.lines.end()) return line_words(*first, catalogue);
  }
  return {};
}

}  // namespace

const GymClass* own_class(const OpenGym& gym, const PersonId& person, std::chrono::year_month_day today) {
  const GymClass* next = nullptr;
  const auto when = [](const GymClass& each) {
    return std::tuple(*each.date, each.start_minute.value_or(0));
  };
  for (const auto& [id, each] : gym.classes) {
    if (!each.date || *each.date < today || !is_listed(each, person)) continue;
    if (next == nullptr || when(each) < when(*next)) next = &each;
  }
  return next;
}

std::string line_words(const domain::FittedItem& item, const domain::Catalogue& catalogue) {
  const domain::Movement* movement = catalogue.find(item.movement);
  const std::string amount = amount_words(item.amount) + std::string(unit_words(item.unit));
  std::string name = item.movement.text;
  if (movement != nullptr)
    name = item.unit == domain::Unit::Reps && amount != "1" ? domain::spoken_many(*movement)
                                                            : domain::spoken_one(*movement);
  std::string words = item.unit == domain::Unit::Reps ? amount + " " + name : name + " " + amount;
  if (item.load)
    words += fmt::format(" at {}{} kg", item.implements > 1 ? fmt::format("{} × ", item.implements) : "",
                         write_number(item.load->si()));
  if (item.height) words += fmt::format(", {} cm", write_number(item.height->si() * 100));
  if (item.each_side) words += ", each side";
  return words;
}

Result<std::optional<OwnToday>> own_today(const GymAtHand& at_hand, const PersonId& person,
                                          std::chrono::year_month_day today, const std::stop_token& stop) {
  const OpenGym& gym = at_hand.gym();
  const GymClass* gym_class = own_class(gym, person, today);
  if (gym_class == nullptr) return std::nullopt;
  const auto board = gym.knowledge.boards.find(gym_class->board_id);
  const auto list = arrivals(at_hand, gym_class->id, {});
  if (!list) return tl::unexpected(list.error());
  OwnToday own{.class_id = gym_class->id,
               .date = gym_class->date,
               .start_minute = gym_class->start_minute,
               .board_title = {},
               .board_text = board == gym.knowledge.boards.end() ? "" : board->second,
               .told = {},
               .pieces = {}};
  for (const Arriving& each : *list)
    if (each.comer.person.id == person) own.told = each.told;
  if (own.board_text.empty()) return own;
  const board::Reading reading = at_hand.read(own.board_text);
  own.board_title = reading.board.title;
  const auto form = score_form(at_hand, gym_class->id, stop);
  if (!form && form.error().code == base::ErrorCode::Invalid) return own;
  if (!form) return tl::unexpected(form.error());
  for (const FormPiece& piece : *form) {
    const auto found = std::ranges::find(piece.people, person, &FormPerson::person);
    if (found == piece.people.end()) continue;
    OwnPiece mine{
        .piece = piece.piece,
        .title = piece.title,
        .scheme = piece.scheme,
        .form = piece.form,
        .cap = piece.cap,
        .parts = piece.parts,
        .heats = piece.heats,
        .lanes = piece.lanes,
        .own = *found,
        .lines = {},
        .starts_with = starts_with(reading, *found, static_cast<std::size_t>(found - piece.people.begin()),
                                   gym.knowledge.catalogue),
        .partners = {}};
    for (const domain::FittedItem& line : found->lines)
      mine.lines.push_back(line_words(line, gym.knowledge.catalogue));
    for (const PersonId& other : found->with)
      if (const domain::Person* known = domain::find_person(gym.people, other))
        mine.partners.push_back(known->name);
    own.pieces.push_back(std::move(mine));
  }
  return own;
}

}  // namespace repwright::app
