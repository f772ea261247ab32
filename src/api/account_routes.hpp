#pragma once

#include <nlohmann/json_fwd.hpp>

#include "api/route_table.hpp"

/// Who may sign in, and the trail of who changed what: for the owner.
namespace repwright::api {

/// `{"name", "role", "class"?, "person"?}`
nlohmann::ordered_json account_json(const Caller& account);

Answer get_accounts(const Call& call);
Answer post_account(const Call& call);

/// Signs an account out wherever it is signed in.
Answer post_account_sign_out(const Call& call);
Answer post_account_remove(const Call& call);

/// `{"lines": [{"number", "who", "at", "what"}], "next"}`, the newest first; `next` is null or the number
/// that
/// `/api/trail/*` goes on from.
Answer get_trail(const Call& call);
Answer get_trail_before(const Call& call);

}  // namespace repwright::api
