#include "app/desk.hpp"

#include <chrono>

#include "base/require.hpp"

namespace repwright::app {
namespace {

tl::unexpected<base::Error> not_kept() {
  return base::failure(base::ErrorCode::Unavailable, "the score was not kept; try again");
}

}  // namespace

base::Result<std::unique_ptr<Desk>> Desk::open(Origin origin) {
  // The mark first: what is changed while we load is then noticed later.
  const auto mark = origin.mark();
  if (!mark) return tl::unexpected(mark.error());
  auto gym = origin.load();
  if (!gym) return tl::unexpected(gym.error());
  auto desk = std::make_unique<Desk>(std::move(*gym));
  desk->origin_ = std::move(origin);
  desk->mark_ = *mark;
  return desk;
}

std::shared_ptr<const GymAtHand> Desk::at_hand() const {
  const std::scoped_lock lock(reading_);
  return at_hand_;
}

std::shared_ptr<const OpenGym> Desk::gym() const {
  auto held = at_hand();
  const OpenGym* gym = &held->gym();
  return {std::move(held), gym};
}

base::Result<void> Desk::look_again() {
  // Whoever changes something has looked, too, and nobody waits for them to be done.
  const std::unique_lock changing(changing_, std::try_to_lock);
  if (!changing) return {};
  return look_again_alone();
}

base::Result<void> Desk::change(const std::function<base::Result<void>(OpenGym& gym)>& change) {
  const std::scoped_lock changing(changing_);
  if (auto current = look_again_alone(); !current) return current;
  OpenGym next = at_hand()->gym();
  if (auto changed = change(next); !changed) return changed;
  lay_down(std::make_shared<const GymAtHand>(std::move(next)));
  return {};
}

base::Result<domain::AddedScore> Desk::enter(domain::NewScore score, const KeepScores& keep) {
  Entering own{std::move(score), std::nullopt};
  std::unique_lock lock(entering_);
  waiting_.push_back(&own);
  entered_.wait(lock, [&] { return own.went || !somebody_enters_; });
  if (own.went) return *own.went;
  somebody_enters_ = true;
  const std::vector<Entering*> all = std::exchange(waiting_, {});
  lock.unlock();
  std::vector<domain::NewScore> scores;
  scores.reserve(all.size());
  for (const Entering* each : all) scores.push_back(each->score);
  base::Result<std::vector<domain::AddedScore>> added = not_kept();
  const auto hand_out = [&] {
    lock.lock();
    for (std::size_t i = 0; i < all.size(); ++i)
      all[i]->went = added.map([&](const std::vector<domain::AddedScore>& lines) { return lines.at(i); });
    somebody_enters_ = false;
    entered_.notify_all();
  };
  // Whatever happens, nobody is left waiting.
  try {
    added = enter_all(scores, keep);
  } catch (...) {
    hand_out();
    throw;
  }
  hand_out();
  return own.went.value_or(not_kept());
}

base::Result<std::vector<domain::AddedScore>> Desk::enter_all(const std::vector<domain::NewScore>& scores,
                                                              const KeepScores& keep) {
  const std::scoped_lock changing(changing_);
  if (auto current = look_again_alone(); !current) return tl::unexpected(current.error());
  auto added = keep(scores);
  if (!added) return added;
  std::vector<domain::ScoreEntry> fresh;
  for (std::size_t i = 0; i < scores.size(); ++i)
    if (added->at(i).is_new) fresh.push_back(scores[i].entry);
  if (!fresh.empty()) lay_down(GymAtHand::with_scores(*at_hand(), fresh));
  return added;
}

base::Result<void> Desk::look_again_alone() {
  if (!origin_.mark) return {};
  const auto mark = origin_.mark();
  if (!mark) return tl::unexpected(mark.error());
  if (*mark != mark_) {
    mark_ = *mark;
    unreadable_.reset();
    if (auto gym = origin_.load())
      lay_down(std::make_shared<const GymAtHand>(std::move(*gym)));
    else
      unreadable_ = gym.error();
  }
  if (unreadable_) return tl::unexpected(*unreadable_);
  return {};
}

void Desk::lay_down(std::shared_ptr<const GymAtHand> next) {
  const std::scoped_lock lock(reading_);
  next->keep(at_hand_->lessons());
  at_hand_ = std::move(next);
  laid_down_.notify_all();
}

base::Result<void> Desk::learn(const std::stop_token& stop) {
  const std::scoped_lock learning(learning_);
  const auto held = at_hand();
  auto lessons = memory_.learn(held->gym(), {.threads = 1, .stop = stop});
  if (!lessons) return tl::unexpected(lessons.error());
  const auto learned = std::make_shared<const Lessons>(std::move(*lessons));
  held->keep(learned);
  const std::scoped_lock lock(reading_);
  if (at_hand_ != held) at_hand_->keep(learned);
  return {};
}

void Desk::learn_beside() {
  beside_ = std::jthread([this](const std::stop_token& stop) { learn_until(stop); });
}

void Desk::learn_until(const std::stop_token& stop) {
  // Phones send a class's scores within a minute: a rest between two lessons leaves them the machine.
  constexpr std::chrono::seconds between_lessons(1), after_a_fault(60);
  std::shared_ptr<const GymAtHand> learned;
  while (!stop.stop_requested()) {
    {
      std::unique_lock lock(reading_);
      if (!laid_down_.wait(lock, stop, [&] { return at_hand_ != learned; })) return;
      learned = at_hand_;
    }
    std::chrono::seconds rest = between_lessons;
    // A fault of ours must not end the program in the middle of a class: forecasts stay as they are.
    try {
      if (!learn(stop)) return;
    } catch (const base::Bug&) {
      rest = after_a_fault;
    }
    std::unique_lock lock(reading_);
    laid_down_.wait_for(lock, stop, rest, [] { return false; });
  }
}

}  // namespace repwright::app
