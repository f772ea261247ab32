#include "store/demo_past_json.hpp"

#include <nlohmann/json.hpp>

#include "base/civil_date.hpp"

namespace repwright::store {
namespace {

using Json = nlohmann::json;

/// Dates that are none are as broken as a missing key: both are caught where the file is read.
std::chrono::year_month_day date_of(const Json& value) {
  const auto date = base::parse_date(value.get<std::string>());
  if (!date) throw std::invalid_argument(date.error().message);
  return *date;
}

domain::DayFlag flag_of(const std::string& word) {
  if (word == "ill") return domain::DayFlag::Ill;
  if (word == "hot") return domain::DayFlag::Hot;
  if (word == "easy") return domain::DayFlag::Easy;
  throw std::invalid_argument("`" + word + "` is no flag: ill, hot or easy");
}

domain::DemoPast past_of(const Json& json) {
  domain::DemoPast past;
  past.seed = {json.at("seed").get<std::uint64_t>()};
  for (const Json& session : json.at("sessions"))
    past.sessions.push_back({.date = date_of(session.at("date")),
                             .class_id = session.at("class").get<std::string>(),
                             .board_id = session.at("board").get<std::string>(),
                             .board_text = {}});
  for (const auto& [id, rate] : json.at("show_rate").items()) past.show_rate[{id}] = rate.get<double>();
  for (const auto& [id, date] : json.at("joined").items()) past.joined[{id}] = date_of(date);
  for (const Json& flag : json.at("flagged"))
    past.flagged.push_back({.date = date_of(flag.at("date")),
                            .person = {flag.at("person").get<std::string>()},
                            .flag = flag_of(flag.at("flag").get<std::string>())});
  return past;
}

}  // namespace

base::Result<domain::DemoPast> read_demo_past(std::string_view bytes, const std::string& file,
                                              const std::map<std::string, std::string>& boards) {
  domain::DemoPast past;
  try {
    past = past_of(Json::parse(bytes));
  } catch (const std::exception& error) {
    return base::failure(base::ErrorCode::Invalid, file + ": " + error.what());
  }
  for (domain::PastSession& session : past.sessions) {
    const auto board = boards.find(session.board_id);
    if (board == boards.end())
      return base::failure(base::ErrorCode::NotFound,
                           file + ": no board is called `" + session.board_id + "`");
    session.board_text = board->second;
  }
  return past;
}

}  // namespace repwright::store
