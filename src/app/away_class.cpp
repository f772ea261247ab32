#include "app/away_class.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>
#include <map>
#include <set>

#include "app/away_warm_up.hpp"
#include "app/away_work.hpp"
#include "app/lone_piece.hpp"
#include "app/other_board.hpp"
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

constexpr int fits = 3;         // rounds of making the lines as long as they were
constexpr double close = 0.15;  // of a pattern's seconds: what counts as the same
constexpr int cuts = 7;         // halvings of the share to which a board is cut

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

GymKnowledge without_hall(GymKnowledge gym) {
  gym.hall = {};
  return gym;
}

class Away {
 public:
  Away(const ClassRequest& request, const AwayWishes& wishes, domain::Person person)
      : gym_(without_hall(request.gym)),
        request_(with_board(request, request.reading, gym_, request.runs)),
        wishes_(wishes),
        person_(std::move(person)),
        limits_(domain::limits_on(person_, request_.gym_class.date)) {}

  base::Result<domain::AwayPlan> plan(domain::Solver& solver);

 private:
  base::Result<LoneWork> work(const Board& board) const { return lone_work(request_, person_, board); }
  const Movement* done_here(const Item& line, const LoneWork& before) const;
  bool choose_of(const std::vector<Item>& lines, const LoneWork& before);
  base::Result<void> choose(const Board& here, const LoneWork& before);
  base::Result<LoneWork> match(const Board& here, const LoneWork& before);
  Item away_line(const Item& line) const;
  Board board_away(const Board& here) const;
  base::Result<Board> shortened(const Board& board) const;
  void tell_patterns(domain::AwayPlan& plan, const LoneWork& before, const LoneWork& after) const;
  void tell_lines(domain::AwayPlan& plan, const Board& here, const Board& away) const;

  std::vector<const Movement*> forms_of(const Movement& movement) const {
    return advice::away_forms(movement, wishes_.place, request_.gym.catalogue, limits_);
  }
  const Movement* known(const std::optional<domain::MovementId>& id) const {
    return id ? request_.gym.catalogue.find(*id) : nullptr;
  }

  GymKnowledge gym_;
  ClassRequest request_;
  const AwayWishes& wishes_;
  domain::Person person_;
  std::vector<domain::Limit> limits_;
  std::map<domain::StepId, const Movement*> forms_;  // null: nothing is possible
  std::map<domain::StepId, double> factors_;         // units of the form for one of the line
};

/// Seconds for one unit of the line by the catalogue, for a line that nobody came to.
double usual_seconds(const Movement& movement, domain::Unit unit) {
  const auto pace = movement.pace.find(unit);
  return pace != movement.pace.end() ? pace->second.sustained
                                     : movement.pace.at(movement.default_unit).sustained;
}

/// What is really done for the line here; null: nobody knows the movement.
const Movement* Away::done_here(const Item& line, const LoneWork& before) const {
  if (const auto worked = before.lines.find(line.step); worked != before.lines.end())
    if (const Movement* own = known(worked->second.done)) return own;
  return known(line.movement);
}

/// The forms of lines that are done in turn. The second movement of them stays a second movement, if there is
/// a form of it: a list of one thing is another session.
bool Away::choose_of(const std::vector<Item>& lines, const LoneWork& before) {
  std::set<const Movement*> written_so_far;
  std::set<const Movement*> taken;
  for (const Item& line : lines) {
    const Movement* written = done_here(line, before);
    if (written == nullptr) continue;
    std::vector<const Movement*> forms = forms_of(*written);
    // What they do here for a limit may have fewer patterns than what is chalked.
    if (const Movement* chalked = known(line.movement); chalked != nullptr && chalked != written)
      std::ranges::copy(forms_of(*chalked), std::back_inserter(forms));
    const bool alike = !forms.empty();
    const auto others = advice::away_others(*written, wishes_.place, request_.gym.catalogue, limits_);
    forms.insert(forms.end(), others.begin(), others.end());
    const Movement*& form = forms_[line.step];
    form = forms.empty() ? nullptr : forms.front();
    const bool another = !written_so_far.empty() && !written_so_far.contains(written);
    if ((another && taken.size() == 1) || !alike) {
      const auto fresh =
          std::ranges::find_if(forms, [&](const Movement* one) { return !taken.contains(one); });
      if (fresh != forms.end()) form = *fresh;
    }
    written_so_far.insert(written);
    if (form == nullptr) continue;
    taken.insert(form);
    factors_[line.step] = usual_seconds(*written, line.unit) / usual_seconds(*form, form->default_unit);
  }
  return !taken.empty();
}

