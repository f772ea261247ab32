#pragma once

#include <arpa/inet.h>
#include <netinet/in.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

namespace repwright::test {

/// A plain blocking socket to a port of this machine, so that the server is not tested by the library that it
/// is made of. Reading gives up after ten seconds.
class Client {
 public:
  explicit Client(std::uint16_t port) : handle_(::socket(AF_INET, SOCK_STREAM, 0)) {
    sockaddr_in where{};
    where.sin_family = AF_INET;
    where.sin_port = htons(port);
    where.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    if (handle_ < 0 || ::connect(handle_, reinterpret_cast<const sockaddr*>(&where), sizeof where) != 0)
      throw std::runtime_error("cannot connect");
  }
  ~Client() {
    if (handle_ >= 0) ::close(handle_);
  }
  Client(Client&& other) noexcept
      : handle_(std::exchange(other.handle_, -1)), kept_(std::move(other.kept_)) {}
  Client(const Client&) = delete;
  Client& operator=(const Client&) = delete;
  Client& operator=(Client&&) = delete;

  int handle() const { return handle_; }

  /// False if the other side has hung up.
  bool send(std::string_view bytes) {
    while (!bytes.empty()) {
      const auto sent = ::send(handle_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
      if (sent <= 0) return false;
      bytes.remove_prefix(static_cast<std::size_t>(sent));
    }
    return true;
  }

  /// Everything up to and with `end`, or all there was when the other side hung up.
  std::string read_to(std::string_view end) {
    std::size_t at = 0;
    while ((at = kept_.find(end)) == std::string::npos)
      if (!more()) return std::exchange(kept_, {});
    std::string out = kept_.substr(0, at + end.size());
    kept_.erase(0, at + end.size());
    return out;
  }

  std::string read_bytes(std::size_t count) {
    while (kept_.size() < count)
      if (!more()) return std::exchange(kept_, {});
    std::string out = kept_.substr(0, count);
    kept_.erase(0, count);
    return out;
  }

  /// Until the other side hangs up.
  std::string read_all() {
    while (more()) continue;
    return std::exchange(kept_, {});
  }

 private:
  bool more() {
    pollfd waiting{handle_, POLLIN, 0};
    if (::poll(&waiting, 1, 10'000) != 1) throw std::runtime_error("no answer in ten seconds");
    char bytes[4096];
    const auto got = ::recv(handle_, bytes, sizeof bytes, 0);
    if (got > 0) kept_.append(bytes, static_cast<std::size_t>(got));
    return got > 0;
  }

  int handle_;
  std::string kept_;
};

struct Reply {
  int status = 0;
  std::string head;
  std::string body;
};

/// The next answer of a connection that stays open.
inline Reply next_reply(Client& client) {
  Reply reply;
  reply.head = client.read_to("\r\n\r\n");
  if (reply.head.size() > 12) reply.status = std::stoi(reply.head.substr(9, 3));
  const auto length = reply.head.find("Content-Length: ");
  if (length != std::string::npos) reply.body = client.read_bytes(std::stoul(reply.head.substr(length + 16)));
  return reply;
}

}  // namespace repwright::test
