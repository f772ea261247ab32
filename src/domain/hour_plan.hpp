#pragma once

#include <optional>
#include <string>
#include <vector>

/// What the coach does when the hour gets short, and between two pieces.
namespace repwright::domain {

/// One cut, on top of all before it. `end_p90_s` is when nine of ten such classes are over; `work_left` the
/// share of everybody's work that all cuts so far leave.
struct HourCut {
  std::string words;
  double gives_s = 0;  // of the middle class
  double end_p90_s = 0;
  double work_left = 1;
  bool operator==(const HourCut&) const = default;
};

/// Loose kit of one kind and size at a change-over: so many stand already, so many are fetched, so many go
/// back. `short_by` is how many people of the next piece share.
struct KitMove {
  std::string name;
  int stays = 0, fetched = 0, put_away = 0, short_by = 0;
  bool operator==(const KitMove&) const = default;
};
struct ChangeOver {
  std::string from, to;  // pieces; `from` is empty before the first
  std::vector<KitMove> kit;
  int bars_reloaded = 0;  // people whose bar gets another load
  double seconds = 0;     // that it takes a class
  bool operator==(const ChangeOver&) const = default;
};

struct HourPlan {
  std::vector<HourCut> cuts;  // what to cut first
  std::vector<ChangeOver> changes;
  bool operator==(const HourPlan&) const = default;
};

}  // namespace repwright::domain
