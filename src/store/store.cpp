#include "store/store.hpp"

#include <algorithm>

namespace repwright::store {

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

std::optional<base::Error> stale(const std::string& what, domain::Version kept, domain::Version seen) {
  if (kept == seen) return std::nullopt;
  const char* why = kept == 0   ? "was taken away meanwhile"
                    : seen == 0 ? "is there already"
                                : "was changed meanwhile: look again";
  return base::Error{base::ErrorCode::Conflict, what + " " + why};
}

}  // namespace repwright::store