/// The form of every line, of what is really done there.
base::Result<void> Away::choose(const Board& here, const LoneWork& before) {
  bool any = false;
  std::vector<Block> blocks = here.blocks;
  for_each_block(blocks, [&](Block& block) {
    std::vector<Item> in_turn = block.items;
    for (const std::vector<Item>& slot : block.slots) in_turn.insert(in_turn.end(), slot.begin(), slot.end());
    any = choose_of(in_turn, before) || any;
    if (block.interrupt) any = choose_of(block.interrupt->items, before) || any;
    any = choose_of(block.penalty, before) || any;
    any = choose_of(block.after_fail, before) || any;
  });
  if (any) return {};
  return base::failure(base::ErrorCode::Invalid,
                       "nothing on this board can be done there: give more room (--room 6), kit (--kit "
                       "dumbbell), or a place outside (--outside)");
}

Item Away::away_line(const Item& line) const {
  return advice::as_form(line, *forms_.at(line.step), factors_.at(line.step));
}

Board Away::board_away(const Board& here) const {
  Board board = here;
  for_each_block(board.blocks, [&](Block& block) {
    for_each_list(block, [&](std::vector<Item>& items) {
      std::erase_if(items, [&](const Item& item) {
        const auto form = forms_.find(item.step);
        return form != forms_.end() && form->second == nullptr;
      });
      for (Item& item : items)
        if (forms_.contains(item.step)) item = away_line(item);
    });
  });
  return board;
}

double one_pass(const LoneWork& work, domain::StepId step) {
  const auto line = work.lines.find(step);
  return line == work.lines.end() || line->second.passes <= 0 ? 0
                                                              : line->second.seconds / line->second.passes;
}

/// So many of each form that one pass takes this person as long as the line does here; what they did in the
/// end. A person's own pace differs from the catalogue's, and the rehearsal knows it.
base::Result<LoneWork> Away::match(const Board& here, const LoneWork& before) {
  const std::vector<rehearsal::ItemAt> lines = rehearsal::items_by_step(here);
  auto after = work(without_caps(board_away(here)));
  for (int fit = 0; fit < fits && after; ++fit) {
    for (auto& [step, factor] : factors_) {
      const double was = one_pass(before, step);
      const double is = one_pass(*after, step);
      if (was <= 0 || is <= 0) continue;
      const Item& line = *lines[static_cast<std::size_t>(step.index)].item;
      const auto* written = std::get_if<double>(&line.amount);
      const Item away = away_line(line);
      const auto* done = std::get_if<double>(&away.amount);
      // Of whole counts, so that what rounding gave is not taken for pace.
      const double counted =
          written != nullptr && done != nullptr && *written > 0 ? *done / *written : factor;
      factor = counted * was / is;
    }
    after = work(without_caps(board_away(here)));
  }
  return after;
}

