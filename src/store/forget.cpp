#include "store/forget.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace repwright::store {
namespace {

using domain::PersonId;
using domain::ScoreEntry;

bool is_letter(char c) {
  // Bytes above ASCII are parts of letters of other scripts.
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
         static_cast<unsigned char>(c) >= 0x80;
}

bool stands_alone(std::string_view text, std::size_t at, std::size_t length) {
  const bool before = at > 0 && is_letter(text[at - 1]);
  const bool after = at + length < text.size() && is_letter(text[at + length]);
  return !before && !after;
}

}  // namespace

std::string nameless_writer(const std::string& who, const Leaver& leaver) {
  return leaver.accounts.contains(who) || who == leaver.name ? somebody : who;
}

std::size_t find_words(std::string_view text, std::string_view words, std::size_t from) {
  if (words.empty()) return std::string_view::npos;
  auto at = text.find(words, from);
  while (at != std::string_view::npos && !stands_alone(text, at, words.size())) at = text.find(words, at + 1);
  return at;
}

std::string nameless_text(const std::string& text, const Leaver& leaver) {
  const std::string& name = leaver.name;
  if (name.find(' ') == std::string::npos) return text;
  std::string out;
  std::size_t done = 0;
  for (auto at = find_words(text, name, 0); at != std::string::npos; at = find_words(text, name, done)) {
    out.append(text, done, at - done).append(somebody);
    done = at + name.size();
  }
  return out.append(text, done);
}

std::string nameless_trail(const std::string& what, const Leaver& leaver) {
  constexpr std::string_view head = "account ";
  for (const std::string& account : leaver.accounts)
    if (what.starts_with(std::string(head) + account + ":"))
      return std::string(head) + somebody + what.substr(head.size() + account.size());
  return what;
}

bool take_off(domain::GymClass& gym_class, const Leaver& leaver) {
  const auto taken = std::erase(gym_class.booked, leaver.person) +
                     std::erase(gym_class.walk_ins, leaver.person) +
                     std::erase_if(gym_class.arrivals,
                                   [&](const domain::Arrival& each) { return each.person == leaver.person; });
  return taken > 0;
}

PersonId nameless_id(const std::set<PersonId>& taken) {
  int number = 1;
  while (taken.contains({somebody + ("-" + std::to_string(number))})) ++number;
  return {somebody + ("-" + std::to_string(number))};
}

std::vector<std::size_t> make_nameless(std::vector<ScoreEntry>& sheet, const Leaver& leaver) {
  using Session = std::pair<std::chrono::sys_days, std::string>;
  const auto session_of = [](const ScoreEntry& entry) {
    return Session{std::chrono::sys_days{entry.date}, entry.board_id};
  };
  std::map<Session, std::set<PersonId>> there;
  for (const ScoreEntry& entry : sheet) there[session_of(entry)].insert(entry.person);
  std::map<Session, PersonId> ids;
  for (const auto& [session, people] : there) ids[session] = nameless_id(people);
  std::vector<std::size_t> changed;
  for (std::size_t i = 0; i < sheet.size(); ++i) {
    ScoreEntry& entry = sheet[i];
    const ScoreEntry before = entry;
    if (entry.person == leaver.person) entry.person = ids.at(session_of(entry));
    entry.entered_by = nameless_writer(entry.entered_by, leaver);
    if (entry != before) changed.push_back(i);
  }
  return changed;
}

}  // namespace repwright::store
