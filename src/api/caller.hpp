#pragma once

#include "app/accounts.hpp"

namespace repwright::api {

using app::name_of;
using app::Role;
using app::role_of;

/// Who asks.
using Caller = app::Account;

}  // namespace repwright::api
