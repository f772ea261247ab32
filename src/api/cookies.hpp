#pragma once

#include <string>
#include <string_view>

#include "api/http.hpp"

/// What a browser sends and keeps on its own account, and whether our page made it send it.
namespace repwright::api {

/// The value of the cookie of that name in the header Cookie; empty if there is none.
std::string cookie_value(std::string_view header, std::string_view name);

/// The name under which a browser keeps its session. An encrypted one has a name that nobody can set without
/// encryption (RFC 6265bis, 4.1.3.2), so that the plain and the encrypted page do not take each other's.
std::string_view session_cookie_name(const Request& request);

/// The token of the session that a request belongs to; empty if it has none.
std::string session_in(const Request& request);

/// The header Set-Cookie of a session: sent back to us alone, never to a script, gone with the browser's
/// memory of it after `seconds`; 0 takes it away.
std::string session_cookie(const Request& request, std::string_view token, int seconds);

/// Whether a request that writes comes from a page of ours (or from no browser at all): what Sec-Fetch-Site
/// and Origin say, and where neither is sent, a type of content that another site's form cannot send.
bool is_from_our_page(const Request& request);

}  // namespace repwright::api
