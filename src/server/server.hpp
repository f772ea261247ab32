#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

#include "api/cost.hpp"
#include "api/http.hpp"
#include "base/result.hpp"
#include "server/certificates.hpp"
#include "server/page_files.hpp"

/// HTTP/1.1 over sockets, plain or in TLS on the same port, in front of functions from request to response.
/// The library behind it (Boost.Beast) stays in server.cpp.
namespace repwright::server {

/// What one client may ask of the server, and how long it may take.
struct Limits {
  std::size_t body_bytes = std::size_t{1024} * 1024;
  std::size_t header_bytes = std::size_t{16} * 1024;
  std::size_t connections = 256;  // one more is closed at once
  std::size_t waiting = 64;       // requests that wait for a worker; one more gets 503
  std::chrono::milliseconds idle{60'000};
  std::chrono::milliseconds header{10'000};
  std::chrono::milliseconds body{20'000};
  std::chrono::milliseconds write{20'000};
  std::chrono::milliseconds heartbeat{15'000};  // a comment on a silent stream of events
  std::chrono::milliseconds grace{3'000};       // for answers under way when the server stops
  std::chrono::milliseconds look{2'000};        // how often to look what others changed
  std::chrono::milliseconds hang_up_look{100};  // how often to look whether who asked still wants the answer
};

/// Loopback: only this machine reaches the server.
enum class Reach : std::uint8_t { Loopback, Network };
enum class Signals : std::uint8_t { Leave, StopOnInterruptAndTerminate };

struct Settings {
  std::uint16_t port = 0;  // 0: any free one
  Reach reach = Reach::Loopback;
  Signals signals = Signals::Leave;
  Limits limits{};
  std::optional<TlsIdentity> tls = std::nullopt;  // also speaks TLS 1.2 and 1.3 to who begins with it
};

/// What the server serves. `answer` and `cost` get every request below /api; `answer` is called on
/// worker threads, several at once, and throws nothing.
struct Site {
  /// Its stop is asked for when the connection ends, or the server does.
  std::function<api::Response(const api::Request& request, const std::stop_token& stop)> answer;
  std::function<api::Cost(const api::Request& request)> cost;
  /// What changed by itself since the last time; called on a worker while somebody listens to events. May be
  /// empty.
  std::function<std::vector<api::Topic>()> look{};
  PageFiles page;
  std::function<void(std::string_view line)> log;  // called on the thread that runs the server
};

class Server {
 public:
  /// Listens; nothing is answered before `run`. Fails with Unavailable if the port is taken or forbidden,
  /// Invalid if the identity for TLS is none.
  static base::Result<std::unique_ptr<Server>> listen(const Settings& settings, Site site);
  ~Server();
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  std::uint16_t port() const;
  /// Serves until `stop`: then no new connection is taken, answers under way have the time of grace, streams
  /// of events end.
  void run();
  /// From any thread, as often as you like.
  void stop();

 private:
  struct Engine;
  explicit Server(std::unique_ptr<Engine> engine);
  std::unique_ptr<Engine> engine_;
};

}  // namespace repwright::server
