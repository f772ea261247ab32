#pragma once

namespace repwright::server {

/// Whether the other side of that connected socket (its file descriptor) has ended its side or is gone; what
/// it sent before and nobody has read yet does not hide it.
bool has_hung_up(int socket);

}  // namespace repwright::server
