#include "api/change_routes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "api/class_of_call.hpp"
#include "api/clock_routes.hpp"
#include "api/json_response.hpp"
#include "api/people_json.hpp"
#include "api/request_body.hpp"
#include "api/version.hpp"
#include "base/civil_date.hpp"
#include "store/class_json.hpp"
#include "store/gym_folder.hpp"
#include "store/hall_json.hpp"
#include "store/house_json.hpp"
#include "store/people_csv.hpp"

namespace repwright::api {
namespace {

using base::ErrorCode;
using base::Result;

constexpr std::size_t longest_board = 20'000;
constexpr std::size_t longest_version = 16;

/// Something that is kept: what it is called, its text now (null if it is not there), how it lies there.
struct Kept {
  std::string what;
  const std::string* text = nullptr;
  domain::Saved saved;
};

/// "by Kim at 2027-05-14T06:12Z", as far as the store knows.
std::string by_whom(const domain::Saved& saved) {
  if (!saved.by) return "";
  const std::string at = " at " + base::format_instant(saved.by->when);
  return saved.by->who.empty() ? at : " by " + saved.by->who + at;
}

/// Refuses a change of something that is not as it was when the change was made.
Result<void> same_as_seen(const Kept& kept, const std::optional<std::string>& seen) {
  if (kept.text == nullptr)
    return seen ? base::failure(ErrorCode::Conflict, kept.what + " was taken away meanwhile")
                : Result<void>{};
  if (!seen) return base::failure(ErrorCode::Conflict, kept.what + " is there already; give it another name");
  if (version_of(*kept.text) != *seen)
    return base::failure(ErrorCode::Conflict, fmt::format("{} was changed meanwhile{}: look at it again",
                                                          kept.what, by_whom(kept.saved)));
  return {};
}
Result<void> same_as_seen(const std::string& what, const std::string& text, const domain::Saved& saved,
                          const std::optional<std::string>& seen) {
  return same_as_seen({what, &text, saved}, seen);
}

/// How that one of many lies in the store; version 0 if it is not there.
domain::Saved saved_in(const std::map<std::string, domain::Saved>& all, const std::string& id) {
  const auto found = all.find(id);
  return found == all.end() ? domain::Saved{} : found->second;
}

/// Classes name people, routes and places: none of them may lose what it names.
Result<void> nothing_missing(const app::OpenGym& gym) {
  for (const auto& [id, gym_class] : gym.classes) {
    const auto missing = store::check_class(gym_class, gym.people, gym.knowledge.hall);
    if (!missing.empty())
      return base::failure(ErrorCode::Invalid, fmt::format("class '{}': {}", id, missing.front()));
  }
  return {};
}

/// Keeps in mind how something lies in the store now.
Result<void> noted(domain::Saved& at, const Result<domain::Saved>& saved) {
  return saved.map([&](const domain::Saved& now) { at = now; });
}

Answer changed(const Result<void>& done, const std::string& text, Topic topic) {
  if (!done) return refuse(done.error());
  Response response = json_response({{"version", version_of(text)}});
  response.changed = {topic};
  return response;
}

/// `{"version", "<name>": {...}}`, the object as text.
struct SentObject {
  std::optional<std::string> version;
  std::string text;
};
tl::expected<SentObject, Fault> sent_object(const Call& call, const std::string& name) {
  RequestBody body(call.request.body);
  SentObject sent{body.text("version", longest_version), body.object(name)};
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  return sent;
}

tl::unexpected<Fault> refuse_object(const std::string& field, const base::Error& error) {
  return refuse_field(field, error.message);
}

}  // namespace

Answer put_board(const Call& call) {
  RequestBody body(call.request.body);
  const auto seen = body.text("version", longest_version);
  const std::string text = body.text("text", longest_board).value_or("");
  if (!body.has("text")) return refuse_field("text", "`text` is missing");
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  const auto done = call.services.desk.change([&](app::OpenGym& gym) -> Result<void> {
    const auto kept = gym.knowledge.boards.find(call.id);
    const Kept there{"the board `" + call.id + "`",
                     kept == gym.knowledge.boards.end() ? nullptr : &kept->second,
                     saved_in(gym.versions.boards, call.id)};
    if (auto same = same_as_seen(there, seen); !same) return same;
    gym.knowledge.boards[call.id] = text;
    domain::Saved& saved = gym.versions.boards[call.id];
    return noted(saved, call.services.store.save_board(call.id, text, call.seen(saved)));
  });
  return changed(done, text, Topic::Boards);
}

Answer put_class(const Call& call) {
  const auto sent = sent_object(call, "class");
  if (!sent) return tl::unexpected(sent.error());
  const auto file = store::read_class(sent->text, "class", call.id, call.gym->knowledge.catalogue);
  if (!file) return refuse_object("class", file.error());
  if (file->gym_class.id != call.id) return refuse_field("class.id", "is not the class of this address");
  const std::string text = store::write_class(file->gym_class);
  const auto done = call.services.desk.change([&](app::OpenGym& gym) -> Result<void> {
    const auto kept = gym.classes.find(call.id);
    const std::string before = kept == gym.classes.end() ? "" : store::write_class(kept->second);
    const Kept there{"the class `" + call.id + "`", kept == gym.classes.end() ? nullptr : &before,
                     saved_in(gym.versions.classes, call.id)};
    if (auto same = same_as_seen(there, sent->version); !same) return same;
    const std::string& board = file->gym_class.board_id;
    if (!board.empty() && !gym.knowledge.boards.contains(board))
      return base::failure(ErrorCode::Invalid, "no board is called `" + board + "`");
    gym.classes[call.id] = file->gym_class;
    if (auto whole = nothing_missing(gym); !whole) return whole;
    domain::Saved& saved = gym.versions.classes[call.id];
    return noted(saved, call.services.store.save_class(file->gym_class, call.seen(saved)));
  });
  return changed(done, text, Topic::Classes);
}

Answer delete_class(const Call& call) {
  if (const auto known = class_in(call); !known) return tl::unexpected(known.error());
  RequestBody body(call.request.body);
  const std::string seen = body.needed_text("version", longest_version);
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  if (clock_runs(call, call.id)) return refuse(409, "its clock runs: stop it first");
  const auto done = call.services.desk.change([&](app::OpenGym& gym) -> Result<void> {
    const auto kept = gym.classes.find(call.id);
    const std::string before = kept == gym.classes.end() ? "" : store::write_class(kept->second);
    const domain::Saved saved = saved_in(gym.versions.classes, call.id);
    const Kept there{"the class `" + call.id + "`", kept == gym.classes.end() ? nullptr : &before, saved};
    if (auto same = same_as_seen(there, seen); !same) return same;
    gym.classes.erase(kept);
    gym.versions.classes.erase(call.id);
    return call.services.store.remove_class(call.id, call.seen(saved));
  });
  if (!done) return refuse(done.error());
  Response response = json_response({{"id", call.id}});
  response.changed = {Topic::Classes};
  return response;
}

Answer put_people(const Call& call) {
  RequestBody body(call.request.body);
  const auto seen = body.text("version", longest_version);
  const std::string csv = body.table("rows");
  body.has("columns");
  if (const auto fault = body.fault()) return tl::unexpected(*fault);
  const auto read = store::preview_people(csv, "people", call.gym->knowledge.catalogue);
  if (!read.problems.empty()) {
    const store::Problem& first = read.problems.front();
    return refuse_field(fmt::format("rows.{}.{}", first.line - 2, first.field), store::in_words(first));
  }
  const std::string text = store::write_people(read.file.people);
  const auto done = call.services.desk.change([&](app::OpenGym& gym) -> Result<void> {
    if (auto same =
            same_as_seen("the list of people", store::write_people(gym.people), gym.versions.people, seen);
        !same)
      return same;
    gym.people = read.file.people;
    if (auto whole = nothing_missing(gym); !whole) return whole;
    domain::Saved& saved = gym.versions.people;
    return noted(saved, call.services.store.save_people(gym.people, call.seen(saved)));
  });
  return changed(done, text, Topic::People);
}

Answer put_hall(const Call& call) {
  const auto sent = sent_object(call, "hall");
  if (!sent) return tl::unexpected(sent.error());
  const auto file = store::read_hall(sent->text, "hall", call.gym->knowledge.catalogue);
  if (!file) return refuse_object("hall", file.error());
  const auto done = call.services.desk.change([&](app::OpenGym& gym) -> Result<void> {
    if (auto same =
            same_as_seen("the hall", store::write_hall(gym.knowledge.hall), gym.versions.hall, sent->version);
        !same)
      return same;
    gym.knowledge.hall = file->hall;
    if (auto whole = nothing_missing(gym); !whole) return whole;
    domain::Saved& saved = gym.versions.hall;
    return noted(saved, call.services.store.save_hall(file->hall, call.seen(saved)));
  });
  return changed(done, store::write_hall(file->hall), Topic::Hall);
}

Answer put_house(const Call& call) {
  const auto sent = sent_object(call, "house");
  if (!sent) return tl::unexpected(sent.error());
  const auto file = store::read_house(sent->text, "house", call.gym->knowledge.catalogue);
  if (!file) return refuse_object("house", file.error());
  const auto done = call.services.desk.change([&](app::OpenGym& gym) -> Result<void> {
    if (auto same = same_as_seen("the house", store::write_house(gym.knowledge.house), gym.versions.house,
                                 sent->version);
        !same)
      return same;
    gym.knowledge.house = file->house;
    domain::Saved& saved = gym.versions.house;
    return noted(saved, call.services.store.save_house(file->house, call.seen(saved)));
  });
  return changed(done, store::write_house(file->house), Topic::House);
}

}  // namespace repwright::api
