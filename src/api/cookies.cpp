#include "api/cookies.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"

namespace repwright::api {

std::string cookie_value(std::string_view header, std::string_view name) {
  for (const std::string_view part : base::split(header, ';')) {
    const std::string_view pair = base::trim(part);
    if (pair.size() > name.size() && pair.starts_with(name) && pair[name.size()] == '=')
      return std::string(pair.substr(name.size() + 1));
  }
  return "";
}

std::string_view session_cookie_name(const Request& request) {
  return request.secure ? "__Host-session" : "session";
}

std::string session_in(const Request& request) {
  return cookie_value(request.cookies, session_cookie_name(request));
}

std::string session_cookie(const Request& request, std::string_view token, int seconds) {
  return std::string(session_cookie_name(request)) + "=" + std::string(token) +
         "; Path=/; HttpOnly; SameSite=Strict; Max-Age=" + std::to_string(seconds) +
         (request.secure ? "; Secure" : "");
}

bool is_from_our_page(const Request& request) {
  if (!request.fetch_site.empty() && request.fetch_site != "same-origin") return false;
  if (!request.origin.empty())
    return !request.host.empty() && (request.origin == "https://" + request.host ||
                                     (!request.secure && request.origin == "http://" + request.host));
  if (!request.fetch_site.empty()) return true;
  // Without a preflight a browser sends to another site only these (Fetch standard, CORS-safelisted headers).
  constexpr std::array<std::string_view, 4> of_forms{"", "text/plain", "application/x-www-form-urlencoded",
                                                     "multipart/form-data"};
  const std::string_view type(request.content_type);
  const std::string kind = base::lower(base::trim(type.substr(0, type.find(';'))));
  return std::ranges::find(of_forms, std::string_view(kind)) == of_forms.end();
}

}  // namespace repwright::api
