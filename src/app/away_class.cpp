#include "app/away_class.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

#include "app/lone_piece.hpp"
#include "base/clock_text.hpp"
#include "base/text.hpp"
#include "board/tidy.hpp"
#include "domain/spoken.hpp"
#include "rehearsal/board_items.hpp"
#include "timetable/box_words.hpp"

namespace repwright::app {
namespace {

using domain::Block;
using domain::BlockKind;
using domain::Board;
using domain::Item;
using domain::Movement;

constexpr int runs = 24;
constexpr int fits = 3;            // rounds of making the lines as long as they were
constexpr double close = 0.15;     // of a pattern's seconds: what counts as the same
constexpr double shortest_s = 60;  // of a clock that is cut

base::Result<domain::Person> person_of(const ClassRequest& request, const AwayWishes& wishes) {
  if (!wishes.who) {
    domain::Person somebody;
    somebody.id = {"somebody"};
    somebody.name = "Somebody";
    return somebody;
  }
  const auto found = std::ranges::find_if(request.people, [&](const domain::Person& person) {
    return person.id.text == *wishes.who || base::lower(person.name) == base::lower(*wishes.who);
  });
  if (found != request.people.end()) return *found;
  return base::failure(base::ErrorCode::NotFound,
                       fmt::format("--who: nobody is called `{}` (name or id)", *wishes.who));
}

void for_each_block(std::vector<Block>& blocks, const std::function<void(Block&)>& one) {
  for (Block& block : blocks) {
    one(block);
    for_each_block(block.children, one);
  }
}

void for_each_list(Block& block, const std::function<void(std::vector<Item>&)>& one) {
  one(block.items);
  for (std::vector<Item>& slot : block.slots) one(slot);
  if (block.interrupt) one(block.interrupt->items);
  one(block.penalty);
  one(block.after_fail);
}

/// For one person: no teams, heats, lanes or starts in turn; parts that the hall is for are dropped.
Board for_one(Board board) {
  std::erase_if(board.blocks, [](const Block& block) {
    if (!block.items.empty() || !block.slots.empty() || !block.children.empty()) return false;
    const auto kind =
        timetable::box_kind(block.title.empty() ? block.text : block.title, timetable::BoxKind::Work);
    return kind == timetable::BoxKind::Briefing || kind == timetable::BoxKind::Change ||
           kind == timetable::BoxKind::Scores || kind == timetable::BoxKind::Clean;
  });
  for_each_block(board.blocks, [](Block& block) {
    if (block.kind == BlockKind::Partner || block.kind == BlockKind::Relay) block = lone_piece(block);
    block.heats.reset();
    block.lanes.reset();
    block.start.reset();
    block.odd_start.reset();
    block.keep_place = false;
  });
  return board;
}

struct LineWork {
  double seconds = 0;  // of work in all
  double units = 0;
};
/// What one person does on each line, alone on an empty floor.
struct Work {
  std::map<domain::StepId, LineWork> lines;
  std::map<domain::StepId, domain::MovementId> done;
  double class_s = 0;
};

class Away {
 public:
  Away(const ClassRequest& request, const AwayWishes& wishes, domain::Person person)
      : request_(request), wishes_(wishes), people_{std::move(person)}, gym_(request.gym) {
    gym_.hall = {};
  }

  base::Result<domain::AwayPlan> plan();

 private:
  base::Result<Work> work(const Board& board) const;
  base::Result<void> choose(const Board& here, const Work& before);
  Board board_away(const Board& here) const;
  void shorten(Board& board) const;
  void tell(domain::AwayPlan& plan, const Board& here, const Work& before, const Work& after) const;

  const Movement* known(const std::optional<domain::MovementId>& id) const {
    return id ? gym_.catalogue.find(*id) : nullptr;
  }

