#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "board/names.hpp"
#include "domain/board.hpp"

namespace repwright::board {

/// What the words around a line of work say of it already.
struct ItemPlace {
  /// Every amount without one is this many seconds: a station.
  std::optional<base::Duration> station = std::nullopt;
  /// The clock or the heading gives the amount.
  bool amount_given = false;
  /// Sets that stand before the amount: `5x5`.
  std::optional<int> sets = std::nullopt;
  /// The whole team shares what nobody says otherwise of.
  bool team_for_time = false;
  /// Levels in force: versions of that many go by level.
  std::size_t levels = 0;
};

/// Writes lines of work for one catalogue and house.
class Chalk {
 public:
  Chalk(const domain::Catalogue& catalogue, const domain::House& house)
      : catalogue_(catalogue), house_(house), names_(catalogue, house) {}

  const domain::House& house() const { return house_; }
  /// The line, without a line end.
  std::string item(const domain::Item& item, const ItemPlace& place) const;
  /// The plainest name that is read as that movement without a doubt; `unit` is written beside it.
  std::string name(const domain::MovementId& id, std::optional<domain::Unit> unit = std::nullopt) const;
  /// A plain distance or energy of a run or a machine: what `6 x 400 m` repeats.
  bool is_distance(const domain::Item& item) const;

 private:
  bool is_read_as(const std::string& words, const domain::MovementId& id,
                  std::optional<domain::Unit> unit) const;
  std::string work(const domain::Item& item, const ItemPlace& place) const;
  std::string weight(const domain::Item& item) const;
  std::string manner(const domain::Item& item) const;
  std::string versions(const domain::Item& item, const ItemPlace& place) const;
  std::string team(const domain::Item& item, const ItemPlace& place) const;

  const domain::Catalogue& catalogue_;
  const domain::House& house_;
  Names names_;
};

}  // namespace repwright::board
