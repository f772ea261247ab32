#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <initializer_list>
#include <memory>
#include <optional>
#include <span>
#include <stop_token>
#include <string>
#include <string_view>

#include "api/caller.hpp"
#include "api/cost.hpp"
#include "api/fault.hpp"
#include "api/http.hpp"
#include "app/desk.hpp"
#include "app/sign_in.hpp"
#include "base/require.hpp"
#include "domain/solver.hpp"
#include "store/store.hpp"

/// Every address of the program, who may ask it, and what answers. No socket and no clock: the same request
/// to the same gym gives the same answer.
namespace repwright::api {

/// What the handlers work with. They may run on several threads at once.
struct Services {
  app::Desk& desk;
  app::Gate& gate;
  store::Store& store;
  std::function<std::chrono::sys_time<std::chrono::milliseconds>()> clock;
  domain::Solver& solver;
};

/// One request on its way to its handler. `id` is the part of the path that stands for `*`.
struct Call {
  const Request& request;
  std::string id;
  std::optional<Caller> caller;
  Services services;
  std::shared_ptr<const app::GymAtHand> at_hand;  // as it lay on the desk when the request came
  const app::OpenGym* gym;                        // of it
  std::optional<base::Error> unread;              // why `gym` is older than what is kept
  std::stop_token stop;

  /// Who asks, on a route that is not for anyone.
  const Caller& who() const {
    if (!caller) throw base::Bug("a handler asks who is signed in on a route for anyone");
    return *caller;
  }

  /// Who asks, now.
  domain::Stamp stamp() const { return {who().name, services.gate.now()}; }

  /// A change of what lies in the store like this, by who asks, now.
  domain::Seen seen(const domain::Saved& saved) const { return {saved.version, stamp()}; }
};

/// Which roles may ask; `anyone` also without having signed in.
class Access {
 public:
  static constexpr Access anyone() { return Access(0xFF); }
  constexpr Access(std::initializer_list<Role> roles) {
    for (const Role role : roles) bits_ = static_cast<std::uint8_t>(bits_ | bit(role));
  }
  constexpr bool open() const { return bits_ == 0xFF; }
  constexpr bool admits(Role role) const { return (bits_ & bit(role)) != 0; }

 private:
  explicit constexpr Access(std::uint8_t bits) : bits_(bits) {}
  static constexpr std::uint8_t bit(Role role) {
    return static_cast<std::uint8_t>(1u << static_cast<unsigned>(role));
  }
  std::uint8_t bits_ = 0;
};

struct Route {
  Method method;
  std::string_view path;  // `*` stands for one part, which is the id
  Access access;
  Cost cost;
  Answer (*handler)(const Call& call);
};

std::span<const Route> routes();

/// The route that a request meets, and the id in its path.
struct Match {
  const Route* route = nullptr;
  std::string id;
  std::string allowed;  // if only other methods are there: which
};
Match match(Method method, std::string_view path);

/// How much work the answer will be; Quick for what no route meets.
Cost cost_of(const Request& request);

/// The answer to any request: 403 for what another site made a browser send, 404 and 405 for what is not in
/// the table, 401 and 403 for who may not ask, what the handler says, 500 for a fault of the program (said in
/// `Response::log`).
Response respond(const Request& request, const Services& services, std::stop_token stop);

}  // namespace repwright::api
