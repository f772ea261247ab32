#pragma once

#include <condition_variable>
#include <cstdint>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>
#include <utility>
#include <vector>

#include "app/gym_at_hand.hpp"
#include "domain/new_score.hpp"

namespace repwright::app {

/// Where the gym comes from, for a desk that notices what other programs do to it.
struct Origin {
  std::function<base::Result<std::uint64_t>()> mark;  // as `store::Store::mark`
  std::function<base::Result<OpenGym>()> load;
};

/// The gym that everybody looks at now. Whoever took it keeps it as it was; a change lays down a new one.
class Desk {
 public:
  /// A gym that nobody else changes.
  explicit Desk(OpenGym gym) : at_hand_(std::make_shared<const GymAtHand>(std::move(gym))) {}
  /// Fails as `load` and `mark`.
  static base::Result<std::unique_ptr<Desk>> open(Origin origin);

  std::shared_ptr<const GymAtHand> at_hand() const;
  std::shared_ptr<const OpenGym> gym() const;

  /// Lays down the gym anew if another program changed it. Fails as `mark` and `load`, again and again until
  /// what is kept was changed once more; then the last gym that could be read stays.
  base::Result<void> look_again();

  /// Lets `change` work on a copy of the gym as it is kept now, one change after another, and lays that down
  /// if it succeeded. Nobody who only looks waits for it. Fails also as `look_again`.
  base::Result<void> change(const std::function<base::Result<void>(OpenGym& gym)>& change);

  /// Lets the scores of the gym teach; from then on what lies here knows it. Fails as
  /// `LearningMemory::learn`.
  base::Result<void> learn(const std::stop_token& stop = {});

  /// From now on does so on a thread of its own, at once and again whenever another gym is laid down: nobody
  /// waits for it, and until it is done all is forecast with what was learned before.
  void learn_beside();

  /// Keeps lines of the score sheet, as `store::Store::add_scores`.
  using KeepScores =
      std::function<base::Result<std::vector<domain::AddedScore>>(const std::vector<domain::NewScore>&)>;
  /// Enters a score. Those that come while others are being kept are kept together, so that a room full of
  /// phones waits for the disk twice at most. Fails as `keep` and `look_again`.
  base::Result<domain::AddedScore> enter(domain::NewScore score, const KeepScores& keep);

 private:
  /// A score on its way, and how it went.
  struct Entering {
    domain::NewScore score;
    std::optional<base::Result<domain::AddedScore>> went;
  };

  void lay_down(std::shared_ptr<const GymAtHand> next);
  base::Result<void> look_again_alone();
  base::Result<std::vector<domain::AddedScore>> enter_all(const std::vector<domain::NewScore>& scores,
                                                          const KeepScores& keep);

  void learn_until(const std::stop_token& stop);

  Origin origin_;
  std::mutex entering_;
  std::condition_variable entered_;
  std::vector<Entering*> waiting_;  // for the next to enter them; guarded by `entering_`
  bool somebody_enters_ = false;    // guarded likewise
  mutable std::mutex reading_;
  std::mutex changing_;
  std::shared_ptr<const GymAtHand> at_hand_;
  std::optional<std::uint64_t> mark_;      // of what lies here; guarded by `changing_`
  std::optional<base::Error> unreadable_;  // why what is kept there now does not lie here; guarded likewise
  std::mutex learning_;
  LearningMemory memory_;  // guarded by `learning_`
  std::condition_variable_any laid_down_;
  std::jthread beside_;  // the last member: it ends before what it works on
};

}  // namespace repwright::app
