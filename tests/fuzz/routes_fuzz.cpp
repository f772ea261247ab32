#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "support/front_desk.hpp"

namespace {

using namespace repwright;

/// Every route that takes a body and does not compute for long.
constexpr std::array<std::string_view, 7> paths{"/api/read",    "/api/tidy",    "/api/people/preview",
                                                "/api/owner",   "/api/sign-in", "/api/accounts",
                                                "/api/sign-out"};

void expect(bool holds) {
  if (!holds) std::abort();
}

}  // namespace

/// Any bytes as a body give an answer in JSON, or a refusal that says why; never a fault of the program. The
/// first byte chooses the route.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 1 || size > 8192) return 0;
  test::FrontDesk front;
  const std::string body(reinterpret_cast<const char*>(data) + 1, size - 1);
  const std::string cookie = front.cookie_of(app::Role::Owner);
  const api::Response given =
      front.ask(api::Method::Post, std::string(paths[data[0] % paths.size()]), body, cookie);
  expect(given.status != 500);
  const auto json = nlohmann::json::parse(given.body, nullptr, false);
  expect(!json.is_discarded());
  expect((given.status == 200) != json.contains("error"));
  return 0;
}
