#include "store/store.hpp"

#include <algorithm>
#include <iterator>

namespace repwright::store {

base::Result<std::int64_t> Store::add_score(const domain::ScoreEntry& entry, const domain::Stamp& by) {
  return add_scores({{entry, by}}).map([](const std::vector<domain::AddedScore>& added) {
    return added.front().number;
  });
}

std::string_view name_of(domain::Paper paper) {
  return paper == domain::Paper::EmergencyCard ? "emergency" : "rankings";
}

std::string without_line(const std::string& text, const std::string& line) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    if (text.compare(at, end - at, line) != 0) out += text.substr(at, end - at) + "\n";
    at = end + 1;
  }
  return out;
}

std::vector<domain::KeptScore> those_of_class(const std::vector<domain::KeptScore>& all,
                                              const std::string& class_id) {
  std::vector<domain::KeptScore> out;
  std::ranges::copy_if(all, std::back_inserter(out),
                       [&](const domain::KeptScore& kept) { return kept.entry.class_id == class_id; });
  return out;
}

std::optional<base::Error> stale(const std::string& what, domain::Version kept, domain::Version seen) {
  if (kept == seen) return std::nullopt;
  const char* why = kept == 0   ? "was taken away meanwhile"
                    : seen == 0 ? "is there already"
                                : "was changed meanwhile: look again";
  return base::Error{base::ErrorCode::Conflict, what + " " + why};
}

std::optional<base::Error> holds_class(const std::string& id, domain::Version kept, domain::Version seen,
                                       std::int64_t lines) {
  if (kept == 0) return base::Error{base::ErrorCode::NotFound, "no class is called '" + id + "'"};
  if (auto error = stale("class " + id, kept, seen)) return error;
  if (lines == 0) return std::nullopt;
  return base::Error{base::ErrorCode::Conflict, "scores of this class are kept, so it stays"};
}

domain::Stamp stamp_of(const domain::ClockAct& act) {
  const std::chrono::sys_time<std::chrono::milliseconds> at{std::chrono::milliseconds(act.at_ms)};
  return {act.who, std::chrono::floor<std::chrono::seconds>(at)};
}

std::string clock_words(const std::string& class_id, const domain::ClockAct& act) {
  return "clock " + class_id + ": " + std::string(domain::name_of(act.deed));
}

base::Result<std::optional<std::int64_t>> kept_before(const std::vector<domain::ClockAct>& acts,
                                                      const domain::ClockAct& act, std::int64_t seen) {
  const auto same = std::ranges::find(acts, act.key, &domain::ClockAct::key);
  if (same != acts.end()) return std::optional<std::int64_t>(same - acts.begin() + 1);
  if (static_cast<std::int64_t>(acts.size()) != seen)
    return base::failure(base::ErrorCode::Conflict, "somebody else moved the clock meanwhile: look again");
  return std::optional<std::int64_t>();
}

}  // namespace repwright::store
