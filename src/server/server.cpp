#include "server/server.hpp"

// Boost 1.74 needs std::exchange before it includes <utility> itself.
#include <utility>
//
#include <algorithm>
#include <boost/asio/any_io_executor.hpp>
#include <boost/asio/awaitable.hpp>
#include <boost/asio/co_spawn.hpp>
#include <boost/asio/detached.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/redirect_error.hpp>
#include <boost/asio/signal_set.hpp>
#include <boost/asio/ssl/context.hpp>
#include <boost/asio/ssl/stream.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/strand.hpp>
#include <boost/asio/thread_pool.hpp>
#include <boost/asio/use_awaitable.hpp>
#include <boost/beast/core/detect_ssl.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/core/tcp_stream.hpp>
#include <boost/beast/http.hpp>
#include <csignal>
#include <exception>
#include <set>
#include <vector>

#include "server/hung_up.hpp"

namespace repwright::server {
namespace {

namespace net = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
using boost::system::error_code;
using net::awaitable;
using net::ip::tcp;
using HttpRequest = http::request<http::string_body>;

constexpr unsigned http_1_1 = 11;
constexpr std::size_t first_read = 4096;
constexpr std::size_t most_drained = std::size_t{4} * 1024 * 1024;

auto into(error_code& error) {
  return net::redirect_error(net::use_awaitable, error);
}

api::Method method_of(http::verb verb) {
  switch (verb) {
    case http::verb::get:
      return api::Method::Get;
    case http::verb::put:
      return api::Method::Put;
    case http::verb::post:
      return api::Method::Post;
    case http::verb::delete_:
      return api::Method::Delete;
    default:
      return api::Method::Other;
  }
}

std::string text_of(boost::beast::string_view view) {
  return {view.data(), view.size()};
}

/// Said with every answer: nothing is framed, sniffed, or loaded from elsewhere.
template <class Message>
void add_safety(Message& message) {
  message.set(
      "Content-Security-Policy",
      "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; object-src 'none'");
  message.set("X-Content-Type-Options", "nosniff");
  message.set("Referrer-Policy", "no-referrer");
  message.set("Cross-Origin-Opener-Policy", "same-origin");
  message.set("Cross-Origin-Resource-Policy", "same-origin");
}

/// A refusal before any handler has seen the request.
api::Response refusal(int status, std::string_view text) {
  return {.status = status, .body = "{\"error\":{\"text\":\"" + std::string(text) + "\"}}\n"};
}

/// What a broken request is told; nothing for a connection that just ended.
std::optional<api::Response> answer_to(const error_code& error, const Limits& limits) {
  if (error == http::error::body_limit)
    return refusal(413, "the body is larger than " + std::to_string(limits.body_bytes) + " bytes");
  if (error == http::error::header_limit || error == http::error::buffer_overflow)
    return refusal(431, "the header is larger than " + std::to_string(limits.header_bytes) + " bytes");
  if (error == http::error::end_of_stream || error == http::error::partial_message) return std::nullopt;
  if (error.category() == make_error_code(http::error::bad_method).category())
    return refusal(400, "this is not HTTP/1.1");
  return std::nullopt;
}

/// The bytes of one socket, encrypted or not: one type for both, so that what is built on it is compiled
/// once.
class Wire {
 public:
  using executor_type = beast::tcp_stream::executor_type;
  explicit Wire(tcp::socket socket) : tcp_(std::move(socket)) {}

  executor_type get_executor() { return tcp_.get_executor(); }
  /// The socket, for time-outs and ends.
  beast::tcp_stream& below() { return tcp_; }
  bool encrypted() const { return tls_.has_value(); }
  net::ssl::stream<beast::tcp_stream&>& encrypt(net::ssl::context& context) {
    return tls_.emplace(tcp_, context);
  }

  template <class Buffers, class Token>
  auto async_read_some(const Buffers& buffers, Token&& token) {
    return net::async_initiate<Token, void(error_code, std::size_t)>(
        [this](auto handler, const Buffers& space) {
          if (tls_)
            tls_->async_read_some(space, std::move(handler));
          else
            tcp_.async_read_some(space, std::move(handler));
        },
        token, buffers);
  }
  template <class Buffers, class Token>
  auto async_write_some(const Buffers& buffers, Token&& token) {
    return net::async_initiate<Token, void(error_code, std::size_t)>(
        [this](auto handler, const Buffers& from) {
          if (tls_)
            tls_->async_write_some(from, std::move(handler));
          else
            tcp_.async_write_some(from, std::move(handler));
        },
        token, buffers);
  }

