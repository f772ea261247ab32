#include "calibration/studies.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "body/alone.hpp"
#include "body/effort.hpp"
#include "body/estimate.hpp"
#include "body/marks.hpp"

namespace repwright::calibration {

namespace {

body::Effort effort(const Model& model, const char* movement, domain::Unit unit, double load,
                    const body::Body& body) {
  const domain::Movement* found = model.catalogue.find(domain::MovementId{movement});
  return body::effort_of(body::effort_spec(*found, unit, load, model.constants), body, model.constants);
}

/// Units of the effort alone within the window.
double alone_within(const Model& model, const body::Body& body, const body::Effort& effort, double seconds) {
  body::Piece piece;
  piece.round = {{.effort = effort, .amount = std::numeric_limits<double>::infinity()}};
  piece.bell = seconds;
  return body::alone_at_best(body, piece, seconds, model.constants).units;
}

struct Spread {
  double mean = 0, sd = 0, p10 = 0, p90 = 0, most = 0;
};

Spread spread_of(std::vector<double> values) {
  std::ranges::sort(values);
  const double n = static_cast<double>(values.size());
  Spread out;
  out.mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
  for (const double value : values) out.sd += (value - out.mean) * (value - out.mean) / n;
  out.sd = std::sqrt(out.sd);
  const auto at = [&](double share) { return values[static_cast<std::size_t>(share * (n - 1))]; };
  out.p10 = at(.1);
  out.p90 = at(.9);
  out.most = values.back();
  return out;
}

Spread students(const Model& model, domain::Sex sex) {
  const body::BodyEstimate like = body::prior({.sex = sex, .age = 20.2}, model.constants);
  std::vector<double> counts;
  for (std::uint64_t p = 0; p < 2000; ++p) {
    const body::Body body = body::draw(like, {12}, 0, p, model.constants);
    const body::Effort thrust = effort(model, "squat-thrust", domain::Unit::Reps, 0, body);
    counts.push_back(alone_within(model, body, thrust, 180));
  }
  return spread_of(counts);
}

double in_thirty_seconds(const Model& model, domain::Sex sex, double most) {
  domain::Person person;
  person.sex = sex;
  person.age = 26;
  person.marks = {domain::BestSet{{"push-up"}, most, false}};
  body::Body body = body::median(body::estimate(person, model.catalogue, model.constants), model.constants);
  body.best_set[0] = most;
  return alone_within(model, body, effort(model, "push-up", domain::Unit::Reps, 0, body), 30);
}

/// Mean reps of each of four bench-press sets to failure at 77 % of the own best single.
std::array<double, 4> mean_sets(const Model& model, double rest_seconds) {
  const body::BodyEstimate like =
      body::prior({.sex = domain::Sex::Male, .age = 25, .training_years = 4}, model.constants);
  std::array<double, 4> sum{};
  constexpr std::uint64_t people = 200;
  for (std::uint64_t p = 0; p < people; ++p) {
    const body::Body body = body::draw(like, {13}, 0, p, model.constants);
    const double single = 1.5 * body.best_lift[2];
    const body::Effort press = effort(model, "bb-bench-press", domain::Unit::Reps, .77 * single, body);
    body::State state = body::fresh(body, 1, model.constants);
    for (double& set : sum) {
      set +=
          body::work(state, body, press, {.wanted = 100, .to_failure = true}, model.constants).units / people;
      body::rest(state, body, rest_seconds, model.constants);
    }
  }
  return sum;
}

double total(const std::array<double, 4>& sets) {
  return sets[0] + sets[1] + sets[2] + sets[3];
}

/// Mean seconds of repeats with 60 s of standing rest, each run to spend the reserve by its own end.
double mean_repeat(const Model& model, const body::Body& body, double metres, int repeats) {
  const body::Effort run = effort(model, "run", domain::Unit::Metres, 0, body);
  body::State state = body::fresh(body, 1, model.constants);
  double guess = body::run_seconds(body, metres, model.constants), sum = 0;
  for (int repeat = 0; repeat < repeats; ++repeat) {
    const body::SetPlan plan{.wanted = metres, .pacing = {.end = state.clock + guess}};
    guess = body::work(state, body, run, plan, model.constants).seconds;
    sum += guess;
    body::rest(state, body, 60, model.constants);
  }
  return sum / repeats;
}

double lone_run(const Model& model, const body::Body& body, double metres) {
  body::Piece piece;
  piece.round = {{.effort = effort(model, "run", domain::Unit::Metres, 0, body), .amount = metres}};
  return body::alone_at_best(body, piece, metres / body.critical_speed, model.constants).seconds;
}

}  // namespace

// J Strength Cond Res 24(4):1034-1036, doi 10.1519/JSC.0b013e3181d15516: ten men of 20.8 years, 77.3 (7.7)
// kg, VO2max 52.78 (6.22).
std::vector<Measured> swings(const Model& model) {
  std::vector<double> counts, shares;
  for (std::uint64_t p = 0; p < 400; ++p) {
    base::Stream luck({11}, 0, p, base::Purpose::Search);
    domain::Person man;
    man.sex = domain::Sex::Male;
    man.age = 20.8;
    man.mass = (77.3 + 7.7 * luck.normal()) * base::kilogram;
    man.marks = {domain::AerobicPeak{52.78 + 6.22 * luck.normal()}};
    const body::Body body =
        body::draw(body::estimate(man, model.catalogue, model.constants), {11}, 0, p, model.constants);
    const body::Effort swing = effort(model, "kb-swing", domain::Unit::Reps, 16, body);
    counts.push_back(alone_within(model, body, swing, 720));
    shares.push_back((model.constants.standing_rate + counts.back() / 12 * swing.cost) / body.vo2max);
  }
  const Spread count = spread_of(counts), share = spread_of(shares);
  return {{"swings: mean in 12 min", {235, 295}, {210, 330}, count.mean},
          {"swings: coefficient of variation", {.18, .32}, {.12, .40}, count.sd / count.mean},
          {"swings: share of VO2max", {.60, .70}, {.55, .76}, share.mean}};
}

// J Human Kinetics 69:137-147, doi 10.2478/hukin-2019-0021; Int J Environ Res Public Health 19(10):5928, doi
// 10.3390/ijerph19105928: 5971 men and 3862 women, students of 20.2 years (form of the burpee from memory).
std::vector<Measured> squat_thrusts(const Model& model) {
  const Spread men = students(model, domain::Sex::Male), women = students(model, domain::Sex::Female);
  return {{"squat thrusts: men, mean", {52, 61}, {47, 66}, men.mean},
          {"squat thrusts: women over men", {.82, .90}, {.75, .95}, women.mean / men.mean},
          {"squat thrusts: men, standard deviation", {8, 11}, {6, 14}, men.sd},
          {"squat thrusts: men, best of thousands", {75, 90}, {70, 100}, men.most}};
}

// Advances in Physiotherapy 11, doi 10.1080/14038190801999679: 25 men and 38 women of 18-35 years, push-ups
// to exhaustion (39 and 17) and in 30 s (29 and 13).
std::vector<Measured> push_ups(const Model& model) {
  const auto typical = [&](domain::Sex sex) {
    return body::median(body::prior({.sex = sex, .age = 26}, model.constants), model.constants).best_set[0];
  };
  return {{"push-ups: 30 s of a man with 39",
           {26, 31},
           {23, 34},
           in_thirty_seconds(model, domain::Sex::Male, 39)},
          {"push-ups: 30 s of a woman with 17",
           {12, 15},
           {11, 17},
           in_thirty_seconds(model, domain::Sex::Female, 17)},
          {"push-ups: women over men",
           {.38, .52},
           {.33, .60},
           typical(domain::Sex::Female) / typical(domain::Sex::Male)}};
}

// (a) Nine adults, knee extension at 80 % of the best single, Rev Bras Med Esporte 2007; (b) Janicijevic,
// Miras-Moreno, Morenas-Aguilar, Garcia-Ramos 2024, J Human Kinetics; (c) Gonzalez et al. 2018, bench press
// at 75 %; (d) 14 trained men at 75 %.
std::vector<Measured> sets_to_failure(const Model& model) {
  const auto one = mean_sets(model, 60), three = mean_sets(model, 180), five = mean_sets(model, 300);
  return {
      {"sets to failure: second of first, 1 min", {.48, .62}, {.40, .72}, one[1] / one[0]},
      {"sets to failure: second of first, 3 min", {.68, .82}, {.60, .90}, three[1] / three[0]},
      {"sets to failure: third of first, 1 min", {.38, .52}, {.30, .62}, one[2] / one[0]},
      {"sets to failure: third of first, 3 min", {.60, .76}, {.52, .85}, three[2] / three[0]},
      {"sets to failure: four sets, 5 min over 1 min", {1.35, 1.55}, {1.2, 1.8}, total(five) / total(one)}};
}

// PMC12881115: 13 trained middle-distance runners, 15 x 400 m at 5.63 m/s against 6 x 1 km at 5.30 m/s, 1 min
// rest. D' of trained runners: 123 m, Kordi, Menzies, Galbraith 2019, Int J Sports Physiol Perform 14:685.
std::vector<Measured> run_repeats(const Model& model) {
  body::Body runner;
  runner.reserve_distance = 123;
  double low = 3.5, high = 6;
  for (int step = 0; step < 40; ++step) {
    runner.critical_speed = (low + high) / 2;
    runner.top_speed = 1.75 * runner.critical_speed;
    (mean_repeat(model, runner, 1000, 6) > 189 ? low : high) = runner.critical_speed;
  }
  const double four_hundred = mean_repeat(model, runner, 400, 15);
  return {
      {"repeats: speed of 400 m over 1 km", {1.045, 1.08}, {1.03, 1.10}, 400 / four_hundred / (1000 / 189.0)},
      {"repeats: seconds for 400 m", {70, 72.5}, {68, 75}, four_hundred}};
}

// The middle 80 % of a mixed class of 20-50 years covers 1600 m in about 6 to 10 min; 800 m takes about half
// of it; 400 m takes 1 to 2 min.
std::vector<Measured> class_runs(const Model& model) {
  std::vector<double> mile, halves, short_run;
  for (std::uint64_t p = 0; p < 1000; ++p) {
    const domain::Sex sex = p % 2 == 0 ? domain::Sex::Female : domain::Sex::Male;
    const double age = 20 + 30 * base::Stream({14}, 0, p, base::Purpose::Search).uniform();
    const body::Body body =
        body::draw(body::prior({.sex = sex, .age = age}, model.constants), {14}, 0, p, model.constants);
    mile.push_back(lone_run(model, body, 1600));
    halves.push_back(lone_run(model, body, 800) / mile.back());
    short_run.push_back(lone_run(model, body, 400));
  }
  const Spread all = spread_of(mile), half = spread_of(halves), sprint = spread_of(short_run);
  return {{"class: 1600 m, first of the middle 80 %, s", {360, 600}, {360, 600}, all.p10},
          {"class: 1600 m, last of the middle 80 %, s", {360, 600}, {360, 600}, all.p90},
          {"class: 800 m over 1600 m, first", {.46, .50}, {.43, .55}, half.p10},
          {"class: 800 m over 1600 m, last", {.46, .50}, {.43, .55}, half.p90},
          {"class: 400 m, first of the middle 80 %, s", {60, 120}, {60, 120}, sprint.p10},
          {"class: 400 m, last of the middle 80 %, s", {60, 120}, {60, 120}, sprint.p90}};
}

std::vector<Measured> all_studies(const Model& model) {
  std::vector<Measured> out;
  for (const auto& study : {swings, squat_thrusts, push_ups, sets_to_failure, run_repeats, class_runs})
    for (Measured& measured : study(model)) out.push_back(std::move(measured));
  return out;
}

}  // namespace repwright::calibration
