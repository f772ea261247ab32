#include "server/trust_page.hpp"

#include <fmt/format.h>

#include <utility>

namespace repwright::server {
namespace {

/// Without styles and scripts: it must work on whatever a phone opens it with.
constexpr const char* words = R"html(<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Trust this gym</title>
<h1>Trust this gym's Repwright</h1>
<p>Once per phone, tablet or screen. Afterwards what you type and read is encrypted.</p>
<ol>
<li><a href="{path}">Take the certificate</a> and open the file.</li>
<li>Compare its fingerprint (SHA-256) with the one in the terminal of the gym's machine. If they differ, stop:
somebody stands between.<br><code>{fingerprint}</code></li>
<li>Let the device trust it.
<ul>
<li>iOS and iPadOS: Settings, General, VPN &amp; Device Management, install the profile; then Settings, General,
About, Certificate Trust Settings, switch it on.</li>
<li>Android: Settings, search for "CA certificate", install it from the file.</li>
<li>Firefox, on any system: its own settings, Certificates, View, Authorities, Import.</li>
<li>Another browser on Windows or macOS: open the file; put it among the trusted root authorities, or in the key chain
as always trusted.</li>
<li>Chromium on Linux: Settings, Certificates, Authorities, Import.</li>
</ul></li>
<li>Open the address again with <code>https</code> instead of <code>http</code>.</li>
</ol>
<p>It vouches for machines inside your own network and for nothing else on the internet. To end the trust, delete it
in the same place.</p>
<h2>Without it</h2>
<p>The page works over plain <code>http</code> as well, with less:</p>
<ul>
<li>Whoever shares the network can read what is sent, also PINs and passwords.</li>
<li>The browser lets the screen go dark: set the device itself to stay awake.</li>
<li>The page cannot be opened while the network is gone.</li>
<li>No camera to read a code with, and no copying by a button.</li>
</ul>
</html>
)html";

}  // namespace

base::Result<PageFiles> with_trust_page(PageFiles page, const std::string& authority) {
  const auto der = der_of(authority);
  if (!der) return tl::unexpected(der.error());
  const auto fingerprint = fingerprint_of(authority);
  if (!fingerprint) return tl::unexpected(fingerprint.error());
  page.add(authority_path, {*der, "application/x-x509-ca-cert", "no-store"});
  page.add(trust_path, {fmt::format(fmt::runtime(words), fmt::arg("path", authority_path),
                                    fmt::arg("fingerprint", *fingerprint)),
                        "text/html; charset=utf-8", "no-store"});
  return page;
}

}  // namespace repwright::server