/// The longest cut of the board that fits into the asked minutes.
base::Result<Board> Away::shortened(const Board& board) const {
  if (!wishes_.length) return board;
  const auto whole = work(board);
  if (!whole) return tl::unexpected(whole.error());
  if (whole->class_s <= wishes_.length->si()) return board;
  double fits_in = 0;
  double too_long = 1;
  for (int step = 0; step < cuts; ++step) {
    const double share = (fits_in + too_long) / 2;
    const auto cut = work(cut_to(board, share));
    if (!cut) return tl::unexpected(cut.error());
    (cut->class_s <= wishes_.length->si() ? fits_in : too_long) = share;
  }
  return cut_to(board, fits_in);
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

/// Seconds of both for as many rounds as are done here.
void Away::tell_patterns(domain::AwayPlan& plan, const LoneWork& before, const LoneWork& after) const {
  std::map<std::string, domain::PatternSeconds> patterns;
  const auto sum_of = [&](const LoneWork& work, domain::StepId step) -> domain::PatternSeconds* {
    const auto line = work.lines.find(step);
    const Movement* movement = line == work.lines.end() ? nullptr : known(line->second.done);
    if (movement == nullptr || movement->patterns.empty()) return nullptr;
    domain::PatternSeconds& sum = patterns[movement->patterns.front()];
    sum.pattern = movement->patterns.front();
    return &sum;
  };
  for (const auto& [step, line] : before.lines) {
    if (domain::PatternSeconds* sum = sum_of(before, step)) sum->here_s += line.seconds;
    if (domain::PatternSeconds* sum = sum_of(after, step)) sum->away_s += line.passes * one_pass(after, step);
  }
  for (auto& [name, sum] : patterns) {
    if (std::abs(sum.away_s - sum.here_s) > close * sum.here_s)
      plan.notes.push_back(fmt::format(
          "{}: {} of work here, {} there for the same rounds; what is possible there comes no closer", name,
          base::format_clock(base::Duration::from_si(sum.here_s)),
          base::format_clock(base::Duration::from_si(sum.away_s))));
    plan.patterns.push_back(std::move(sum));
  }
}

void Away::tell_lines(domain::AwayPlan& plan, const Board& here, const Board& away) const {
  const std::vector<rehearsal::ItemAt> there = rehearsal::items_by_step(away);
  for (const rehearsal::ItemAt& line : rehearsal::items_by_step(here)) {
    const auto form = line.item != nullptr ? forms_.find(line.item->step) : forms_.end();
    if (form == forms_.end()) continue;
    domain::AwayLine& told = plan.lines.emplace_back();
    told.written = amount_words(*line.item, known(line.item->movement));
    const auto at = static_cast<std::size_t>(form->first.index);
    if (at < there.size() && there[at].item != nullptr)
      told.away = amount_words(*there[at].item, known(there[at].item->movement));
  }
}

base::Result<domain::AwayPlan> Away::plan(domain::Solver& solver) {
  const Board here = for_one(request_.reading.board);
  const auto as_here = work(here);
  if (!as_here) return tl::unexpected(as_here.error());
  const auto before = work(without_caps(here));
  if (!before) return tl::unexpected(before.error());
  if (auto chosen = choose(here, *before); !chosen) return tl::unexpected(chosen.error());
  const auto matched = match(here, *before);
  if (!matched) return tl::unexpected(matched.error());
  const auto short_enough = shortened(board_away(here));
  if (!short_enough) return tl::unexpected(short_enough.error());
  const auto away = with_own_warm_up(
      *short_enough, {request_.gym.catalogue, wishes_.place, limits_, {.stop = request_.stop}}, solver);
  if (!away) return tl::unexpected(away.error());
  const auto as_away = work(*away);
  if (!as_away) return tl::unexpected(as_away.error());

  domain::AwayPlan plan;
  plan.text = board::tidy(*away, request_.gym.catalogue, request_.gym.house);
  plan.here_s = as_here->class_s;
  plan.away_s = as_away->class_s;
  if (wishes_.length && plan.away_s > wishes_.length->si())
    plan.notes.push_back(fmt::format("{} cannot be made as short as {}: leave out a part",
                                     base::format_clock(base::Duration::from_si(plan.here_s)),
                                     base::format_clock(*wishes_.length)));
  tell_patterns(plan, *before, *matched);
  tell_lines(plan, here, *away);
  return plan;
}

}  // namespace

base::Result<domain::AwayPlan> away_class(const ClassRequest& request, const AwayWishes& wishes,
                                          domain::Solver& solver) {
  auto person = person_of(request, wishes);
  if (!person) return tl::unexpected(person.error());
  return Away(request, wishes, std::move(*person)).plan(solver);
}

}  // namespace repwright::app
