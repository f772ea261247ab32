#pragma once

#include <cstdint>
#include <string>
#include <tl/expected.hpp>

namespace repwright::base {

/// What a caller can act on; what exactly went wrong is in the message.
enum class ErrorCode : std::uint8_t {
  NotFound,
  Invalid,
  Infeasible,
  Conflict,
  Unavailable,
  Stopped,
  NotKept,       // this kind of store has no place for it
  Locked,        // another program writes
  Full,          // no room on the disk
  ReadOnly,      // may be read, not written
  NotADatabase,  // of another kind, or damaged
  NewerSchema,   // written by a newer program
};

/// Why a call could rightly fail, in words for the person who asked.
struct [[nodiscard]] Error {
  ErrorCode code = ErrorCode::Invalid;
  std::string message;
};

/// A value, or the error that took its place. The one alias to change when the compiler brings its own.
template <class T>
using Result = tl::expected<T, Error>;

/// Ready to be returned from a function that returns a `Result`.
inline tl::unexpected<Error> failure(ErrorCode code, std::string message) {
  return tl::unexpected<Error>(Error{code, std::move(message)});
}

}  // namespace repwright::base
