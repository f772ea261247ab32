#include "api/reasons_json.hpp"

#include <cmath>
#include <nlohmann/json.hpp>

#include "base/civil_date.hpp"
#include "domain/rehearsal_names.hpp"

namespace repwright::api {
namespace {

using Json = nlohmann::ordered_json;

double milli(double value) {
  return std::round(value * 1000.0) / 1000.0;
}

Json range_json(const domain::Spread& score) {
  return {{"p10", milli(score.p10)}, {"p50", milli(score.p50)}, {"p90", milli(score.p90)}};
}

Json step_json(const domain::WhyStep& step) {
  return {{"line", step.line},
          {"version", step.version},
          {"limiter", name_of(step.limiter)},
          {"work_s", milli(step.work_s)},
          {"rest_s", milli(step.rest_s)},
          {"wait_s", milli(step.wait_s)}};
}

Json piece_json(const domain::WhyPiece& piece) {
  Json steps = Json::array();
  for (const domain::WhyStep& step : piece.steps) steps.push_back(step_json(step));
  return {{"piece", piece.now.piece},
          {"measure", name_of(piece.now.measure)},
          {"like_them", range_json(piece.like_them)},
          {"by_marks", range_json(piece.by_marks)},
          {"now", range_json(piece.now.score)},
          {"prior_weight", milli(piece.prior_weight)},
          {"limiter", name_of(piece.now.limiter)},
          {"steps", std::move(steps)}};
}

}  // namespace

nlohmann::ordered_json why_json(const domain::Why& why) {
  Json pieces = Json::array(), moved = Json::array();
  for (const domain::WhyPiece& piece : why.pieces) pieces.push_back(piece_json(piece));
  for (const domain::MovingScore& score : why.moved_most)
    moved.push_back({{"date", base::format_date(score.date)},
                     {"board", score.board},
                     {"scores", score.scores},
                     {"moved", milli(score.moved)}});
  return {{"id", why.person.text},       {"name", why.name},
          {"marks", why.marks},          {"scores", why.scores},
          {"pieces", std::move(pieces)}, {"moved_most", std::move(moved)}};
}

std::string tests_json(const domain::TestOffers& offers) {
  Json tests = Json::array();
  for (const domain::TestOffer& test : offers.tests)
    tests.push_back({{"test", test.test},
                     {"minutes", test.minutes},
                     {"narrower", milli(test.narrower)},
                     {"p10", milli(test.p10)},
                     {"p90", milli(test.p90)}});
  const Json out = {{"id", offers.person.text},
                    {"name", offers.name},
                    {"piece", offers.piece_name},
                    {"measure", name_of(offers.piece.measure)},
                    {"now", range_json(offers.piece.score)},
                    {"day_share", milli(offers.day_share)},
                    {"tests", std::move(tests)}};
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace repwright::api
