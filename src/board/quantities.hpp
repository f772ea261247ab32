#pragma once

#include <optional>
#include <string>
#include <vector>

#include "board/cursor.hpp"
#include "board/remarks.hpp"
#include "domain/board.hpp"

/// Amounts, clock times and loads: one function per form. Each takes what it reads, or nothing at all.
namespace repwright::board {

/// What a number without a unit is.
enum class Naked : std::uint8_t { Refused, Minutes, Seconds };

/// `12:00`, `:30`, `12'`, `1'30`, `90"`, `35s`, `2 min 30`, `1 h`; an `m` counts as minutes where minutes are
/// due.
std::optional<base::Duration> take_time(Cursor& cursor, Remarks& remarks, Naked naked);

/// How the numbers of an amount are put together.
enum class Joined : std::uint8_t { One, Dashes, Slashes };

/// Numbers as written, before it is known what they mean.
struct Numbers {
  std::vector<domain::SetAmount> values = {};
  Joined joined = Joined::One;
  bool open = false;  // goes on: `2-4-6-...`
  std::optional<domain::Unit> unit = {};
  double unit_factor = 1;
  domain::Span span = {};

  std::optional<double> plain() const;
  /// Every value as a plain number, or empty if one is not.
  std::vector<double> plain_values() const;
};

/// `14`, `3+`, `max`, `max-2`, `6-8`, `27-22-17`, `500/400/300`, `18/14 cal`, `0.8k`, `:30`, `2-4-6-...`.
std::optional<Numbers> take_numbers(Cursor& cursor, Remarks& remarks);

/// Whether counts with dots between them stand here: `12.10.8.6`, `21.15.9`, but no date and no decimal
/// number.
bool at_dotted_counts(const Cursor& cursor);

/// A unit of work at the cursor and what one of it is in the board's units.
struct UnitRead {
  domain::Unit unit = domain::Unit::Reps;
  double factor = 1;
};
std::optional<UnitRead> take_unit(Cursor& cursor);

enum class LoadUnit : std::uint8_t { Unsaid, Kilograms, Pounds, Poods };
/// `kg`, `lb`, `#`, `pood`.
LoadUnit take_load_unit(Cursor& cursor);
base::Mass mass_of(double number, LoadUnit unit, bool house_pounds);

/// `3-1-1-0`, `3110`, `31X0`.
std::optional<domain::Tempo> take_tempo(Cursor& cursor);

/// A number or a range: `7`, `6-8`, `4+` (no end).
struct Bounds {
  double min = 0;
  std::optional<double> max;
};
std::optional<Bounds> take_bounds(Cursor& cursor);

}  // namespace repwright::board