 private:
  beast::tcp_stream tcp_;
  std::optional<net::ssl::stream<beast::tcp_stream&>> tls_;
};

/// One socket. All of it lives on the thread that runs the server.
struct Connection {
  enum class State : std::uint8_t { Waiting, Answering, Streaming };

  explicit Connection(tcp::socket socket) : wire(std::move(socket)), wake(wire.get_executor()) {}

  Wire wire;
  beast::flat_buffer buffer;
  net::steady_timer wake;  // of a stream of events
  unsigned pending = 0;    // topics to be told, a bit each: a slow reader never makes it longer
  State state = State::Waiting;
  bool refused = false;  // what it sends was not read to the end
  std::string peer;
};

/// Stops the work on an answer when the connection that asked for it has ended: nobody would read it.
class Patience : public std::enable_shared_from_this<Patience> {
 public:
  Patience(Connection& one, std::chrono::milliseconds pause)
      : timer_(one.wire.get_executor()), socket_(one.wire.below().socket().native_handle()), pause_(pause) {}

  std::stop_source stop;

  void begin() {
    timer_.expires_after(pause_);
    timer_.async_wait([self = shared_from_this()](const error_code& error) {
      if (error || self->over_) return;
      if (has_hung_up(self->socket_))
        self->stop.request_stop();
      else
        self->begin();
    });
  }
  /// Looks at the socket no more: its number may soon be another's.
  void end() {
    over_ = true;
    timer_.cancel();
  }

 private:
  net::steady_timer timer_;
  int socket_;
  std::chrono::milliseconds pause_;
  bool over_ = false;
};

api::Request request_of(HttpRequest&& from, const Connection& one) {
  api::Request request;
  request.method = method_of(from.method());
  request.path = text_of(from.target().substr(0, from.target().find('?')));
  request.content_type = text_of(from[http::field::content_type]);
  request.cookies = text_of(from[http::field::cookie]);
  request.host = text_of(from[http::field::host]);
  request.origin = text_of(from[http::field::origin]);
  request.fetch_site = text_of(from["Sec-Fetch-Site"]);
  request.peer = one.peer;
  request.secure = one.wire.encrypted();
  request.body = std::move(from.body());
  return request;
}

}  // namespace

struct Server::Engine {
  Engine(const Settings& chosen, Site served) : settings(chosen), site(std::move(served)) {}

  base::Result<void> prepare_tls();
  base::Result<void> open();
  void run();
  void begin_stop();

  awaitable<void> accept();
  awaitable<void> serve(tcp::socket socket);
  awaitable<bool> greet(Connection& one);
  awaitable<void> converse(Connection& one);
  awaitable<std::optional<HttpRequest>> read_request(Connection& one);
  awaitable<bool> reply(Connection& one, HttpRequest request);
  awaitable<api::Response> compute(Connection& one, api::Request request);
  awaitable<void> write(Connection& one, const api::Response& response, const http::request_header<>* to);
  awaitable<void> write_text(Connection& one, std::string_view text, error_code& error);
  awaitable<void> stream_events(Connection& one);
  awaitable<void> close_gently(Connection& one);
  awaitable<void> keep_looking();
  const PageFile* page_file(const HttpRequest& request) const;
  void publish(const std::vector<api::Topic>& changed);
  net::any_io_executor worker_for(api::Cost cost);

