#include "board/quantities.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.hpp"

namespace repwright::board {
namespace {

using base::Duration;
using domain::SetAmount;
using domain::Unit;

bool take_minute_word(Cursor& cursor, bool m_too) {
  return cursor.take_any({"min", "mins", "minute", "minutes", "mn"}) || (m_too && cursor.take("m"));
}
bool take_second_word(Cursor& cursor) {
  return cursor.take_any({"s", "sec", "secs", "second", "seconds"}) || cursor.take_symbol('"');
}

/// `12:75` as `13:15`; nothing for what is not minutes, a colon and seconds.
std::vector<std::string> carried_over(std::string_view time, double seconds) {
  const std::size_t colon = time.find(':');
  const auto minutes = base::parse_digits(time.substr(0, colon));
  if (colon == std::string_view::npos || time.find(':', colon + 1) != std::string_view::npos) return {};
  if (!minutes || seconds >= 3600) return {};
  const int all = static_cast<int>(seconds);
  return {fmt::format("{}:{:02}", *minutes + all / 60, all % 60)};
}

/// The part behind the colon or prime, told when it cannot be.
double seconds_part(Cursor& cursor, Remarks& remarks, std::size_t from) {
  const double seconds = cursor.number();
  if (seconds >= 60) {
    const domain::Span span = cursor.span_from(from);
    remarks.add({"no-such-time", span,
                 fmt::format("`{}` is no time: seconds run from 0 to 59", cursor.text_of(span)),
                 "write minutes:seconds", carried_over(cursor.text_of(span), seconds)});
  }
  return seconds;
}

std::optional<Duration> colon_time(Cursor& cursor, Remarks& remarks) {
  const std::size_t from = cursor.position();
  if (cursor.at_symbol(':') && cursor.at_number(1) && cursor.glued(1)) {
    cursor.next();
    const double seconds = cursor.number();
    take_second_word(cursor);
    return Duration::from_si(seconds);
  }
  if (!cursor.at_number() || !cursor.at_symbol(':', 1) || !cursor.glued(1) || !cursor.at_number(2) ||
      !cursor.glued(2))
    return std::nullopt;
  if (cursor.peek(2).text.size() != 2) return std::nullopt;
  const double first = cursor.number();
  cursor.next();
  const double second = seconds_part(cursor, remarks, from);
  if (cursor.at_symbol(':') && cursor.glued(0) && cursor.at_number(1) && cursor.glued(1)) {
    cursor.next();
    return Duration::from_si(first * 3600 + second * 60 + seconds_part(cursor, remarks, from));
  }
  cursor.take_any({"min", "mins", "minutes"});
  return Duration::from_si(first * 60 + second);
}

std::optional<Duration> prime_time(Cursor& cursor, Remarks& remarks) {
  if (!cursor.at_number()) return std::nullopt;
  const std::size_t from = cursor.position();
  if (cursor.at_symbol('"', 1) && cursor.glued(1)) {
    const double seconds = cursor.number();
    cursor.next();
    return Duration::from_si(seconds);
  }
  if (!cursor.at_symbol('\'', 1) || !cursor.glued(1)) return std::nullopt;
  double total = 60 * cursor.number();
  cursor.next();
  if (cursor.at_number() && cursor.glued(0)) {
    total += seconds_part(cursor, remarks, from);
    take_second_word(cursor);
  }
  return Duration::from_si(total);
}

std::optional<Duration> word_time(Cursor& cursor, Naked naked) {
  Cursor ahead = cursor;
  const auto number = ahead.take_number();
  if (!number) return std::nullopt;
  ahead.take_symbol('-');
  std::optional<Duration> time;
  if (take_second_word(ahead)) {
    time = Duration::from_si(*number);
  } else if (ahead.take_any({"h", "hr", "hrs", "hour", "hours"})) {
    time = Duration::from_si(*number * 3600);
    if (ahead.at_number() && ahead.at_any({"min", "mins", "minutes"}, 1)) {
      *time += Duration::from_si(60 * ahead.number());
      take_minute_word(ahead, false);
    }
  } else if (take_minute_word(ahead, naked == Naked::Minutes)) {
    time = Duration::from_si(*number * 60);
    const bool more = ahead.at_number() && ahead.at_any({"s", "sec", "secs", "seconds"}, 1);
    if (more) {
      *time += Duration::from_si(ahead.number());
      take_second_word(ahead);
    }
  }
  if (time) cursor = ahead;
  return time;
}

bool at_max(const Cursor& cursor) {
  return (cursor.at("amrap") && cursor.at_symbol('@', 1)) || cursor.at("max") || cursor.at("max effort") ||
         cursor.at("maximum");
}

std::optional<SetAmount> set_amount(Cursor& cursor) {
  if (at_max(cursor)) {
    cursor.take_any({"max effort", "max", "maximum", "amrap"});
    if (cursor.at_symbol('-') && cursor.glued(0) && cursor.at_number(1) && cursor.glued(1)) {
      cursor.next();
      return domain::Max{static_cast<int>(std::min(1000.0, cursor.number()))};
    }
    return domain::Max{};
  }
  if (!cursor.at_number()) return std::nullopt;
  const double value = cursor.number();
  if (cursor.at_symbol('+') && cursor.glued(0) &&
      !(cursor.at_number(1) || (cursor.at_word(1) && cursor.glued(1)))) {
    cursor.next();
    return domain::AtLeast{value};
  }
  return value;
}

/// Further numbers behind `separator`; at most so many that no list runs away.
void more_values(Cursor& cursor, Numbers& numbers, char separator) {
  while (cursor.at_symbol(separator)) {
    Cursor ahead = cursor;
    ahead.next();
    if (ahead.at_symbol(ellipsis_sign)) {
      ahead.next();
      numbers.open = true;
      cursor = ahead;
      return;
    }
    const bool together = cursor.glued(0) == ahead.glued(0);
    const bool begins_times = ahead.at_number() && ahead.at_symbol(times_sign, 1);  // `5 x 8 - 2 x 20 kg`
    if (!together || begins_times || (!ahead.at_number() && !at_max(ahead))) return;
    const auto value = set_amount(ahead);
    if (!value || numbers.values.size() > 60) return;
    numbers.values.push_back(*value);
    cursor = ahead;
  }
  if (cursor.at_symbol(ellipsis_sign) && separator == '-') {
    cursor.next();
    numbers.open = true;
  }
}

/// `8, 6, 4, 2`: more numbers, each behind a comma, and no word behind the last that it could be an amount
/// of.
bool comma_list_ahead(Cursor cursor) {
  int more = 0;
  while (cursor.at_symbol(',') && cursor.at_number(1) && more < 60) {
    cursor.next(2);
    ++more;
  }
  return more >= 2 &&
         (cursor.done() || cursor.at_symbol('@') || cursor.at_symbol('-') || cursor.at_symbol(':'));
}

/// `3,3,3`: three and more without blanks.
void take_comma_list(Cursor& cursor, Numbers& numbers) {
  Cursor ahead = cursor;
  Numbers list = numbers;
  const bool spaced = comma_list_ahead(cursor);
  while (ahead.at_symbol(',') && ahead.glued(0) && ahead.at_number(1) && (spaced || ahead.glued(1)) &&
         list.values.size() < 60) {
    ahead.next();
    list.values.emplace_back(ahead.number());
  }
  if (list.values.size() < 3) return;
  numbers = std::move(list);
  cursor = ahead;
}

/// `12.10.8.6`: whole numbers with nothing but dots between them.
std::vector<double> dotted_numbers(Cursor& cursor) {
  std::vector<double> values;
  constexpr std::size_t most = 60;
  while (cursor.at_number() && values.size() < most) {
    const std::string& digits = cursor.peek().text;
    const bool whole = digits.find('.') == std::string::npos && !digits.starts_with('0') && digits.size() < 4;
    if (!whole) return {};
    values.push_back(cursor.number());
    const bool more = cursor.at_symbol('.') && cursor.glued(0) && cursor.at_number(1) && cursor.glued(1);
    if (!more) break;
    cursor.next();
  }
  return values;
}

/// Three numbers that may be day, month and year are counts only if none is above the one before it and the
/// last is no year.
bool may_be_date(const std::vector<double>& values) {
  constexpr double last_month = 12;
  constexpr double first_year = 20;
  if (values.size() != 3) return values.size() < 3;
  const bool rises = values[1] > values[0] || values[2] > values[1];
  return rises || (values[1] <= last_month && values[2] >= first_year);
}

}  // namespace

bool at_dotted_counts(const Cursor& cursor) {
  if (!cursor.at_number() || !cursor.at_symbol('.', 1) || !cursor.at_number(2)) return false;
  Cursor ahead = cursor;
  return !may_be_date(dotted_numbers(ahead));
}

std::optional<Duration> take_time(Cursor& cursor, Remarks& remarks, Naked naked) {
  if (auto time = colon_time(cursor, remarks)) return time;
  if (auto time = prime_time(cursor, remarks)) return time;
  if (auto time = word_time(cursor, naked)) return time;
  if (naked == Naked::Refused || !cursor.at_number()) return std::nullopt;
  const double number = cursor.number();
  return Duration::from_si(naked == Naked::Minutes ? number * 60 : number);
}

std::optional<double> Numbers::plain() const {
  if (values.size() != 1 || open) return std::nullopt;
  const auto* number = std::get_if<double>(&values.front());
  return number == nullptr ? std::nullopt : std::optional(*number);
}

std::vector<double> Numbers::plain_values() const {
  std::vector<double> plain;
  for (const SetAmount& value : values) {
    const auto* number = std::get_if<double>(&value);
    if (number == nullptr) return {};
    plain.push_back(*number);
  }
  return plain;
}

std::optional<UnitRead> take_unit(Cursor& cursor) {
  constexpr double mile_in_metres = 1609.344;  // exact: international mile, 1959
  if (cursor.take_any({"m", "meter", "meters", "metre", "metres", "mtr", "mtrs", "ms"}))
    return UnitRead{Unit::Metres, 1};
  if (cursor.take_any({"k", "km", "kms", "kilometre", "kilometres", "kilometer", "kilometers"}))
    return UnitRead{Unit::Metres, 1000};
  if (cursor.take_any({"mi", "mile", "miles"})) return UnitRead{Unit::Metres, mile_in_metres};
  if (cursor.take_any({"cal", "cals", "kcal", "kcals", "calorie", "calories"}))
    return UnitRead{Unit::Kilocalories, 1};
  if (cursor.take_any({"rep", "reps", "repetition", "repetitions"})) return UnitRead{Unit::Reps, 1};
  if (take_second_word(cursor)) return UnitRead{Unit::Seconds, 1};
  if (cursor.take_any({"min", "mins", "minute", "minutes"})) return UnitRead{Unit::Seconds, 60};
  if (cursor.at_symbol('\'') && cursor.glued(0)) {
    cursor.next();
    return UnitRead{Unit::Seconds, 60};
  }
  return std::nullopt;
}

std::optional<Numbers> take_numbers(Cursor& cursor, Remarks& remarks) {
  const std::size_t from = cursor.position();
  Numbers numbers;
  Cursor ahead = cursor;
  if (auto time = colon_time(ahead, remarks)) {
    numbers.values = {time->si()};
    numbers.unit = Unit::Seconds;
  } else if (auto prime = prime_time(ahead, remarks)) {
    numbers.values = {prime->si()};
    numbers.unit = Unit::Seconds;
  } else if (at_dotted_counts(ahead)) {
    for (const double value : dotted_numbers(ahead)) numbers.values.emplace_back(value);
    numbers.joined = Joined::Dashes;
  } else {
    const auto first = set_amount(ahead);
    if (!first) return std::nullopt;
    numbers.values = {*first};
    if (ahead.at_symbol('-')) more_values(ahead, numbers, '-');
    if (numbers.values.size() == 1 && ahead.at_symbol(',') && ahead.glued(0)) take_comma_list(ahead, numbers);
    if (numbers.values.size() > 1 || numbers.open) numbers.joined = Joined::Dashes;
    if (numbers.joined == Joined::One && ahead.at_symbol('/')) {
      more_values(ahead, numbers, '/');
      if (numbers.values.size() > 1) numbers.joined = Joined::Slashes;
    }
    if (const auto unit = take_unit(ahead)) {
      numbers.unit = unit->unit;
      for (SetAmount& value : numbers.values)
        if (auto* number = std::get_if<double>(&value)) *number *= unit->factor;
      numbers.unit_factor = unit->factor;
    }
  }
  cursor = ahead;
  numbers.span = cursor.span_from(from);
  return numbers;
}

LoadUnit take_load_unit(Cursor& cursor) {
  if (cursor.take_any({"kg", "kgs", "kilo", "kilos"})) return LoadUnit::Kilograms;
  if (cursor.take_any({"lb", "lbs", "pound", "pounds"}) || cursor.take_symbol('#')) return LoadUnit::Pounds;
  if (cursor.take_any({"pood", "poods"})) return LoadUnit::Poods;
  return LoadUnit::Unsaid;
}

base::Mass mass_of(double number, LoadUnit unit, bool house_pounds) {
  constexpr double pood_in_kilograms = 16.3804964;  // 40 Russian pounds of 409.51241 g
  if (unit == LoadUnit::Pounds || (unit == LoadUnit::Unsaid && house_pounds)) return number * base::pound;
  if (unit == LoadUnit::Poods) return number * pood_in_kilograms * base::kilogram;
  return number * base::kilogram;
}

std::optional<domain::Tempo> take_tempo(Cursor& cursor) {
  Cursor ahead = cursor;
  std::string digits;
  for (std::size_t i = 0; i < 8 && digits.size() < 4; ++i) {
    if (i > 0 && ahead.at_symbol('-')) ahead.next();
    const bool x = ahead.at_symbol(times_sign) || ahead.at("x");
    if (!x && !ahead.at_number()) break;
    if (i > 0 && !ahead.glued(0)) break;
    digits += x ? "x" : ahead.peek().text;
    ahead.next();
  }
  // `x0` and the like are one word to the lexer.
  if (digits.size() < 4 && ahead.at_word() && ahead.glued(0) &&
      ahead.peek().text.size() == 4 - digits.size()) {
    digits += ahead.peek().text;
    ahead.next();
  }
  const bool four = digits.size() == 4 && digits.find_first_not_of("0123456789x") == std::string::npos;
  // An x anywhere but in the place of the lift is a sign of times: `2x15`.
  const std::size_t x = digits.find('x');
  const bool dashed = ahead.position() - cursor.position() >= 7;
  const bool times =
      x != std::string::npos && !dashed && (x != 2 || digits.find('x', 3) != std::string::npos);
  if (!four || times || (ahead.at_number() && ahead.glued(0))) return std::nullopt;
  domain::Tempo tempo;
  for (std::size_t i = 0; i < 4; ++i)
    if (digits[i] != 'x') tempo[i] = digits[i] - '0';
  cursor = ahead;
  return tempo;
}

std::optional<Bounds> take_bounds(Cursor& cursor) {
  const auto first = cursor.take_number();
  if (!first) return std::nullopt;
  if (cursor.at_symbol('+')) {
    cursor.next();
    return Bounds{*first, std::nullopt};
  }
  if ((cursor.at_symbol('-') || cursor.at("to")) && cursor.at_number(1)) {
    cursor.next();
    return Bounds{*first, cursor.take_number()};
  }
  return Bounds{*first, first};
}

}  // namespace repwright::board
