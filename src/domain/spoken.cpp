#include "domain/spoken.hpp"

#include <algorithm>
#include <array>

namespace repwright::domain {
namespace {

constexpr std::array<std::string_view, 14> behind_the_head{
    " to ",      " over ",  " with ", " from ",    " on ",     " at ", " in ",
    " without ", " under ", " into ", " against ", " around ", ", ",   " (",
};

bool is_vowel(char c) {
  return std::string_view("aeiou").find(c) != std::string_view::npos;
}

bool hisses(std::string_view word) {
  return word.ends_with("s") || word.ends_with("x") || word.ends_with("ch") || word.ends_with("sh");
}

}  // namespace

std::string plural(std::string_view name) {
  std::size_t end = name.size();
  for (const std::string_view mark : behind_the_head) end = std::min(end, name.find(mark));
  std::string head(name.substr(0, end));
  const std::string_view rest = name.substr(end);
  if (head.size() > 1 && head.ends_with('y') && !is_vowel(head[head.size() - 2])) {
    head.back() = 'i';
    head += "es";
  } else if (!head.empty()) {
    head += hisses(head) ? "es" : "s";
  }
  return head.append(rest);
}

std::string spoken_one(const Movement& movement) {
  if (!movement.spoken.empty()) return movement.spoken;
  std::string name = movement.name;
  if (!name.empty() && name.front() >= 'A' && name.front() <= 'Z')
    name.front() = static_cast<char>(name.front() - 'A' + 'a');
  return name;
}

std::string spoken_many(const Movement& movement) {
  return movement.spoken_many.empty() ? plural(spoken_one(movement)) : movement.spoken_many;
}

}  // namespace repwright::domain