  Settings settings;
  Site site;
  net::io_context io{1};
  tcp::acceptor acceptor{io};
  net::signal_set signals{io};
  net::steady_timer grace{io};
  net::steady_timer next_look{io};
  std::optional<net::ssl::context> tls;
  std::set<Connection*> connections;
  std::stop_source stop_computing;
  bool stopping = false;
  std::size_t waiting = 0;
  // Last, so that they end first: their work uses all of the above.
  net::thread_pool quick{1};
  net::thread_pool slow{2};
  // Its threads wait for the disk and need no processor.
  net::thread_pool keeping{8};
  net::strand<net::thread_pool::executor_type> one_by_one{keeping.get_executor()};
};

net::any_io_executor Server::Engine::worker_for(api::Cost cost) {
  switch (cost) {
    case api::Cost::Change:
      return one_by_one;
    case api::Cost::Entry:
      return keeping.get_executor();
    case api::Cost::Long:
      return slow.get_executor();
    case api::Cost::Quick:
      break;
  }
  return quick.get_executor();
}

/// Takes up the identity for TLS, if there is one.
base::Result<void> Server::Engine::prepare_tls() {
  if (!settings.tls) return {};
  auto& context = tls.emplace(net::ssl::context::tls_server);
  context.set_options(net::ssl::context::default_workarounds | net::ssl::context::no_tlsv1 |
                      net::ssl::context::no_tlsv1_1);
  const auto bytes = [](const std::string& text) { return net::buffer(text.data(), text.size()); };
  error_code error;
  context.use_certificate_chain(bytes(settings.tls->certificates), error);
  if (!error) context.use_private_key(bytes(settings.tls->key), net::ssl::context::pem, error);
  if (error)
    return base::failure(base::ErrorCode::Invalid, "the certificate cannot be used: " + error.message());
  return {};
}

base::Result<void> Server::Engine::open() {
  if (auto ready = prepare_tls(); !ready) return ready;
  const auto address = settings.reach == Reach::Loopback ? net::ip::address(net::ip::address_v4::loopback())
                                                         : net::ip::address(net::ip::address_v4::any());
  const tcp::endpoint where(address, settings.port);
  error_code error;
  acceptor.open(where.protocol(), error);
  if (!error) acceptor.set_option(net::socket_base::reuse_address(true), error);
  if (!error) acceptor.bind(where, error);
  if (!error) acceptor.listen(net::socket_base::max_listen_connections, error);
  if (!error) return {};
  const std::string port = std::to_string(settings.port);
  if (error == net::error::address_in_use)
    return base::failure(base::ErrorCode::Unavailable,
                         "port " + port + " is taken by another program; choose one with --port");
  return base::failure(base::ErrorCode::Unavailable,
                       "cannot listen on port " + port + ": " + error.message());
}

void Server::Engine::run() {
  if (settings.signals == Signals::StopOnInterruptAndTerminate) {
    signals.add(SIGINT);
    signals.add(SIGTERM);
    signals.async_wait([this](const error_code& error, int) {
      if (!error) begin_stop();
    });
  }
  net::co_spawn(io, accept(), net::detached);
  if (site.look) net::co_spawn(io, keep_looking(), net::detached);
  io.run();
  quick.join();
  slow.join();
  keeping.join();
}

void Server::Engine::begin_stop() {
  if (stopping) return;
  stopping = true;
  error_code ignored;
  acceptor.close(ignored);
  signals.cancel(ignored);
  next_look.cancel();
  for (Connection* one : connections) {
    if (one->state != Connection::State::Answering) one->wire.below().cancel();
    one->wake.cancel();
  }
  grace.expires_after(settings.limits.grace);
  grace.async_wait([this](const error_code& error) {
    if (error) return;
    stop_computing.request_stop();
    for (Connection* one : connections) one->wire.below().close();
  });
  if (connections.empty()) grace.cancel();
}

awaitable<void> Server::Engine::accept() {
  net::steady_timer pause(io);
  while (!stopping) {
    error_code error;
    tcp::socket socket = co_await acceptor.async_accept(into(error));
    if (error) {
      // Out of handles, say: the next client may have more luck.
      pause.expires_after(std::chrono::milliseconds(50));
      if (!stopping) co_await pause.async_wait(into(error));
      continue;
    }
    if (connections.size() >= settings.limits.connections) continue;
    net::co_spawn(io, serve(std::move(socket)), net::detached);
  }
}

awaitable<void> Server::Engine::serve(tcp::socket socket) {
  Connection one(std::move(socket));
  error_code ignored;
  one.wire.below().socket().set_option(tcp::no_delay(true), ignored);
  const tcp::endpoint other = one.wire.below().socket().remote_endpoint(ignored);
  one.peer = other.address().to_string(ignored);
  connections.insert(&one);
  try {
    const bool greeted = co_await greet(one);
    if (greeted) co_await converse(one);
  } catch (const std::exception& fault) {
    site.log(fault.what());
  }
  connections.erase(&one);
  if (stopping && connections.empty()) grace.cancel();
}

/// Whether the two agree on how to talk: who begins with TLS is answered in TLS.
awaitable<bool> Server::Engine::greet(Connection& one) {
  if (!tls) co_return true;
  error_code error;
  one.wire.below().expires_after(settings.limits.idle);
  const bool begins_with_tls = co_await beast::async_detect_ssl(one.wire.below(), one.buffer, into(error));
  // Whatever else is wrong with it is found by who reads it as HTTP.
  if (error || !begins_with_tls) co_return !error;
  auto& encrypted = one.wire.encrypt(*tls);
  one.wire.below().expires_after(settings.limits.header);
  const std::size_t used =
      co_await encrypted.async_handshake(net::ssl::stream_base::server, one.buffer.data(), into(error));
  one.buffer.consume(used);
  co_return !error;
}

awaitable<void> Server::Engine::converse(Connection& one) {
  while (!stopping) {
    one.state = Connection::State::Waiting;
    auto request = co_await read_request(one);
    if (!request) break;
    one.state = Connection::State::Answering;
    const bool on = co_await reply(one, std::move(*request));
    if (!on) break;
  }
  if (one.refused)
    co_await close_gently(one);
  else
    one.wire.below().close();
}

/// The next request of a connection; nothing if it ended or was refused.
awaitable<std::optional<HttpRequest>> Server::Engine::read_request(Connection& one) {
  const Limits& limits = settings.limits;
  error_code error;
  if (one.buffer.size() == 0) {
    one.wire.below().expires_after(limits.idle);
    const std::size_t got = co_await one.wire.async_read_some(one.buffer.prepare(first_read), into(error));
    one.buffer.commit(got);
  }
  http::request_parser<http::string_body> parser;
  parser.header_limit(static_cast<std::uint32_t>(limits.header_bytes));
  parser.body_limit(limits.body_bytes);
  if (!error) {
    one.wire.below().expires_after(limits.header);
    co_await http::async_read_header(one.wire, one.buffer, parser, into(error));
  }
  if (!error && beast::iequals(parser.get()[http::field::expect], "100-continue"))
    co_await write_text(one, "HTTP/1.1 100 Continue\r\n\r\n", error);
  if (!error) {
    one.wire.below().expires_after(limits.body);
    co_await http::async_read(one.wire, one.buffer, parser, into(error));
  }
  if (!error) co_return parser.release();
  if (const auto refused = answer_to(error, limits)) {
    one.refused = true;
    co_await write(one, *refused, nullptr);
  }
  co_return std::nullopt;
}

/// Whether the connection goes on.
awaitable<bool> Server::Engine::reply(Connection& one, HttpRequest request) {
  const http::request_header<> header = request.base();
  const bool keep = request.keep_alive();
  api::Response response;
  if (const auto path = header.target(); path.starts_with("/api/") || path == "/api") {
    response = co_await compute(one, request_of(std::move(request), one));
    if (!response.log.empty()) site.log(response.log);
    publish(response.changed);
    if (response.stream) {
      co_await stream_events(one);
      co_return false;
    }
  } else if (const PageFile* file = page_file(request)) {
    response.body = file->bytes;
    response.type = file->type;
    response.headers.emplace_back("Cache-Control", file->cache);
  } else {
    response = refusal(site.page.empty() ? 503 : 404,
                       site.page.empty() ? "the page is not built" : "there is nothing at this address");
  }
  co_await write(one, response, &header);
  co_return keep && !stopping && one.wire.below().socket().is_open();
}

const PageFile* Server::Engine::page_file(const HttpRequest& request) const {
  if (request.method() != http::verb::get && request.method() != http::verb::head) return nullptr;
  const auto path = request.target().substr(0, request.target().find('?'));
  return site.page.find({path.data(), path.size()});
}

/// Runs the handler on a worker, so that nobody else waits for it, until it is done or nobody wants it any
/// more.
awaitable<api::Response> Server::Engine::compute(Connection& one, api::Request request) {
  if (waiting >= settings.limits.waiting)
    co_return refusal(503, "too many requests wait for their answer; try again in a second");
  ++waiting;
  const auto work = [](Engine& engine, api::Request asked, std::stop_token stop) -> awaitable<api::Response> {
    co_return engine.site.answer(asked, stop);
  };
  const auto patience = std::make_shared<Patience>(one, settings.limits.hang_up_look);
  const std::stop_callback with_the_server(stop_computing.get_token(),
                                           [patience] { patience->stop.request_stop(); });
  patience->begin();
  const net::any_io_executor worker = worker_for(site.cost(request));
  std::exception_ptr failed;
  api::Response response;
  try {
    response = co_await net::co_spawn(worker, work(*this, std::move(request), patience->stop.get_token()),
                                      net::use_awaitable);
  } catch (...) {
    failed = std::current_exception();
  }
  patience->end();
  --waiting;
  if (failed) std::rethrow_exception(failed);
  co_return response;
}

/// `to`: what is answered; null if it could not be read, and then the connection ends.
awaitable<void> Server::Engine::write(Connection& one, const api::Response& response,
                                      const http::request_header<>* to) {
  http::response<http::string_body> message{static_cast<http::status>(response.status), http_1_1};
  const bool head = to != nullptr && to->method() == http::verb::head;
  add_safety(message);
  message.set(http::field::content_type, response.type);
  message.set(http::field::cache_control, "no-store");
  for (const auto& [name, value] : response.headers)
    if (name == "Set-Cookie")
      message.insert(name, value);
    else
      message.set(name, value);
  message.keep_alive(to != nullptr && !stopping && http_1_1 == to->version());
  if (!head) message.body() = response.body;
  message.content_length(response.body.size());
  http::response_serializer<http::string_body> serializer{message};
  one.wire.below().expires_after(settings.limits.write);
  error_code error;
  if (head)
    co_await http::async_write_header(one.wire, serializer, into(error));
  else
    co_await http::async_write(one.wire, serializer, into(error));
  if (error) one.wire.below().close();
}

awaitable<void> Server::Engine::write_text(Connection& one, std::string_view text, error_code& error) {
  one.wire.below().expires_after(settings.limits.write);
  while (!text.empty() && !error)
    text.remove_prefix(
        co_await one.wire.async_write_some(net::buffer(text.data(), text.size()), into(error)));
}

void Server::Engine::publish(const std::vector<api::Topic>& changed) {
  if (changed.empty()) return;
  for (Connection* one : connections) {
    if (one->state != Connection::State::Streaming) continue;
    for (const api::Topic topic : changed) one->pending |= 1U << static_cast<unsigned>(topic);
    one->wake.cancel();
  }
}

/// Tells who listens what changed by itself.
awaitable<void> Server::Engine::keep_looking() {
  const auto work = [](Engine& engine) -> awaitable<std::vector<api::Topic>> {
    co_return engine.site.look();
  };
  while (!stopping) {
    error_code woken;
    next_look.expires_after(settings.limits.look);
    co_await next_look.async_wait(into(woken));
    const bool heard = std::ranges::any_of(
        connections, [](const Connection* one) { return one->state == Connection::State::Streaming; });
    if (stopping || !heard) continue;
    const std::vector<api::Topic> changed = co_await net::co_spawn(quick, work(*this), net::use_awaitable);
    publish(changed);
  }
}

awaitable<void> Server::Engine::stream_events(Connection& one) {
  one.state = Connection::State::Streaming;
  http::response<http::empty_body> head{http::status::ok, http_1_1};
  add_safety(head);
  head.set(http::field::content_type, "text/event-stream");
  head.set(http::field::cache_control, "no-store");
  head.keep_alive(false);
  http::response_serializer<http::empty_body> serializer{head};
  one.wire.below().expires_after(settings.limits.write);
  error_code error;
  co_await http::async_write_header(one.wire, serializer, into(error));
  if (!error) co_await write_text(one, ": here\n\n", error);
  while (!error && !stopping) {
    if (one.pending == 0) {
      error_code woken;
      one.wake.expires_after(settings.limits.heartbeat);
      co_await one.wake.async_wait(into(woken));
      if (stopping) break;
    }
    std::string text;
    for (std::size_t topic = 0; topic < api::topic_names.size(); ++topic)
      if ((one.pending >> topic & 1U) != 0)
        text += "data: {\"changed\": \"" + std::string(api::topic_names[topic]) + "\"}\n\n";
    one.pending = 0;
    // Not chosen inside the co_await: g++ 12 destroys such a temporary twice.
    if (text.empty()) text = ": still here\n\n";
    co_await write_text(one, text, error);
  }
}

/// A client that is still sending would lose our answer if we just hung up: its words are read for a moment.
awaitable<void> Server::Engine::close_gently(Connection& one) {
  error_code error;
  one.wire.below().socket().shutdown(tcp::socket::shutdown_send, error);
  std::size_t drained = 0;
  one.wire.below().expires_after(std::min(settings.limits.grace, settings.limits.body));
  while (!error && drained < most_drained) {
    one.buffer.clear();
    drained += co_await one.wire.async_read_some(one.buffer.prepare(first_read), into(error));
  }
  one.wire.below().close();
}

Server::Server(std::unique_ptr<Engine> engine) : engine_(std::move(engine)) {}
Server::~Server() = default;

base::Result<std::unique_ptr<Server>> Server::listen(const Settings& settings, Site site) {
  auto engine = std::make_unique<Engine>(settings, std::move(site));
  if (const auto open = engine->open(); !open) return tl::unexpected(open.error());
  return std::unique_ptr<Server>(new Server(std::move(engine)));
}

std::uint16_t Server::port() const {
  return engine_->acceptor.local_endpoint().port();
}

void Server::run() {
  engine_->run();
}

void Server::stop() {
  net::post(engine_->io, [this] { engine_->begin_stop(); });
}

}  // namespace repwright::server
