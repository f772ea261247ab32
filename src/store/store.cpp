#include "store/store.hpp"

namespace repwright::store {

std::optional<base::Error> stale(const std::string& what, domain::Version kept, domain::Version seen) {
  if (kept == seen) return std::nullopt;
  const char* why = kept == 0   ? "was taken away meanwhile"
                    : seen == 0 ? "is there already"
                                : "was changed meanwhile: look again";
  return base::Error{base::ErrorCode::Conflict, what + " " + why};
}

}  // namespace repwright::store
