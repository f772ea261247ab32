#pragma once

#include <chrono>
#include <map>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <thread>
#include <utility>

#include "loopback.hpp"
#include "server/server.hpp"

namespace repwright::test {

/// `/api/echo` says what it was sent, `/api/slow` ends with its stop, `/api/events` streams, `/api/change`
/// changes the boards, `/api/throw` breaks its promise.
inline server::Site echo_site() {
  server::Site site;
  site.cost = [](const api::Request& request) {
    return request.path == "/api/slow" ? api::Cost::Long : api::Cost::Quick;
  };
  site.answer = [](const api::Request& request, const std::stop_token& stop) {
    api::Response response;
    if (request.path == "/api/events") response.stream = true;
    if (request.path == "/api/change") response.changed = {api::Topic::Boards};
    if (request.path == "/api/throw") throw std::runtime_error("thrown");
    if (request.path == "/api/slow")
      while (!stop.stop_requested()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    response.body =
        request.path + (request.secure ? "|encrypted|" : "|") + request.cookies + "|" + request.body;
    return response;
  };
  std::map<std::string, server::PageFile, std::less<>> files;
  files["/index.html"] = {"<!doctype html>", "text/html; charset=utf-8", "no-store"};
  site.page = server::PageFiles(std::move(files));
  site.log = [](std::string_view) {};
  return site;
}

/// A server on a free port, run by a thread of its own until the end of the test.
class Running {
 public:
  explicit Running(server::Limits limits = {}) : Running(echo_site(), limits, {}) {}
  Running(server::Site site, server::Limits limits, std::optional<server::TlsIdentity> tls) {
    server::Settings settings;
    settings.tls = std::move(tls);
    settings.limits = limits;
    auto made = server::Server::listen(settings, std::move(site));
    if (!made) throw std::runtime_error(made.error().message);
    server_ = std::move(*made);
    port_ = server_->port();
    thread_ = std::thread([this] { server_->run(); });
  }
  ~Running() {
    server_->stop();
    if (thread_.joinable()) thread_.join();
  }
  Running(const Running&) = delete;
  Running& operator=(const Running&) = delete;

  std::uint16_t port() const { return port_; }
  Client connect() const { return Client(port_); }
  void stop() { server_->stop(); }
  void join() { thread_.join(); }

 private:
  std::unique_ptr<server::Server> server_;
  std::uint16_t port_ = 0;
  std::thread thread_;
};

inline constexpr const char* get_echo = "GET /api/echo?a=b HTTP/1.1\r\nHost: here\r\n\r\n";

}  // namespace repwright::test
