#include "board/phrases.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace repwright::board {
namespace {

constexpr std::array<std::string_view, 13> small_counts{
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"};

std::string many(double count, std::string_view noun) {
  return fmt::format("{} {}{}", number_text(count), noun, count == 1 ? "" : "s");
}

bool any_with_commas(std::span<const std::string> parts) {
  return std::ranges::any_of(parts, [](const std::string& part) { return part.find(", ") != part.npos; });
}

}  // namespace

std::string number_text(double value) {
  std::string text = fmt::format("{:.3f}", value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

std::string count_word(int count) {
  const bool small = count >= 0 && count < static_cast<int>(small_counts.size());
  return small ? std::string(small_counts[static_cast<std::size_t>(count)]) : fmt::format("{}", count);
}

std::string times_word(int count) {
  if (count == 1) return "once";
  if (count == 2) return "twice";
  return count_word(count) + " times";
}

std::string time_words(base::Duration time) {
  const double seconds = time / base::second;
  // Coaches say '90 seconds' but '2 minutes 30'.
  if (seconds < 120 && seconds != 60) return many(seconds, "second");
  const double hours = seconds >= 7200 ? std::floor(seconds / 3600) : 0;
  const double minutes = std::floor((seconds - 3600 * hours) / 60);
  const double rest = seconds - 3600 * hours - 60 * minutes;
  std::string words = hours > 0 ? many(hours, "hour") : "";
  if (minutes > 0) words += (words.empty() ? "" : " ") + many(minutes, "minute");
  if (rest > 0) words += " " + number_text(rest);
  return words;
}

std::string period_words(base::Duration time) {
  return time == base::minute ? "minute" : time_words(time);
}

std::string listed(std::span<const std::string> parts, std::string_view last_link) {
  if (parts.empty()) return "";
  const bool commas = any_with_commas(parts);
  std::string all = parts.front();
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const bool last = i + 1 == parts.size();
    all += commas ? "; " : last ? " " : ", ";
    if (last) all += std::string(last_link) + " ";
    all += parts[i];
  }
  return all;
}

std::string in_order(std::span<const std::string> parts) {
  return fmt::format("{}", fmt::join(parts, any_with_commas(parts) ? "; " : ", "));
}

std::string capital(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

}  // namespace repwright::board
