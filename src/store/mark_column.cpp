#include "store/mark_column.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "base/text.hpp"
#include "domain/written_values.hpp"
#include "store/mark_bounds.hpp"

namespace repwright::store {
namespace {

using base::metre;
using base::second;
using domain::Mark;
using domain::Movement;
using domain::read_clock;
using domain::read_number;
using domain::Unit;

using HeaderResult = tl::expected<std::optional<MarkColumn>, std::string>;
using Fits = bool (*)(const Movement&);

bool has_metres(const Movement& movement) {
  return movement.pace.contains(Unit::Metres);
}
bool is_loaded(const Movement& movement) {
  return movement.category == "barbell" || movement.typical_load.has_value();
}
bool is_barbell(const Movement& movement) {
  return movement.category == "barbell";
}
bool is_counted(const Movement& movement) {
  return movement.pace.contains(Unit::Reps);
}
bool is_body_weight(const Movement& movement) {
  return is_counted(movement) && !movement.typical_load;
}
bool is_held_or_counted(const Movement& movement) {
  return movement.default_unit == Unit::Seconds || is_body_weight(movement);
}

/// Which movement a mark is of: the one of that name if it can have such a mark, or the first meaning of a
/// doubtful word ("row", "squat") that can.
const Movement* movement_of(std::string_view written, const NamedCatalogue& known, Fits by_name,
                            Fits by_doubtful_word) {
  if (const domain::MovementId* id = known.names.find(written)) {
    const Movement* movement = known.catalogue.find(*id);
    return movement != nullptr && by_name(*movement) ? movement : nullptr;
  }
  const std::string normal = domain::normal_name(written);
  for (const auto& [word, ids] : known.catalogue.ambiguous_words) {
    if (domain::normal_name(word) != normal) continue;
    for (const domain::MovementId& id : ids)
      if (const Movement* movement = known.catalogue.find(id);
          movement != nullptr && by_doubtful_word(*movement))
        return movement;
  }
  return nullptr;
}

tl::unexpected<std::string> no_movement(std::string_view written, std::string_view what) {
  return tl::unexpected(fmt::format("the catalogue knows no '{}' that is {}", written, what));
}

/// The header without its bracket, in small letters, and what stood in the bracket.
struct Header {
  std::string words;
  std::string unit;
};

Header apart(std::string_view header) {
  Header out{base::lower(base::trim(header)), {}};
  const std::size_t open = out.words.rfind('(');
  if (open == std::string::npos || !out.words.ends_with(')')) return out;
  out.unit = base::trim(std::string_view(out.words).substr(open + 1, out.words.size() - open - 2));
  out.words = base::trim(std::string_view(out.words).substr(0, open));
  return out;
}

HeaderResult with_unit(MarkColumn column, const std::string& unit,
                       std::initializer_list<std::string_view> allowed) {
  if (!unit.empty() && std::ranges::find(allowed, unit) == allowed.end())
    return tl::unexpected(fmt::format("the unit '{}' is none of: {}", unit, fmt::join(allowed, ", ")));
  column.pounds = unit.starts_with("lb");
  column.bare_seconds = unit == "s";
  return column;
}

/// "1rm back squat".
HeaderResult load_header(const Header& header, const NamedCatalogue& known) {
  const std::size_t rm = header.words.find("rm ");
  const auto reps = base::parse_digits(base::trim(std::string_view(header.words).substr(0, rm)));
  if (rm == std::string::npos || !reps) return std::nullopt;
  if (*reps < 1 || *reps > 30)
    return tl::unexpected(fmt::format("has {} repetitions, expected 1 to 30", *reps));
  const std::string_view written = base::trim(std::string_view(header.words).substr(rm + 3));
  const Movement* movement = movement_of(written, known, is_loaded, is_barbell);
  if (movement == nullptr) return no_movement(written, "lifted");
  return with_unit({domain::BestLoad{movement->id, {}, *reps}}, header.unit, {"kg", "lb", "lbs"});
}

/// "max push-up", "max pull-up any style", "max plank".
HeaderResult best_header(const Header& header, const NamedCatalogue& known) {
  constexpr std::string_view start = "max ";
  constexpr std::string_view end = " any style";
  if (!header.words.starts_with(start)) return std::nullopt;
  std::string_view written = base::trim(std::string_view(header.words).substr(start.size()));
  const bool any_style = written.ends_with(end);
  if (any_style) written = base::trim(written.substr(0, written.size() - end.size()));
  const Movement* movement = movement_of(
      written, known, [](const Movement& m) { return m.default_unit == Unit::Seconds || is_counted(m); },
      is_held_or_counted);
  if (movement == nullptr) return no_movement(written, "counted or held");
  if (any_style && !is_counted(*movement)) return no_movement(written, "counted");
  if (movement->default_unit == Unit::Seconds && !any_style)
    return with_unit({domain::BestHold{movement->id, {}}}, header.unit, {"s", "min"});
  return with_unit({domain::BestSet{movement->id, 0, any_style}}, header.unit, {"reps"});
}

/// "push-up in 2:00", "sit-up in 2 min".
HeaderResult timed_reps_header(const Header& header, const NamedCatalogue& known) {
  const std::size_t in = header.words.rfind(" in ");
  if (in == std::string::npos) return std::nullopt;
  const std::string_view after = base::trim(std::string_view(header.words).substr(in + 4));
  std::optional<base::Duration> window = read_clock(after);
  if (!window && after.ends_with("min"))
    if (const auto minutes = read_number(base::trim(after.substr(0, after.size() - 3))))
      window = domain::to_millisecond(*minutes * base::minute);
  if (!window && after.ends_with("s"))
    if (const auto seconds = read_number(base::trim(after.substr(0, after.size() - 1))))
      window = domain::to_millisecond(*seconds * second);
  if (!window) return std::nullopt;
  if (*window < 5 * second || *window > 120 * base::minute)
    return tl::unexpected(fmt::format("has a window of {}, expected 0:05 to 2:00:00", after));
  const std::string_view written = base::trim(std::string_view(header.words).substr(0, in));
  const Movement* movement = movement_of(written, known, is_counted, is_body_weight);
  if (movement == nullptr) return no_movement(written, "counted");
  return with_unit({domain::TimedReps{movement->id, *window, 0}}, header.unit, {"reps"});
}

/// The metres at the end of "run 400 m", "run 5 km", "run 1 mile", and where they begin.
struct WrittenDistance {
  base::Length length;
  std::size_t begins = 0;
};
std::optional<WrittenDistance> distance_at_end(std::string_view words) {
  constexpr std::array<std::pair<std::string_view, double>, 6> units{
      {{"miles", 1609.344}, {"mile", 1609.344}, {"km", 1000}, {"mi", 1609.344}, {"k", 1000}, {"m", 1}}};
  for (const auto& [unit, metres] : units) {
    if (!words.ends_with(unit)) continue;
    const std::string_view before = base::trim(words.substr(0, words.size() - unit.size()));
    const std::size_t begins = before.find_last_not_of("0123456789.,") + 1;
    const auto number = read_number(before.substr(begins));
    if (!number || begins == 0) return std::nullopt;
    return WrittenDistance{*number * metres * metre, begins};
  }
  return std::nullopt;
}

HeaderResult timed_distance_header(const Header& header, const NamedCatalogue& known) {
  const auto distance = distance_at_end(header.words);
  if (!distance) return std::nullopt;
  if (distance->length < 10 * metre || distance->length > 200000 * metre)
    return tl::unexpected(
        fmt::format("has {} m, expected 10 to 200000", domain::write_number(distance->length.si())));
  const std::string_view written = base::trim(std::string_view(header.words).substr(0, distance->begins));
  const Movement* movement = movement_of(written, known, has_metres, has_metres);
  if (movement == nullptr) return no_movement(written, "measured in metres");
  return with_unit({domain::TimedDistance{movement->id, distance->length, {}}}, header.unit, {"s", "min"});
}

std::optional<base::Duration> read_time(const MarkColumn& column, std::string_view cell) {
  if (const auto clock = read_clock(cell)) return clock;
  const auto number = column.bare_seconds ? read_number(cell) : std::nullopt;
  return number ? std::optional(domain::to_millisecond(*number * second)) : std::nullopt;
}

/// Puts what the cell says into a mark; false if it does not have the form.
struct Fill {
  const MarkColumn& column;
  std::string_view cell;

