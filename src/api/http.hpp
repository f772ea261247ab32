#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// One request and its answer as plain values: what `server` reads from a socket and writes to it.
namespace repwright::api {

enum class Method : std::uint8_t { Get, Put, Post, Delete, Other };

struct Request {
  Method method = Method::Get;
  std::string path;  // as sent, without the query
  std::string body;
  std::string content_type;
  std::string cookies;     // the header Cookie
  std::string host;        // the header Host
  std::string origin;      // the header Origin; empty: not sent
  std::string fetch_site;  // the header Sec-Fetch-Site; empty: not sent
  std::string peer;        // the address of the other side
  bool secure = false;     // came encrypted
};

/// What of the gym changed: told to every page that is open.
enum class Topic : std::uint8_t { Boards, Classes, People, Hall, House, Scores, Door, Clock };
/// The word for each topic, in the same order.
inline constexpr std::array<std::string_view, 8> topic_names{"boards", "classes", "people", "hall",
                                                             "house",  "scores",  "door",   "clock"};
static_assert(topic_names.size() == static_cast<std::size_t>(Topic::Clock) + 1, "a word for every topic");

struct Response {
  int status = 200;
  std::string body = {};
  std::string type = "application/json";
  std::vector<std::pair<std::string, std::string>> headers = {};
  std::vector<Topic> changed = {};
  bool stream = false;   // goes on as a stream of events; `body` is empty
  std::string log = {};  // for the one who runs the program; never sent
};

}  // namespace repwright::api
