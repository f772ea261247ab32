#include "server/server.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <csignal>
#include <latch>
#include <thread>
#include <vector>

#include "running.hpp"

namespace repwright {
namespace {

using namespace std::chrono_literals;
using server::Server;
using server::Settings;
using test::Client;
using test::echo_site;
using test::get_echo;
using test::next_reply;
using test::Reply;
using test::Running;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

std::string post(std::string_view path, std::string_view body, std::string_view headers = "") {
  return "POST " + std::string(path) + " HTTP/1.1\r\nHost: here\r\n" + std::string(headers) +
         "Content-Length: " + std::to_string(body.size()) + "\r\n\r\n" + std::string(body);
}

/// So many clients that wait for an answer which takes until it is stopped.
std::vector<Client> slow_requests(const Running& running, int count) {
  std::vector<Client> clients;
  for (int i = 0; i < count; ++i) {
    clients.push_back(running.connect());
    clients.back().send(post("/api/slow", ""));
  }
  return clients;
}

TEST(Server, AnswersRequestAfterRequestOnOneConnection) {
  const Running running;
  Client client = running.connect();
  for (int i = 0; i < 3; ++i) {
    client.send(post("/api/echo", "hello", "Cookie: a=1\r\n"));
    const Reply reply = next_reply(client);
    EXPECT_EQ(reply.status, 200);
    EXPECT_EQ(reply.body, "/api/echo|a=1|hello");
  }
}

TEST(Server, AnswersRequestsThatCameInOnePacket) {
  const Running running;
  Client client = running.connect();
  client.send(post("/api/echo", "one") + post("/api/echo", "two") + get_echo);
  EXPECT_EQ(next_reply(client).body, "/api/echo||one");
  EXPECT_EQ(next_reply(client).body, "/api/echo||two");
  EXPECT_EQ(next_reply(client).body, "/api/echo||");
}

TEST(Server, HangsUpWhenTheClientAsksForIt) {
  const Running running;
  Client client = running.connect();
  client.send("GET /api/echo HTTP/1.1\r\nHost: here\r\nConnection: close\r\n\r\n");
  EXPECT_THAT(client.read_all(), StartsWith("HTTP/1.1 200"));
}

TEST(Server, SendsItsSafetyHeadersWithPagesAnswersAndRefusals) {
  const Running running;
  for (const char* request :
       {get_echo, "GET / HTTP/1.1\r\n\r\n", "GET /gone.js HTTP/1.1\r\n\r\n", "nonsense\r\n\r\n"}) {
    Client client = running.connect();
    client.send(request);
    const Reply reply = next_reply(client);
    EXPECT_THAT(reply.head, HasSubstr("Content-Security-Policy: default-src 'self';")) << request;
    EXPECT_THAT(reply.head, HasSubstr("frame-ancestors 'none'")) << request;
    EXPECT_THAT(reply.head, HasSubstr("X-Content-Type-Options: nosniff\r\n")) << request;
    EXPECT_THAT(reply.head, HasSubstr("Referrer-Policy: no-referrer\r\n")) << request;
    EXPECT_THAT(reply.head, HasSubstr("Cache-Control: no-store\r\n")) << request;
  }
}

TEST(Server, ServesThePageAndNothingBesideIt) {
  const Running running;
  Client client = running.connect();
  client.send("GET / HTTP/1.1\r\nHost: here\r\n\r\n");
  EXPECT_EQ(next_reply(client).body, "<!doctype html>");
  for (const char* path : {"/../CMakeLists.txt", "/%2e%2e/secret.txt", "//etc/passwd.txt", "/index.htm."}) {
    client.send("GET " + std::string(path) + " HTTP/1.1\r\nHost: here\r\n\r\n");
    EXPECT_EQ(next_reply(client).status, 404) << path;
  }
  client.send("POST / HTTP/1.1\r\nHost: here\r\nContent-Length: 0\r\n\r\n");
  EXPECT_EQ(next_reply(client).status, 404);
}

TEST(Server, AnswersHeadWithoutABody) {
  const Running running;
  Client client = running.connect();
  client.send("HEAD / HTTP/1.1\r\nHost: here\r\n\r\n");
  EXPECT_THAT(client.read_to("\r\n\r\n"), HasSubstr("Content-Length: 15"));
  client.send(get_echo);
  EXPECT_EQ(next_reply(client).status, 200);
}

TEST(Server, RefusesABodyAboveTheLimitHoweverItIsSent) {
  server::Limits limits;
  limits.body_bytes = 1000;
  const Running running(limits);
  Client announced = running.connect();
  announced.send(post("/api/echo", std::string(1001, 'x')));
  EXPECT_EQ(next_reply(announced).status, 413);
  Client chunked = running.connect();
  chunked.send("POST /api/echo HTTP/1.1\r\nHost: here\r\nTransfer-Encoding: chunked\r\n\r\n");
  for (int i = 0; i < 11; ++i) chunked.send("64\r\n" + std::string(100, 'x') + "\r\n");
  EXPECT_EQ(next_reply(chunked).status, 413);
  Client allowed = running.connect();
  allowed.send(post("/api/echo", std::string(1000, 'x')));
  EXPECT_EQ(next_reply(allowed).status, 200);
}

TEST(Server, LetsAClientThatSendsTooMuchReadWhy) {
  const Running running;
  Client client = running.connect();
  client.send(post("/api/echo", std::string(2U << 20, 'x')));
  const std::string all = client.read_all();
  EXPECT_THAT(all, StartsWith("HTTP/1.1 413"));
  EXPECT_THAT(all, HasSubstr("1048576"));
}

TEST(Server, RefusesAHeaderAboveTheLimit) {
  server::Limits limits;
  limits.header_bytes = 2000;
  const Running running(limits);
  Client client = running.connect();
  client.send("GET /api/echo HTTP/1.1\r\nX: " + std::string(3000, 'x') + "\r\n\r\n");
  EXPECT_EQ(next_reply(client).status, 431);
}

TEST(Server, RefusesWhatIsNotHttp) {
  const Running running;
  for (const char* bytes :
       {"hello\r\n\r\n", "GET\r\n\r\n", "GET / HTTP/9.9\r\n\r\n", "GET / HTTP/1.1\r\nbad header\r\n\r\n",
        "POST /api/echo HTTP/1.1\r\nContent-Length: -1\r\n\r\n",
        "POST /api/echo HTTP/1.1\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n"}) {
    Client client = running.connect();
    client.send(bytes);
    EXPECT_EQ(next_reply(client).status, 400) << bytes;
  }
}

TEST(Server, TellsAClientThatAsksFirstToGoOn) {
  const Running running;
  Client client = running.connect();
  client.send("POST /api/echo HTTP/1.1\r\nHost: here\r\nExpect: 100-continue\r\nContent-Length: 2\r\n\r\n");
  EXPECT_EQ(client.read_to("\r\n\r\n"), "HTTP/1.1 100 Continue\r\n\r\n");
  client.send("hi");
  EXPECT_EQ(next_reply(client).body, "/api/echo||hi");
}

TEST(Server, CutsAClientThatNeverFinishesItsHeaderWhileOthersAreServed) {
  server::Limits limits;
  limits.header = 300ms;
  const Running running(limits);
  Client slow = running.connect();
  slow.send("GET /api/echo HTTP/1.1\r\nX");
  Client other = running.connect();
  other.send(get_echo);
  EXPECT_EQ(next_reply(other).status, 200);
  EXPECT_EQ(slow.read_all(), "");
}

TEST(Server, CutsASilentClientAndOneThatSendsItsBodyDropByDrop) {
  server::Limits limits;
  limits.idle = 200ms;
  limits.body = 300ms;
  const Running running(limits);
  Client silent = running.connect();
  EXPECT_EQ(silent.read_all(), "");
  Client dripping = running.connect();
  dripping.send("POST /api/echo HTTP/1.1\r\nHost: here\r\nContent-Length: 100000\r\n\r\n");
  int drops = 0;
  while (dripping.send("x") && drops < 1000) {
    std::this_thread::sleep_for(10ms);
    ++drops;
  }
  EXPECT_LT(drops, 1000);
}

TEST(Server, CutsAClientThatDoesNotReadItsEvents) {
  server::Limits limits;
  limits.write = 200ms;
  limits.heartbeat = 1ms;
  const Running running(limits);
  Client deaf = running.connect();
  deaf.send("GET /api/events HTTP/1.1\r\nHost: here\r\n\r\n");
  Client other = running.connect();
  for (int i = 0; i < 200; ++i) {
    other.send(post("/api/change", ""));
    ASSERT_EQ(next_reply(other).status, 200);
  }
}

TEST(Server, ServesFiftyClientsAtOnce) {
  const Running running;
  std::atomic<int> answered = 0;
  std::latch all_connected(50);
  std::vector<std::jthread> clients;
  for (int c = 0; c < 50; ++c)
    clients.emplace_back([&, c] {
      Client client = running.connect();
      all_connected.arrive_and_wait();
      for (int i = 0; i < 5; ++i) {
        const std::string body = std::to_string(c) + "." + std::to_string(i);
        client.send(post("/api/echo", body));
        if (next_reply(client).body == "/api/echo||" + body) ++answered;
      }
    });
  clients.clear();
  EXPECT_EQ(answered, 250);
}

TEST(Server, AnswersQuickRequestsWhileLongOnesCompute) {
  server::Limits limits;
  limits.grace = 100ms;
  const Running running(limits);
  const std::vector<Client> computing = slow_requests(running, 4);
  Client quick = running.connect();
  quick.send(get_echo);
  EXPECT_EQ(next_reply(quick).status, 200);
}

TEST(Server, SaysThatItIsBusyWhenTooManyWait) {
  server::Limits limits;
  limits.waiting = 2;
  limits.grace = 100ms;
  const Running running(limits);
  const std::vector<Client> computing = slow_requests(running, 2);
  // The two may not have been read yet: the first answer of 503 shows that they were.
  int status = 200;
  for (int i = 0; i < 1000 && status == 200; ++i) {
    Client next = running.connect();
    next.send(get_echo);
    status = next_reply(next).status;
  }
  EXPECT_EQ(status, 503);
}

TEST(Server, TellsEveryStreamWhatChanged) {
  const Running running;
  std::vector<Client> streams;
  for (int i = 0; i < 20; ++i) {
    streams.push_back(running.connect());
    streams.back().send("GET /api/events HTTP/1.1\r\nHost: here\r\n\r\n");
    EXPECT_THAT(streams.back().read_to(": here\n\n"), HasSubstr("Content-Type: text/event-stream\r\n"));
  }
  Client writer = running.connect();
  writer.send(post("/api/change", ""));
  EXPECT_EQ(next_reply(writer).status, 200);
  for (Client& stream : streams) EXPECT_EQ(stream.read_to("\n\n"), "data: {\"changed\": \"boards\"}\n\n");
}

TEST(Server, TellsWhatChangedByItself) {
  server::Limits limits;
  limits.look = 5ms;
  server::Site site = echo_site();
  site.look = [] { return std::vector<api::Topic>{api::Topic::People}; };
  const Running running(std::move(site), limits, {});
  Client stream = running.connect();
  stream.send("GET /api/events HTTP/1.1\r\nHost: here\r\n\r\n");
  stream.read_to(": here\n\n");
  EXPECT_EQ(stream.read_to("\n\n"), "data: {\"changed\": \"people\"}\n\n");
}

TEST(Server, KeepsASilentStreamAlive) {
  server::Limits limits;
  limits.heartbeat = 20ms;
  const Running running(limits);
  Client stream = running.connect();
  stream.send("GET /api/events HTTP/1.1\r\nHost: here\r\n\r\n");
  stream.read_to(": here\n\n");
  EXPECT_EQ(stream.read_to("\n\n"), ": still here\n\n");
}

TEST(Server, StopsWhileStreamsAreOpenAndClientsIdle) {
  Running running;
  Client stream = running.connect();
  stream.send("GET /api/events HTTP/1.1\r\nHost: here\r\n\r\n");
  stream.read_to(": here\n\n");
  Client idle = running.connect();
  idle.send(get_echo);
  next_reply(idle);
  running.stop();
  running.join();
  EXPECT_EQ(stream.read_all(), "");
  EXPECT_EQ(idle.read_all(), "");
}

TEST(Server, StopsAnAnswerUnderWayWhenItsGraceIsOver) {
  server::Limits limits;
  limits.grace = 50ms;
  Running running(limits);
  Client client = running.connect();
  client.send(post("/api/slow", ""));
  running.stop();
  running.join();
  EXPECT_THAT(client.read_all(), testing::AnyOf("", StartsWith("HTTP/1.1 200")));
}

TEST(Server, StopsAnAnswerThatNobodyWaitsForAnyMore) {
  server::Limits limits;
  limits.hang_up_look = 5ms;
  server::Site site = echo_site();
  site.cost = [](const api::Request&) { return api::Cost::Long; };
  const Running running(std::move(site), limits, {});
  // Both workers for long requests have one, the third waits behind them; then all three hang up.
  {
    const std::vector<Client> leaving = slow_requests(running, 3);
  }
  Client staying = running.connect();
  staying.send(get_echo);
  EXPECT_EQ(next_reply(staying).status, 200);
}

TEST(Server, HangsUpOnAHandlerThatBreaksItsPromiseAndGoesOn) {
  const Running running;
  Client broken = running.connect();
  broken.send("GET /api/throw HTTP/1.1\r\nHost: here\r\n\r\n");
  EXPECT_EQ(broken.read_all(), "");
  Client next = running.connect();
  next.send(get_echo);
  EXPECT_EQ(next_reply(next).status, 200);
}

TEST(Server, TakesNoMoreConnectionsThanItMay) {
  server::Limits limits;
  limits.connections = 2;
  const Running running(limits);
  Client one = running.connect();
  one.send(get_echo);
  next_reply(one);
  Client two = running.connect();
  two.send(get_echo);
  next_reply(two);
  Client three = running.connect();
  EXPECT_EQ(three.read_all(), "");
  one.send(get_echo);
  EXPECT_EQ(next_reply(one).status, 200);
}

TEST(Server, SaysThatAPortIsTaken) {
  const Running running;
  Settings settings;
  settings.port = running.port();
  const auto second = Server::listen(settings, echo_site());
  ASSERT_FALSE(second.has_value());
  EXPECT_EQ(second.error().code, base::ErrorCode::Unavailable);
  EXPECT_THAT(second.error().message, HasSubstr("port " + std::to_string(running.port()) + " is taken"));
}

}  // namespace
}  // namespace repwright
