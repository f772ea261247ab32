#include "server/hung_up.hpp"

#include <poll.h>

namespace repwright::server {

bool has_hung_up(int socket) {
  constexpr short ends = POLLRDHUP | POLLHUP | POLLERR | POLLNVAL;
  pollfd look{.fd = socket, .events = POLLRDHUP, .revents = 0};
  return poll(&look, 1, 0) > 0 && (look.revents & ends) != 0;
}

}  // namespace repwright::server
