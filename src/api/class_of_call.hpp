#pragma once

#include <tl/expected.hpp>

#include "api/route_table.hpp"

/// What the routes below `/api/classes/*/` have in common.
namespace repwright::api {

/// Bytes of a key that a phone made for what it sends.
inline constexpr std::size_t longest_key = 64;

/// The class of the address, if who asks may look at it.
tl::expected<const domain::GymClass*, Fault> class_in(const Call& call);

}  // namespace repwright::api