  bool operator()(domain::TimedDistance& mark) const { return put(read_time(column, cell), mark.time); }
  bool operator()(domain::BestHold& mark) const { return put(read_time(column, cell), mark.time); }
  bool operator()(domain::BestSet& mark) const { return put(whole(), mark.reps); }
  bool operator()(domain::TimedReps& mark) const { return put(whole(), mark.reps); }
  bool operator()(domain::AerobicPeak& mark) const { return put(read_number(cell), mark.ml_kg_min); }
  bool operator()(domain::BestLoad& mark) const {
    const auto number = read_number(cell);
    return put(
        number ? std::optional(*number * (column.pounds ? base::pound : base::kilogram)) : std::nullopt,
        mark.load);
  }

 private:
  template <class T>
  static bool put(const std::optional<T>& value, T& to) {
    if (value) to = *value;
    return value.has_value();
  }
  std::optional<double> whole() const {
    const auto count = base::parse_digits(cell);
    return count ? std::optional(static_cast<double>(*count)) : std::nullopt;
  }
};

struct Form {
  std::string operator()(const domain::TimedDistance&) const { return "m:ss"; }
  std::string operator()(const domain::BestHold&) const { return "m:ss"; }
  std::string operator()(const domain::BestSet&) const { return "a count"; }
  std::string operator()(const domain::TimedReps&) const { return "a count"; }
  std::string operator()(const domain::BestLoad&) const { return "a load"; }
  std::string operator()(const domain::AerobicPeak&) const { return "a number"; }
};

template <class... F>
struct Overloaded : F... {
  using F::operator()...;
};
template <class... F>
Overloaded(F...) -> Overloaded<F...>;

}  // namespace

HeaderResult read_mark_header(std::string_view header, const NamedCatalogue& known) {
  const Header parts = apart(header);
  for (const auto form : {load_header, best_header, timed_reps_header, timed_distance_header}) {
    HeaderResult column = form(parts, known);
    if (!column || *column) return column;
  }
  return std::nullopt;
}

tl::expected<Mark, std::string> read_mark_cell(const MarkColumn& column, std::string_view cell,
                                               const domain::Catalogue& catalogue) {
  Mark mark = column.mark;
  if (!std::visit(Fill{column, cell}, mark))
    return tl::unexpected(fmt::format("is '{}', expected {}", cell, std::visit(Form{}, column.mark)));
  if (const auto bounds = why_out_of_bounds(mark, catalogue))
    return tl::unexpected(fmt::format("is '{}', expected {}", cell, *bounds));
  return mark;
}

std::string write_mark_header(const Mark& mark) {
  return std::visit(
      Overloaded{[](const domain::TimedDistance& m) {
                   return fmt::format("{} {} m", m.movement.text, domain::write_number(m.distance.si()));
                 },
                 [](const domain::BestSet& m) {
                   return fmt::format("max {}{}", m.movement.text, m.any_style ? " any style" : "");
                 },
                 [](const domain::TimedReps& m) {
                   return fmt::format("{} in {}", m.movement.text, domain::write_clock(m.window));
                 },
                 [](const domain::BestHold& m) { return fmt::format("max {}", m.movement.text); },
                 [](const domain::BestLoad& m) { return fmt::format("{}rm {}", m.reps, m.movement.text); },
                 [](const domain::AerobicPeak&) { return std::string("vo2max_ml_kg_min"); }},
      mark);
}

std::string write_mark_cell(const Mark& mark) {
  return std::visit(
      Overloaded{[](const domain::TimedDistance& m) { return domain::write_clock(m.time); },
                 [](const domain::BestSet& m) { return domain::write_number(m.reps); },
                 [](const domain::TimedReps& m) { return domain::write_number(m.reps); },
                 [](const domain::BestHold& m) { return domain::write_clock(m.time); },
                 [](const domain::BestLoad& m) { return domain::write_number(m.load.si()); },
                 [](const domain::AerobicPeak& m) { return domain::write_number(m.ml_kg_min); }},
      mark);
}

}  // namespace repwright::store
