#pragma once

#include "api/route_table.hpp"

/// The emergency card: what to do here and whom to call, in the owner's words.
namespace repwright::api {

/// `{"version", "text"}`; an empty text: the owner has set none.
Answer get_emergency(const Call& call);
/// `{"version"?, "text"}`
Answer put_emergency(const Call& call);

}  // namespace repwright::api
