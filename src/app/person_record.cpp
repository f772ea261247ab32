#include "app/person_record.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>

#include "store/forget.hpp"

namespace repwright::app {
namespace {

using base::Result;
using domain::PersonId;

/// Empty where the store keeps no such thing.
template <class T>
Result<T> as_far_as_kept(Result<T> found) {
  if (!found && found.error().code == base::ErrorCode::NotKept) return T{};
  return found;
}

std::vector<ClassOfPerson> classes_of(const store::GymFolder& gym, const PersonId& person) {
  std::vector<ClassOfPerson> out;
  for (const auto& [id, gym_class] : gym.classes) {
    ClassOfPerson one{.id = id, .date = gym_class.date, .late = {}};
    one.booked = std::ranges::count(gym_class.booked, person) > 0;
    one.walked_in = std::ranges::count(gym_class.walk_ins, person) > 0;
    const auto came = std::ranges::find(gym_class.arrivals, person, &domain::Arrival::person);
    if (came != gym_class.arrivals.end()) one.late = came->late;
    if (one.booked || one.walked_in || one.late) out.push_back(std::move(one));
  }
  return out;
}

Result<void> add_scores(store::Store& store, PersonRecord& record) {
  const auto lines = store.scores();
  if (!lines) return tl::unexpected(lines.error());
  for (const domain::KeptScore& line : *lines) {
    if (line.entry.person != record.person.id) continue;
    auto versions = as_far_as_kept(store.score_versions(line.number));
    if (!versions) return tl::unexpected(versions.error());
    if (versions->empty()) versions->push_back(line);
    record.scores.push_back(std::move(*versions));
  }
  return {};
}

Result<void> add_efforts(store::Store& store, const store::GymFolder& gym, PersonRecord& record) {
  for (const auto& [id, gym_class] : gym.classes) {
    const auto efforts = as_far_as_kept(store.efforts(id));
    if (!efforts) return tl::unexpected(efforts.error());
    for (const domain::ClassEffort& effort : *efforts)
      if (effort.person == record.person.id) record.efforts.push_back(effort);
  }
  return {};
}

Result<void> add_door_lines(store::Store& store, const store::GymFolder& gym, PersonRecord& record) {
  for (const auto& [id, gym_class] : gym.classes) {
    const auto lines = store.door_lines(id);
    if (!lines) return tl::unexpected(lines.error());
    std::ranges::copy_if(*lines, std::back_inserter(record.at_door), [&](const domain::KeptDoorLine& each) {
      return each.line.person == record.person.id;
    });
  }
  return store.paper(domain::Paper::Rankings).map([&](const domain::KeptPaper& paper) {
    record.in_rankings = store::without_line(paper.text, record.person.id.text) != paper.text;
  });
}

Result<void> add_notes(store::Store& store, PersonRecord& record) {
  // Also what wore off lies there until the next note is written.
  const auto notes = as_far_as_kept(store.notes_on(std::chrono::year{1} / 1 / 1));
  if (!notes) return tl::unexpected(notes.error());
  for (const domain::KeptNote& kept : *notes)
    if (kept.note.person == record.person.id) record.notes.push_back(kept);
  return {};
}

Result<void> add_accounts(store::Store& store, PersonRecord& record) {
  if (store.accounts() == nullptr) return {};
  const auto all = store.accounts()->all();
  if (!all) return tl::unexpected(all.error());
  std::set<std::string> names;
  for (const domain::Account& account : *all)
    if (account.person == record.person.id) {
      names.insert(account.name);
      record.accounts.push_back(account);
    }
  domain::TrailPage page{.most = 1000};
  while (true) {
    const auto lines = as_far_as_kept(store.trail(page));
    if (!lines) return tl::unexpected(lines.error());
    if (lines->empty()) return {};
    for (const domain::TrailLine& line : *lines)
      if (names.contains(line.by.who)) record.trail.push_back(line);
    page.before = lines->back().number;
  }
}

}  // namespace

Result<domain::Person> person_named(const std::vector<domain::Person>& people, std::string_view name) {
  std::vector<const domain::Person*> found;
  for (const domain::Person& each : people) {
    if (each.id.text == name) return each;
    if (each.name == name) found.push_back(&each);
  }
  if (found.size() == 1) return *found.front();
  if (found.empty())
    return base::failure(base::ErrorCode::NotFound, fmt::format("no person is called '{}'", name));
  std::vector<std::string> ids;
  ids.reserve(found.size());
  for (const domain::Person* each : found) ids.push_back(each->id.text);
  return base::failure(base::ErrorCode::Invalid,
                       fmt::format("{} people are called '{}': say which by the id, one of {}", found.size(),
                                   name, fmt::join(ids, ", ")));
}

Result<PersonRecord> person_record(store::Store& store, const store::GymFolder& gym,
                                   const domain::Person& person) {
  PersonRecord record;
  record.person = person;
  record.classes = classes_of(gym, person.id);
  record.boards = boards_naming(gym, person.name);
  return add_scores(store, record)
      .and_then([&] { return add_efforts(store, gym, record); })
      .and_then([&] { return add_door_lines(store, gym, record); })
      .and_then([&] { return add_notes(store, record); })
      .and_then([&] { return add_accounts(store, record); })
      .map([&] { return std::move(record); });
}

std::vector<std::string> boards_naming(const store::GymFolder& gym, const std::string& name) {
  const std::string_view first = std::string_view(name).substr(0, name.find(' '));
  std::vector<std::string> out;
  for (const auto& [id, text] : gym.boards)
    if (store::find_words(text, first, 0) != std::string_view::npos) out.push_back(id);
  return out;
}

}  // namespace repwright::app
