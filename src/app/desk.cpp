#include "app/desk.hpp"

namespace repwright::app {

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
  lay_down(std::move(next));
  return {};
}

base::Result<void> Desk::look_again_alone() {
  if (!origin_.mark) return {};
  const auto mark = origin_.mark();
  if (!mark) return tl::unexpected(mark.error());
  if (*mark != mark_) {
    mark_ = *mark;
    unreadable_.reset();
    if (auto gym = origin_.load())
      lay_down(std::move(*gym));
    else
      unreadable_ = gym.error();
  }
  if (unreadable_) return tl::unexpected(*unreadable_);
  return {};
}

void Desk::lay_down(OpenGym gym) {
  auto next = std::make_shared<const GymAtHand>(std::move(gym));
  const std::scoped_lock lock(reading_);
  at_hand_ = std::move(next);
}

}  // namespace repwright::app