  const ClassRequest& request_;
  const AwayWishes& wishes_;
  std::vector<domain::Person> people_;
  GymKnowledge gym_;
  std::map<domain::StepId, const Movement*> forms_;  // null: nothing is possible
  std::map<domain::StepId, double> factors_;         // units of the form for one of the line
};

base::Result<Work> Away::work(const Board& board) const {
  const board::Reading reading{.board = board, .steps = {}, .blocks = {}, .rules = {}, .diagnostics = {}};
  const domain::GymClass gym_class;
  const auto rehearsed = rehearse_class({.reading = reading,
                                         .gym = gym_,
                                         .people = people_,
                                         .gym_class = gym_class,
                                         .heads = {},
                                         .rule = request_.rule,
                                         .seed = request_.seed,
                                         .runs = runs,
                                         .threads = 1,
                                         .stop = request_.stop});
  if (!rehearsed) return tl::unexpected(rehearsed.error());
  Work work;
  work.class_s = rehearsed->rehearsal.timetable.p50_s;
  for (const domain::PieceOutcome& piece : rehearsed->rehearsal.people.at(0).pieces)
    for (const domain::StepTrace& step : piece.steps) {
      LineWork& line = work.lines[step.step];
      line.seconds += step.work_s * step.share_of_runs;
      line.units += step.amount * step.share_of_runs;
      work.done[step.step] = step.version;
    }
  return work;
}

/// The form of every line, of what is really done there, and how many of it stand for one.
base::Result<void> Away::choose(const Board& here, const Work& before) {
  const auto limits = domain::limits_on(people_.front(), request_.gym_class.date);
  bool any = false;
  for (const rehearsal::ItemAt& line : rehearsal::items_by_step(here)) {
    if (line.item == nullptr) continue;
    const domain::StepId step = line.item->step;
    const Movement* written = known(line.item->movement);
    if (const auto done = before.done.find(step); done != before.done.end())
      if (const Movement* own = gym_.catalogue.find(done->second)) written = own;
    if (written == nullptr) continue;
    const auto possible = advice::away_forms(*written, wishes_.place, gym_.catalogue, limits);
    forms_[step] = possible.empty() ? nullptr : possible.front();
    if (possible.empty()) continue;
    any = true;
    const double form_s = possible.front()->pace.at(possible.front()->default_unit).sustained;
    const auto worked = before.lines.find(step);
    const bool known_s =
        worked != before.lines.end() && worked->second.units > 0 && worked->second.seconds > 0;
    factors_[step] = (known_s ? worked->second.seconds / worked->second.units : form_s) / form_s;
  }
  if (any) return {};
  return base::failure(base::ErrorCode::Invalid,
                       "nothing on this board can be done there: give more room (--room 6), kit (--kit "
                       "dumbbell), or a place outside (--outside)");
}

Board Away::board_away(const Board& here) const {
  Board board = here;
  for_each_block(board.blocks, [&](Block& block) {
    for_each_list(block, [&](std::vector<Item>& items) {
      std::erase_if(items, [&](const Item& item) {
        const auto form = forms_.find(item.step);
        return form != forms_.end() && form->second == nullptr;
      });
      for (Item& item : items) {
        const auto form = forms_.find(item.step);
        if (form == forms_.end()) continue;
        item = advice::as_form(item, *form->second, factors_.at(item.step));
      }
    });
  });
  shorten(board);
  return board;
}

/// Clocks and rounds cut to the asked length, all by the same share.
void Away::shorten(Board& board) const {
  if (!wishes_.length) return;
  const auto told = work(board);
  if (!told || told->class_s <= wishes_.length->si()) return;
  const double share = wishes_.length->si() / told->class_s;
  for_each_block(board.blocks, [&](Block& block) {
    for (std::optional<base::Duration>* clock : {&block.duration, &block.cap})
      if (*clock) *clock = std::max(shortest_s, std::floor((*clock)->si() * share / 30) * 30) * base::second;
    for (std::optional<int>* count : {&block.rounds, &block.sets, &block.laps, &block.intervals})
      if (*count) *count = std::max(1, static_cast<int>(std::floor(**count * share)));
  });
}

std::string amount_words(const Item& item, const Movement* movement) {
  if (movement == nullptr) return item.free_text;
  const auto* count = std::get_if<double>(&item.amount);
  const std::string one = domain::spoken_one(*movement);
  if (count == nullptr) return domain::spoken_many(*movement);
  if (item.unit == domain::Unit::Reps)
    return fmt::format("{:g} {}", *count, *count == 1 ? one : domain::spoken_many(*movement));
  const char* unit = item.unit == domain::Unit::Metres    ? "m"
                     : item.unit == domain::Unit::Seconds ? "s"
                                                          : "cal";
  return fmt::format("{:g} {} {}", *count, unit, one);
}

void Away::tell(domain::AwayPlan& plan, const Board& here, const Work& before, const Work& after) const {
  std::map<std::string, domain::PatternSeconds> patterns;
  const auto add = [&](const Work& work, double domain::PatternSeconds::* side) {
    for (const auto& [step, line] : work.lines) {
      const Movement* movement = gym_.catalogue.find(work.done.at(step));
      if (movement == nullptr || movement->patterns.empty()) continue;
      domain::PatternSeconds& sum = patterns[movement->patterns.front()];
      sum.pattern = movement->patterns.front();
      sum.*side += line.seconds;
    }
  };
  add(before, &domain::PatternSeconds::here_s);
  add(after, &domain::PatternSeconds::away_s);
  for (auto& [name, sum] : patterns) {
    if (!wishes_.length && std::abs(sum.away_s - sum.here_s) > close * std::max(1.0, sum.here_s))
      plan.notes.push_back(fmt::format("{}: {} of work here, {} there; nothing possible there comes closer",
                                       name, base::format_clock(base::Duration::from_si(sum.here_s)),
                                       base::format_clock(base::Duration::from_si(sum.away_s))));
    plan.patterns.push_back(std::move(sum));
  }
  plan.here_s = before.class_s;
  plan.away_s = after.class_s;
  for (const rehearsal::ItemAt& line : rehearsal::items_by_step(here)) {
    const auto form = line.item != nullptr ? forms_.find(line.item->step) : forms_.end();
    if (form == forms_.end()) continue;
    domain::AwayLine& told = plan.lines.emplace_back();
    told.written = amount_words(*line.item, known(line.item->movement));
    if (form->second == nullptr) continue;
    const Item away = advice::as_form(*line.item, *form->second, factors_.at(form->first));
    told.away = amount_words(away, form->second);
  }
}

base::Result<domain::AwayPlan> Away::plan() {
  const Board here = for_one(request_.reading.board);
  const auto before = work(here);
  if (!before) return tl::unexpected(before.error());
  if (auto chosen = choose(here, *before); !chosen) return tl::unexpected(chosen.error());
  Board away = board_away(here);
  auto after = work(away);
  // A person's own pace differs from the catalogue's: correct by what the rehearsal says, until it settles.
  for (int fit = 0; fit < fits && after; ++fit) {
    for (auto& [step, factor] : factors_) {
      const auto was = before->lines.find(step);
      const auto is = after->lines.find(step);
      if (was == before->lines.end() || is == after->lines.end() || is->second.seconds <= 0) continue;
      if (!wishes_.length) factor *= std::clamp(was->second.seconds / is->second.seconds, 0.5, 2.0);
    }
    away = board_away(here);
    after = work(away);
  }
  if (!after) return tl::unexpected(after.error());
  domain::AwayPlan plan;
  plan.text = board::tidy(away, gym_.catalogue, gym_.house);
  tell(plan, here, *before, *after);
  return plan;
}

}  // namespace

base::Result<domain::AwayPlan> away_class(const ClassRequest& request, const AwayWishes& wishes) {
  auto person = person_of(request, wishes);
  if (!person) return tl::unexpected(person.error());
  return Away(request, wishes, std::move(*person)).plan();
}

}  // namespace repwright::app
