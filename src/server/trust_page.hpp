#pragma once

#include <string>

#include "server/certificates.hpp"
#include "server/page_files.hpp"

namespace repwright::server {

inline constexpr const char* trust_path = "/trust";
inline constexpr const char* authority_path = "/authority.crt";

/// `page` with two addresses more, both to be reached without encryption: what to do so that a phone trusts
/// this program, and the authority's certificate as a file. Fails with Invalid if `authority` is no PEM text.
base::Result<PageFiles> with_trust_page(PageFiles page, const std::string& authority);

}  // namespace repwright::server
