#pragma once

#include <optional>
#include <string>
#include <vector>

#include "board/quantities.hpp"
#include "domain/board.hpp"

/// What has been read of a piece before it is known which kind of block it is.
namespace repwright::board {

/// One line of work as written; the item's final amount waits for the piece to be known.
struct Entry {
  domain::Item item;
  domain::Span span;
  std::optional<Numbers> amount;
  std::optional<domain::Unit> unit;  // said without a number: `cal row` below a list
  std::optional<int> sets;           // from `4x8`
  std::optional<int> share_sets;     // sets counted by the list of one lift: `3-3-3-3+`
  std::vector<double> loads;         // numbers with a slash, tiers or levels
  LoadUnit load_unit = LoadUnit::Unsaid;
  domain::Span loads_span;  // where they stand, with their unit
  std::string load_word;    // what weighs so much: `plate` of `15/10 plate`
  std::optional<Numbers> scale_counts;
  std::vector<std::string> level_words;  // options in brackets that go by level
  char letter = 0;                       // A of `A1`
  bool lettered = false;                 // a digit followed the letter
  bool name_first = false;
  bool tail = false;         // starred: last in the round
  std::string shown_in;      // `row (cals)`: what the machine is to show
  bool max_in_time = false;  // `1:00 max row`: the time is a station's
  bool superset_with_next = false;
  bool continues = false;   // no lift named: goes on with the lift above
  bool both_sides = false;  // amounts are of one side
  std::string side_words;
  bool rest = false;                       // a slot of rest
  std::optional<domain::MovementId> lift;  // what the word stands for where it is lifted: `squat 5x5`
  int part = 0;  // whose part it is: 1 behind `P1:`, or behind `1:` below clocks in a row
  int line = 0;
  int slot = -1;
};

enum class Role : std::uint8_t { Plain, Once, Rounds, AnyOrder };
struct Section {
  Role role = Role::Plain;
  std::optional<int> rounds = {};
  std::vector<Entry> entries = {};
  bool this_line_only = false;
  int line = 0;
};

/// The kinds that words name; several may be said of one piece and the first that fits wins.
struct Said {
  bool for_time = false;
  bool not_for_time = false;  // at nobody's clock, whatever the part of the class
  bool amrap = false;
  bool remaining = false;  // 'in the remaining time'
  bool every = false;
  bool stations = false;
  bool relay = false;
  bool build = false;
  bool accumulate = false;
  bool for_distance = false;
  bool max_effort = false;
  bool ladder = false;
  bool sets = false;
  bool superset = false;
  bool optional = false;
  bool each_for_time = false;
  bool buy_in = false;
  bool rounds_label = false;
  bool load_scored = false;
  bool alternating = false;  // one turn each, in order
  bool climbing = false;
  bool until_fail = false;
  bool repeats = false;  // a repeated distance or group
  bool rest = false;
  bool note = false;
  bool quiet = false;  // part of a warm-up or cool-down
};

struct Draft {
  Said said;
  domain::Block block;  // fields that need no kind to be understood
  domain::Span span;
  std::vector<Section> sections;
  std::vector<std::vector<Entry>> slots;
  std::vector<int> minutes;       // that label the slots: `minute 1:`
  int slot = -1;                  // where the next work goes; -1: no label has been seen
  std::optional<Numbers> scheme;  // counts for every line below: `27-22-17`
  std::optional<base::Duration> clock;
  std::optional<int> stations;
  std::optional<int> times_of_work;  // the n of `n x 40/20`
  std::optional<domain::Range> heading_effort;
  std::optional<domain::Tempo> tempo;
  std::optional<domain::Share> share;  // handed down to the lines below
  std::optional<domain::PartnerMode> mode;
  std::optional<domain::Range> effort;
  std::string pace;
  std::optional<base::Duration> set_rest;
  std::string sides;  // 'each side' of every line below
  int part = 0;       // whose part the next work is
  int open_part = 0;  // the part that goes on until the other is done: `P2: AMRAP ...`
  std::vector<Entry> interrupt, penalty, after_fail;
  std::optional<base::Duration> interrupt_every, interrupt_first;
  std::optional<domain::Span> cap_span;
  std::vector<std::string> texts;
  bool starts_round = false;
  int first_line = 0;
  int last_line = 0;

  bool has_clock() const {
    return said.for_time || said.amrap || said.every || said.build || said.accumulate || said.for_distance ||
           said.max_effort || said.ladder || said.stations || block.work || block.rest_rule ||
           said.each_for_time;
  }
  /// Lines below take their amount from the piece: numbers behind a name are loads.
  bool gives_amounts() const {
    return scheme || said.for_distance || said.accumulate || said.stations || said.build;
  }
  bool has_work() const;
  bool untouched() const;
  Entry* last_entry();
};

/// A part of the class: its heading, if any, and the pieces below.
enum class Part : std::uint8_t {
  None,
  WarmUp,
  Skill,
  Strength,
  Piece,
  CoolDown,
  Rest,
  Extra,
  Finisher,
  Talk
};
struct Chapter {
  Part part = Part::None;
  std::string title;
  std::optional<base::Duration> minutes;
  std::optional<base::Duration> from, to;  // of a window
  bool by_starts = false;                  // the window lasts up to the next line's start
  std::vector<std::string> words;          // what the heading's own lines say to people
  domain::Span span;
  std::vector<Draft> drafts;

  /// How long it has, by its window or its heading's minutes.
  std::optional<base::Duration> length() const { return from && to ? std::optional(*to - *from) : minutes; }
};

/// A score line and the pieces it may belong to: every one since `first_chapter`, `first_draft`.
struct ScoreLine {
  domain::Score score = domain::Score::None;
  std::size_t chapter = 0;
  std::size_t draft = 0;  // pieces of the chapter before this one are out of its reach
  std::size_t last_chapter = 0;
  std::size_t last_draft = 0;
};

}  // namespace repwright::board
