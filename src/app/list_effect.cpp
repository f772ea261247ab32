#include "app/list_effect.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

#include "app/gym_lookup.hpp"
#include "rehearsal/findings.hpp"

namespace repwright::app {
namespace {

using base::Result;

constexpr int runs = 100;
constexpr double shortest_told_s = 15;  // less is within the luck of a day
constexpr double short_wait_s = 20;     // as between two people who share a place

Result<domain::Rehearsal> rehearsed(const GymAtHand& at_hand, const domain::GymClass& gym_class,
                                    const std::stop_token& stop) {
  const auto chalk = chalk_of(at_hand.gym(), gym_class);
  if (!chalk) return tl::unexpected(chalk.error());
  const board::Reading reading = at_hand.read(**chalk);
  const WhatIf what{.class_id = gym_class.id, .heads = {}, .out = {}, .runs = runs, .stop = stop};
  const KnowingRequest knowing = knowing_request(at_hand, reading, gym_class, what);
  return rehearse_class(knowing.request).map([](ClassRehearsal done) { return std::move(done.rehearsal); });
}

std::string slack_words(const ListEffect& effect) {
  if (!effect.now.slack_s || !effect.planned.slack_s) return {};
  const double less = *effect.planned.slack_s - *effect.now.slack_s;
  if (*effect.now.slack_s < 0)
    return fmt::format("the class runs {} over", rehearsal::clock_words(-*effect.now.slack_s));
  if (std::abs(less) < shortest_told_s) return {};
  return fmt::format("{} {} slack, {} is left", rehearsal::clock_words(std::abs(less)),
                     less > 0 ? "less" : "more", rehearsal::clock_words(*effect.now.slack_s));
}

std::string queue_words(const ListEffect& effect) {
  const bool waits = !effect.now.queue_at.empty();
  if (!waits && effect.planned.queue_at.empty()) return {};
  if (!waits) return "nobody waits for long any more";
  if (effect.now.queue_at == effect.planned.queue_at &&
      std::abs(effect.now.queue_s - effect.planned.queue_s) < shortest_told_s)
    return {};
  return fmt::format("one in ten waits {} or more in all at the {}",
                     rehearsal::clock_words(effect.now.queue_s), effect.now.queue_at);
}

std::string last_home_words(const ListEffect& effect) {
  if (!effect.now.last_home_s || !effect.planned.last_home_s) return {};
  const double later = *effect.now.last_home_s - *effect.planned.last_home_s;
  if (std::abs(later) < shortest_told_s) return {};
  return fmt::format("the last one is home {} {}", rehearsal::clock_words(std::abs(later)),
                     later > 0 ? "later" : "earlier");
}

std::string heads_words(const ListEffect& effect) {
  const int now = effect.now.heads, planned = effect.planned.heads;
  std::string words = now != planned                       ? fmt::format("{} instead of {}", now, planned)
                      : effect.unbooked + effect.away == 0 ? fmt::format("{} as booked", now)
                                                           : fmt::format("{}, as many as booked", now);
  if (now == planned && effect.unbooked + effect.away > 0)
    words += fmt::format(" ({} not booked, {} not here)", effect.unbooked, effect.away);
  if (effect.late > 0) words += fmt::format(", {} late", effect.late);
  return words;
}

}  // namespace

AtTheDoor at_the_door(const domain::Rehearsal& rehearsal) {
  AtTheDoor out;
  out.heads = static_cast<int>(rehearsal.people.size());
  if (rehearsal.timetable.planned_s) out.slack_s = *rehearsal.timetable.planned_s - rehearsal.timetable.p90_s;
  for (const domain::PlaceUse& use : rehearsal.places)
    if (use.wait_p90_s > std::max(out.queue_s, short_wait_s)) {
      out.queue_s = use.wait_p90_s;
      out.queue_at = use.name.empty() ? use.place.text : use.name;
    }
  for (const domain::BoxOutcome& box : rehearsal.timetable.boxes)
    if (box.piece) out.last_home_s = box.end_p50_s;
  return out;
}

Result<ListEffect> list_effect(const GymAtHand& at_hand, const std::string& class_id,
                               const std::stop_token& stop) {
  const auto known = class_called(at_hand.gym(), class_id);
  if (!known) return tl::unexpected(known.error());
  domain::GymClass planned = **known;
  planned.arrivals.clear();
  const auto before = rehearsed(at_hand, planned, stop);
  if (!before) return tl::unexpected(before.error());
  const auto now = rehearsed(at_hand, **known, stop);
  if (!now) return tl::unexpected(now.error());
  const domain::GymClass& list = **known;
  const auto booked = [&](const domain::Arrival& arrival) {
    return list.booked.empty() || std::ranges::count(list.booked, arrival.person) > 0;
  };
  const auto comes = [&](const domain::PersonId& person) {
    return list.arrivals.empty() || std::ranges::count(list.arrivals, person, &domain::Arrival::person) > 0;
  };
  const auto late = [](const domain::Arrival& arrival) { return arrival.late > base::Duration{}; };
  return ListEffect{.unbooked = static_cast<int>(std::ranges::count_if(list.arrivals, std::not_fn(booked))),
                    .away = static_cast<int>(std::ranges::count_if(list.booked, std::not_fn(comes))),
                    .late = static_cast<int>(std::ranges::count_if(list.arrivals, late)),
                    .planned = at_the_door(*before),
                    .now = at_the_door(*now)};
}

std::string in_words(const ListEffect& effect) {
  std::string words;
  for (const std::string& part : {slack_words(effect), queue_words(effect), last_home_words(effect)})
    if (!part.empty()) words += (words.empty() ? "" : "; ") + part;
  const std::string heads = heads_words(effect);
  return fmt::format("{}: {}.", heads, words.empty() ? "the hour stays as it was planned" : words);
}

}  // namespace repwright::app
