#pragma once

#include "api/route_table.hpp"

/// Signing in and out, and the stream of what changes.
namespace repwright::api {

Answer get_me(const Call& call);
Answer post_owner(const Call& call);
Answer post_sign_in(const Call& call);
Answer post_sign_out(const Call& call);
Answer get_events(const Call& call);

}  // namespace repwright::api
