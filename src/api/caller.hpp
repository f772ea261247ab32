#pragma once

#include "domain/account.hpp"

namespace repwright::api {

using domain::name_of;
using domain::Role;
using domain::role_of;

/// Who asks.
using Caller = domain::Account;

}  // namespace repwright::api
