#include "domain/movement_names.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <utility>
#include <vector>

namespace repwright::domain {
namespace {

constexpr std::array<std::string_view, 8> dashes{"\u2010", "\u2011", "\u2012", "\u2013",
                                                 "\u2014", "\u2015", "\u2212", "\u00AD"};
constexpr std::array<std::string_view, 3> apostrophes{"\u2019", "\u2018", "\u02BC"};
constexpr std::string_view hard_space = "\u00A0";

char small(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::string lower(std::string_view text) {
  std::string out(text);
  std::ranges::transform(out, out.begin(), small);
  return out;
}

/// How many bytes the mark at the front of `rest` has, if it is one of `marks`.
template <std::size_t N>
std::size_t mark_at_front(std::string_view rest, const std::array<std::string_view, N>& marks) {
  for (const std::string_view mark : marks)
    if (rest.starts_with(mark)) return mark.size();
  return 0;
}

/// How much of the word its singular keeps.
std::size_t singular_size(std::string_view word) {
  const bool shorthand =
      word.size() < 3 || (word.size() == 3 && word.find_first_of("aeiou") == std::string_view::npos);
  if (shorthand || !word.ends_with('s') || word.ends_with("ss")) return word.size();
  for (const std::string_view hissing : {"sses", "shes", "ches", "xes"})
    if (word.ends_with(hissing)) return word.size() - 2;
  return word.size() - 1;
}

/// How many bytes part two words at the front of `rest`: a blank, a hyphen or an underscore; 0 if none does.
std::size_t gap_at_front(std::string_view rest) {
  const char c = rest.front();
  if (static_cast<unsigned char>(c) < 0x80)
    return c == '-' || c == '_' || c == ' ' || (c >= '\t' && c <= '\r') ? 1 : 0;
  return rest.starts_with(hard_space) ? hard_space.size() : mark_at_front(rest, dashes);
}

/// How many bytes an apostrophe of any kind has at the front of `rest`; 0 if there is none.
std::size_t apostrophe_at_front(std::string_view rest) {
  const char c = rest.front();
  if (static_cast<unsigned char>(c) < 0x80) return c == '\'' || c == '`' ? 1 : 0;
  return mark_at_front(rest, apostrophes);
}

std::string without_blanks(std::string text) {
  std::erase(text, ' ');
  return text;
}

}  // namespace

std::string normal_name(std::string_view written) {
  std::string out;
  out.reserve(written.size());
  std::size_t word = 0;  // where the word being written begins
  const auto end_word = [&] {
    out.resize(word + singular_size(std::string_view(out).substr(word)));
    if (out.size() > word) out += ' ';
    word = out.size();
  };
  for (std::size_t at = 0; at < written.size();) {
    const std::string_view rest = written.substr(at);
    if (const std::size_t gap = gap_at_front(rest); gap > 0) {
      end_word();
      at += gap;
    } else if (const std::size_t apostrophe = apostrophe_at_front(rest); apostrophe > 0) {
      at += apostrophe;
    } else {
      out += small(rest.front());
      ++at;
    }
  }
  end_word();
  if (!out.empty()) out.pop_back();
  return out;
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, changed});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], before[j - 2] + 1);
    }
    std::swap(before, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

std::string_view nearest_name(std::string_view written, std::span<const std::string_view> candidates) {
  std::string_view nearest;
  std::size_t least = std::string_view::npos;
  for (const std::string_view candidate : candidates) {
    const std::size_t allowed = std::min<std::size_t>(3, std::max<std::size_t>(1, candidate.size() / 3));
    const std::size_t longer = std::max(written.size(), candidate.size());
    if (longer - std::min(written.size(), candidate.size()) > allowed) continue;
    const std::size_t distance = edit_distance(written, candidate);
    if (distance > allowed || distance >= least) continue;
    least = distance;
    nearest = candidate;
  }
  return nearest;
}

MovementNames::MovementNames(const Catalogue& catalogue) {
  std::set<std::string> doubtful;
  const auto add = [&](const std::string& name, const MovementId& id) {
    written_.try_emplace(lower(name), id);
    const std::string normal = normal_name(name);
    normal_.try_emplace(normal, id);
    const std::string squeezed = without_blanks(normal);
    if (const auto [at, fresh] = squeezed_.try_emplace(squeezed, id); !fresh && at->second != id)
      doubtful.insert(squeezed);
  };
  for (const Movement& movement : catalogue.movements) {
    add(movement.id.text, movement.id);
    add(movement.name, movement.id);
    for (const std::string& alias : movement.aliases) add(alias, movement.id);
  }
  for (const auto& [word, ids] : catalogue.ambiguous_words)
    doubtful.insert(without_blanks(normal_name(word)));
  for (const std::string& squeezed : doubtful) squeezed_.erase(squeezed);
}

const MovementId* MovementNames::find(std::string_view written) const {
  if (const auto at = written_.find(lower(written)); at != written_.end()) return &at->second;
  const std::string normal = normal_name(written);
  if (const auto at = normal_.find(normal); at != normal_.end()) return &at->second;
  if (const auto at = squeezed_.find(without_blanks(normal)); at != squeezed_.end()) return &at->second;
  return nullptr;
}

}  // namespace repwright::domain
